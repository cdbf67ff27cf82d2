// A hand-made study as table, JSON, words and pictures.
#include "asperity/picture/study_picture.h"
#include "asperity/report/study_csv.h"
#include "asperity/report/study_json.h"
#include "asperity/report/study_text.h"
#include "study/folder.h"
#include "study/study_workshop.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace asperity::test_support {

namespace {

/// Combinations 1, 2 and 4 of six: done twice, wrong once.
StudyResults hand_made() {
  Trial wrong;
  wrong.combination = 3;
  wrong.status = TrialStatus::wrong;
  wrong.why = "said \"no\", twice\x1b[2J";
  return {small_head(), {trial_with(0, 100.5, 5), trial_with(1, 200, 3), wrong}};
}

StudyView view_of(StudyResults results) {
  std::string fault;
  StudyView view = study_view(std::move(results), {}, fault);
  EXPECT_EQ(fault, "");
  return view;
}

std::size_t pixels_of(const Image &image, Rgb colour) {
  return static_cast<std::size_t>(std::count(image.pixels.begin(), image.pixels.end(), colour));
}

} // namespace

TEST(StudyOutput, TableIsExactAndQuotedByRfc4180) {
  const std::string csv = study_csv_text(hand_made());
  const std::string rows = csv.substr(csv.find("combination,"));
  EXPECT_EQ(
      rows,
      "combination,program,cutter.1.runout_mm,status,wanted_missed,worst_shortfall,time_s,rim/diameter_mm,"
      "rim/witness_depth_um,why\n"
      "1,plunge.ngc,0.0,done,1,0.25,100.5,62.0005,5,\n"
      "2,plunge.ngc,0.01,done,0,0,200,62.0003,3,\n"
      "4,zigzag.ngc,0.0,wrong,,,,,,\"said \"\"no\"\", twice[2J\"\n");
}

TEST(StudyOutput, JsonHoldsEveryTrialTheFrontAndTheBest) {
  const auto all = nlohmann::json::parse(study_json_text(view_of(hand_made())));
  ASSERT_EQ(all["trials"].size(), 3u);
  EXPECT_EQ(all["combinations"], 6);
  EXPECT_EQ(all["trials"][0]["numbers"]["time_s"], 100.5);
  EXPECT_EQ(all["trials"][0]["checks"][0]["shortfall"], 0.25);
  EXPECT_TRUE(all["trials"][0]["on_front"].get<bool>() && all["trials"][1]["on_front"].get<bool>());
  EXPECT_EQ(all["trials"][2]["status"], "wrong");
  EXPECT_EQ(all["best"]["combination"], 2);
  EXPECT_TRUE(all["best"]["meets_everything"].get<bool>());
}

TEST(StudyOutput, WordsSayWhatIsMissingWrongAndBest) {
  const std::string text = study_text(view_of(hand_made()), {.width = 120});
  for (const char *part : {"3 of 6 combinations are here, 1 of them wrong", "wrong: said \"no\", twice[2J",
                           "combination 2: program = plunge.ngc, cutter.1.runout_mm = 0.01; 3 min 20 s",
                           "Combinations are missing", "3 are still to do"})
    EXPECT_TRUE(holds(text, part)) << part << '\n' << text;
  EXPECT_FALSE(holds(text, "\x1b"));
}

TEST(StudyOutput, PicturesShowFrontMetAndMissed) {
  const StudyView view = view_of(hand_made());
  const Image image = front_picture(view).image;
  EXPECT_EQ(image.width, kStudyPicture_px);
  // The marks' colours, each at least as much as one mark covers.
  EXPECT_GT(pixels_of(image, {38, 96, 92}), 60u) << "meets everything";
  EXPECT_GT(pixels_of(image, {150, 132, 108}), 10u) << "does not";
  EXPECT_GT(pixels_of(image, {122, 44, 96}), 100u) << "front";
  EXPECT_GT(pixels_of(image, {176, 92, 24}), 100u) << "wanted limit";
  EXPECT_GT(pixels_of(influence_picture(view).image, {122, 44, 96}), 200u) << "means";
}

TEST(StudyOutput, AStudyWithoutATrialOrWithOneIsShownToo) {
  const StudyView empty = view_of({small_head(), {}});
  EXPECT_TRUE(holds(study_text(empty), "No combination could be predicted"));
  EXPECT_TRUE(holds(study_csv_text(empty.results), "combinations: 0 of 6"));
  EXPECT_EQ(nlohmann::json::parse(study_json_text(empty))["trials"].size(), 0u);
  const StudyView one = view_of({small_head(), {trial_with(5, 60, 4)}});
  EXPECT_TRUE(holds(study_text(one), "the same in all combinations"));
  EXPECT_GT(front_picture(one).image.height, 400);
  EXPECT_GT(influence_picture(one).image.height, 200);
}

TEST(StudyOutput, ManyTrialsAreCutToTheFrontAndTheBest) {
  StudyHead head = small_head();
  head.grid.factors[1].values.clear();
  for (int i = 0; i < 100; ++i)
    head.grid.factors[1].values.push_back(std::to_string(i));
  std::vector<Trial> trials;
  for (std::size_t i = 0; i < 200; ++i)
    trials.push_back(trial_with(i, 100.0 + static_cast<double>(i), i == 150 ? 1.0 : 5.0));
  const std::string text = study_text(view_of({head, trials}));
  EXPECT_TRUE(holds(text, "Shown are the front and the best of 200 combinations")) << text;
  EXPECT_TRUE(holds(text, "\n  151 "));
  EXPECT_FALSE(holds(text, "\n  150 "));
}

} // namespace asperity::test_support
