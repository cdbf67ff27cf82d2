// Parts put together: the whole, repeated results, refusals.
#include "asperity/study/merge.h"

#include "study/folder.h"

#include <array>

namespace asperity {

namespace fs = std::filesystem;
using StudyMerge = test_support::StudyFolder;
using test_support::small_head;
using test_support::trial_with;

namespace {

void make(const fs::path &path, const StudyHead &head, const std::vector<Trial> &trials) {
  std::string fault;
  const auto file = StudyFile::open(path, StudyFile::Purpose::to_write, fault);
  ASSERT_NE(file, nullptr) << fault;
  ASSERT_EQ(file->begin(head), "");
  ASSERT_EQ(file->add_all(trials), "");
}

std::vector<std::size_t> combinations_in(const fs::path &path) {
  std::string fault;
  const auto file = StudyFile::open(path, StudyFile::Purpose::to_read, fault);
  std::vector<std::size_t> found;
  if (file)
    for (const Trial &trial : file->read(fault).trials)
      found.push_back(trial.combination);
  return found;
}

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_F(StudyMerge, HoldsEveryTrialOnceAndCountsTheMissing) {
  make(at("1.db"), small_head(), {trial_with(0, 10, 1), trial_with(2, 30, 3)});
  make(at("2.db"), small_head(), {trial_with(1, 20, 2), trial_with(2, 30, 3)});
  Merged merged;
  const std::array parts{at("1.db"), at("2.db")};
  EXPECT_EQ(merge_parts(at("all.db"), parts, merged), "");
  EXPECT_EQ(merged.combinations, 3u);
  EXPECT_EQ(merged.repeated, 1u);
  EXPECT_EQ(merged.missing, 3u);
  EXPECT_EQ(combinations_in(at("all.db")), (std::vector<std::size_t>{0, 1, 2}));
}

TEST_F(StudyMerge, TakesTheResultWhereAnotherPartLackedMemory) {
  Trial large;
  large.combination = 1;
  large.status = TrialStatus::too_large;
  make(at("1.db"), small_head(), {large});
  make(at("2.db"), small_head(), {trial_with(1, 20, 2)});
  Merged merged;
  const std::array parts{at("1.db"), at("2.db"), at("1.db")};
  EXPECT_EQ(merge_parts(at("all.db"), parts, merged), "");
  std::string fault;
  const auto file = StudyFile::open(at("all.db"), StudyFile::Purpose::to_read, fault);
  EXPECT_EQ(file->read(fault).trials[0].status, TrialStatus::done);
}

TEST_F(StudyMerge, RefusesDifferentResultsOfOneCombination) {
  make(at("1.db"), small_head(), {trial_with(2, 30, 3)});
  make(at("2.db"), small_head(), {trial_with(2, 30, 3.0000000001)});
  Merged merged;
  const std::array parts{at("1.db"), at("2.db")};
  const std::string fault = merge_parts(at("all.db"), parts, merged);
  EXPECT_TRUE(holds(fault, "combination 3 has one result in")) << fault;
  EXPECT_FALSE(fs::exists(at("all.db")));
}

TEST_F(StudyMerge, RefusesOtherStudiesMissingPartsAndAFileThatIsThere) {
  StudyHead other = small_head();
  other.identity.job_sha256 = "another";
  make(at("1.db"), small_head(), {});
  make(at("2.db"), other, {});
  Merged merged;
  const std::array different{at("1.db"), at("2.db")};
  EXPECT_TRUE(
      holds(merge_parts(at("all.db"), different, merged), "different studies; not the same: the job file"));
  const std::array missing{at("1.db"), at("3.db")};
  EXPECT_TRUE(holds(merge_parts(at("all.db"), missing, merged), "there is no file"));
  const std::array one{at("1.db")};
  EXPECT_TRUE(holds(merge_parts(at("2.db"), one, merged), "is there already"));
  std::size_t files = 0;
  for ([[maybe_unused]] const auto &entry : fs::directory_iterator(at(".")))
    ++files;
  EXPECT_EQ(files, 2u) << "nothing half written is left";
}

} // namespace asperity
