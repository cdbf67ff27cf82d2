// The file of results: what goes in comes out, and what it refuses.
#include "asperity/study/study_file.h"

#include "asperity/study/merge.h"
#include "study/folder.h"

#include <cmath>
#include <limits>

namespace asperity {

namespace fs = std::filesystem;
using StudyResultFile = test_support::StudyFolder;
using test_support::small_head;
using test_support::trial_with;
using Purpose = StudyFile::Purpose;

namespace {

/// Opens and begins; the fault of either.
std::string fill(const fs::path &path, const StudyHead &head, const std::vector<Trial> &trials) {
  std::string fault;
  const auto file = StudyFile::open(path, Purpose::to_write, fault);
  if (!file)
    return fault;
  fault = file->begin(head);
  for (std::size_t i = 0; fault.empty() && i < trials.size(); ++i)
    fault = file->add(trials[i]);
  return fault;
}

std::string fault_of_opening(const fs::path &path, Purpose purpose) {
  std::string fault;
  EXPECT_EQ(StudyFile::open(path, purpose, fault), nullptr);
  return fault;
}

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_F(StudyResultFile, GivesBackEveryTrialToTheLastBit) {
  Trial first = trial_with(4, 1.0 / 3.0, 0.1 + 0.2);
  first.checks[0].predicted = std::numeric_limits<double>::quiet_NaN();
  first.checks[0].shortfall = std::numeric_limits<double>::infinity();
  first.dangers = 2;
  Trial second = trial_with(1, 77, 4);
  Trial wrong;
  wrong.combination = 3;
  wrong.status = TrialStatus::wrong;
  wrong.why = "quotes \" and 'these', \xC3\xA4";
  ASSERT_EQ(fill(at("s.db"), small_head(), {first, wrong, second}), "");
  std::string fault;
  const auto file = StudyFile::open(at("s.db"), Purpose::to_read, fault);
  ASSERT_NE(file, nullptr) << fault;
  const StudyResults results = file->read(fault);
  EXPECT_EQ(fault, "");
  ASSERT_EQ(results.trials.size(), 3u);
  EXPECT_TRUE(is_same_result(results.trials[0], second)) << "in rising order";
  EXPECT_TRUE(is_same_result(results.trials[1], wrong));
  EXPECT_TRUE(is_same_result(results.trials[2], first));
  EXPECT_EQ(results.trials[2].checks[0].shortfall, first.checks[0].shortfall);
  EXPECT_EQ(results.trials[2].checks[0].limit, 4.0);
  EXPECT_TRUE(differences(results.head.identity, small_head().identity).empty());
  EXPECT_EQ(results.head.job_text, small_head().job_text);
  EXPECT_EQ(results.head.grid.factors[1].values, small_head().grid.factors[1].values);
}

TEST_F(StudyResultFile, GoesOnAndTriesOnlyWhatLackedMemoryAgain) {
  Trial large;
  large.combination = 2;
  large.status = TrialStatus::too_large;
  ASSERT_EQ(fill(at("s.db"), small_head(), {trial_with(0, 1, 1), large}), "");
  std::string fault;
  {
    const auto file = StudyFile::open(at("s.db"), Purpose::to_write, fault);
    ASSERT_NE(file, nullptr) << fault;
    EXPECT_EQ(file->begin(small_head()), "");
    EXPECT_EQ(file->finished(fault), (std::set<std::size_t>{0}));
    EXPECT_EQ(file->add(trial_with(2, 5, 5)), "");
    EXPECT_EQ(file->finished(fault), (std::set<std::size_t>{0, 2}));
  }
  EXPECT_FALSE(fs::exists(at("s.db-journal")));
}

TEST_F(StudyResultFile, RefusesAnotherStudyAndSaysWhatChanged) {
  ASSERT_EQ(fill(at("s.db"), small_head(), {}), "");
  StudyHead other = small_head();
  other.identity.files[1].sha256 = "33";
  const std::string fault = fill(at("s.db"), other, {});
  EXPECT_TRUE(holds(fault, "holds another study; changed since: zigzag.ngc")) << fault;
  EXPECT_TRUE(holds(fault, "Give --results another name")) << fault;
}

TEST_F(StudyResultFile, OneWriterAtATime) {
  std::string fault;
  const auto file = StudyFile::open(at("s.db"), Purpose::to_write, fault);
  ASSERT_NE(file, nullptr);
  ASSERT_EQ(file->begin(small_head()), "");
  EXPECT_TRUE(
      holds(fault_of_opening(at("s.db"), Purpose::to_write), "another study command is working on it"));
}

TEST_F(StudyResultFile, RefusesWhatIsNoStudy) {
  EXPECT_TRUE(holds(fault_of_opening(at("none.db"), Purpose::to_read), "there is no file"));
  EXPECT_TRUE(holds(fault_of_opening(at("."), Purpose::to_read), "is a folder"));
  EXPECT_TRUE(holds(fault_of_opening(at("no/s.db"), Purpose::to_write), "check that the folder is there"));
  write("empty.db", "");
  EXPECT_TRUE(holds(fault_of_opening(at("empty.db"), Purpose::to_read), "there is no study in it"));
  write("text.db", std::string(3000, 'x'));
  EXPECT_TRUE(
      holds(fault_of_opening(at("text.db"), Purpose::to_write), "not a study's file, or it is damaged"));
}

TEST_F(StudyResultFile, DamageAnywhereIsSaidAndNeverRead) {
  std::vector<Trial> trials;
  for (std::size_t i = 0; i < 6; ++i)
    trials.push_back(trial_with(i, 1.0 + static_cast<double>(i), 3));
  ASSERT_EQ(fill(at("s.db"), small_head(), trials), "");
  const std::string sound = read("s.db");
  const std::size_t page = 4096;
  ASSERT_GT(sound.size(), 4 * page);
  for (std::size_t cut : {std::size_t{50}, page, 3 * page + 7, sound.size() - page}) {
    write("cut.db", sound.substr(0, cut));
    EXPECT_TRUE(holds(fault_of_opening(at("cut.db"), Purpose::to_write), "damaged")) << cut;
  }
  // A page of a tree filled with rubbish: either opening or reading says so.
  for (std::size_t at_page = 1; at_page * page < sound.size(); ++at_page) {
    std::string damaged = sound;
    damaged.replace(at_page * page, page, std::string(page, '\xA5'));
    write("bad.db", damaged);
    std::string fault;
    const auto file = StudyFile::open(at("bad.db"), Purpose::to_read, fault);
    if (file)
      file->read(fault);
    EXPECT_TRUE(holds(fault, "damaged")) << at_page << ' ' << fault;
  }
}

} // namespace asperity
