// What a study's fingerprint depends on, and what it does not.
#include "asperity/study/identity.h"

#include "study/folder.h"

namespace asperity {

namespace fs = std::filesystem;
using StudyIdentityOf = test_support::StudyFolder;

namespace {

const StudyGrid kGrid{{{"program", {"\"a.ngc\"", "\"b.ngc\""}}, {"setup.z_zero_error_mm", {"0", "0.1"}}}};
constexpr const char *kJob = "program = \"a.ngc\"\n[blank]\nmesh = \"blank.stl\"\n";

StudyIdentity identity_of(const fs::path &job, const StudyGrid &grid = kGrid, bool roughness = false,
                          const std::string &version = "1.0") {
  Problems problems;
  const auto head = read_head(job, grid, roughness, version, problems);
  return head ? head->identity : StudyIdentity{};
}

} // namespace

TEST_F(StudyIdentityOf, NamesEveryProgramMeshAndIncludedFile) {
  write("job.toml", "include = [\"petg.toml\"]\n" + std::string(kJob));
  write("a.ngc", "G0 X1\n");
  const StudyIdentity identity = identity_of(at("job.toml"));
  ASSERT_EQ(identity.files.size(), 4u);
  EXPECT_EQ(identity.files[0].name, "a.ngc");
  EXPECT_EQ(identity.files[1].name, "b.ngc");
  EXPECT_EQ(identity.files[1].sha256, "missing");
  EXPECT_EQ(identity.files[2].name, "blank.stl");
  EXPECT_EQ(identity.files[3].name, "petg.toml");
}

TEST_F(StudyIdentityOf, ChangesWithEveryInputAndSaysWhich) {
  write("job.toml", kJob);
  write("a.ngc", "G0 X1\n");
  write("b.ngc", "G0 X2\n");
  write("blank.stl", "solid");
  const StudyIdentity before = identity_of(at("job.toml"));
  EXPECT_TRUE(differences(before, identity_of(at("job.toml"))).empty());
  EXPECT_EQ(before.sha256(), identity_of(at("job.toml")).sha256());
  const auto expect = [&](const StudyIdentity &now, const std::string &what) {
    const auto found = differences(before, now);
    ASSERT_EQ(found.size(), 1u) << what;
    EXPECT_NE(found[0].find(what), std::string::npos) << found[0];
    EXPECT_NE(before.sha256(), now.sha256());
  };
  expect(identity_of(at("job.toml"), kGrid, true), "roughness");
  expect(identity_of(at("job.toml"), kGrid, false, "1.1"), "version (1.0 and 1.1)");
  StudyGrid other = kGrid;
  other.factors[1].values.push_back("0.2");
  expect(identity_of(at("job.toml"), other), "varied values");
  write("b.ngc", "G0 X3\n");
  expect(identity_of(at("job.toml")), "b.ngc");
  write("b.ngc", "G0 X2\n");
  write("blank.stl", "solid\n");
  expect(identity_of(at("job.toml")), "blank.stl");
  write("blank.stl", "solid");
  write("job.toml", std::string(kJob) + "# a note\n");
  expect(identity_of(at("job.toml")), "the job file");
}

TEST_F(StudyIdentityOf, DoesNotDependOnTheFolder) {
  fs::create_directory(at("elsewhere"));
  for (const char *folder : {".", "elsewhere"}) {
    write(std::string(folder) + "/job.toml", kJob);
    write(std::string(folder) + "/a.ngc", "G0 X1\n");
  }
  EXPECT_EQ(identity_of(at("job.toml")), identity_of(at("elsewhere/job.toml")));
}

TEST_F(StudyIdentityOf, ReadingAMissingJobIsAProblem) {
  Problems problems;
  EXPECT_FALSE(read_head(at("none.toml"), kGrid, false, "1.0", problems));
  EXPECT_EQ(problems.error_count(), 1u);
}

TEST_F(StudyIdentityOf, WatchSeesAnotherProgramButNotAnotherTime) {
  write("job.toml", kJob);
  write("a.ngc", "G0 X1\n");
  Problems problems;
  const auto head = read_head(at("job.toml"), kGrid, false, "1.0", problems);
  ASSERT_TRUE(head);
  InputWatch watch(*head);
  EXPECT_FALSE(watch.is_changed());
  fs::last_write_time(at("a.ngc"), fs::file_time_type::clock::now() + std::chrono::hours(1));
  EXPECT_FALSE(watch.is_changed()) << "same bytes, written later";
  write("a.ngc", "G0 X12\n");
  EXPECT_TRUE(watch.is_changed());
}

} // namespace asperity
