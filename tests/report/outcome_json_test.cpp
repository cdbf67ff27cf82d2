// The JSON says all that the outcome holds, and is always JSON.
#include "asperity/report/outcome_json.h"

#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace asperity {

using nlohmann::json;
using test_support::rim_outcome;

namespace {

/// Every number in the document, however deep.
void expect_all_finite(const json &value) {
  if (value.is_structured()) {
    for (const json &part : value)
      expect_all_finite(part);
  } else if (value.is_number_float()) {
    EXPECT_TRUE(std::isfinite(value.get<double>()));
  }
}

} // namespace

TEST(OutcomeJson, TextReadsBackAsTheSameDocument) {
  const Outcome outcome = rim_outcome();
  EXPECT_EQ(json::parse(outcome_json_text(outcome)), outcome_json(outcome));
}

TEST(OutcomeJson, NamesItsFormatAndVersion) {
  const json document = outcome_json(rim_outcome());
  EXPECT_EQ(document.at("format"), "asperity-prediction");
  EXPECT_EQ(document.at("version"), kJsonVersion);
}

TEST(OutcomeJson, CarriesChecksFindingsSizesAndPeaks) {
  const json document = outcome_json(rim_outcome());
  EXPECT_EQ(document.at("verdict").at("checks_missed"), 1);
  EXPECT_EQ(document.at("verdict").at("all_well"), false);
  EXPECT_EQ(document.at("checks").at(1).at("predicted"), 0.6);
  const json &witness = document.at("findings").at(1);
  EXPECT_EQ(witness.at("kind"), "witness line");
  EXPECT_EQ(witness.at("feature"), "rim");
  EXPECT_EQ(witness.at("size").at(0), json({{"name", "depth"}, {"value", 6.0}, {"unit", "um"}}));
  EXPECT_EQ(witness.at("lines"), json({12, 16, 20, 24}));
  EXPECT_EQ(document.at("findings").at(0).at("feature"), nullptr);
  EXPECT_EQ(document.at("features").at(0).at("sizes").at(0).at("verdict"), "met");
  EXPECT_EQ(document.at("cut").at("peak_side_force_N").at("value"), 23.0);
  EXPECT_EQ(document.at("time").at("tools").at(0).at("name"), "6 mm flat");
  EXPECT_EQ(document.at("not_predicted").at(0).at("what"), "Ra");
}

TEST(OutcomeJson, ProfilesShowTheGrooveAndStayShort) {
  // derived: 5 columns of 0.1 mm are joined; half the parabolic groove (mean 2/3 of 6 um over 0.3 mm) lies in
  // 0.5 mm.
  constexpr double kGrooveSeen_um = 6.0 * 2.0 / 3.0 * 0.3 / 0.5;
  constexpr double kSummed_um = 0.1;                    // the parabola is summed at 3 columns
  const json document = outcome_json(rim_outcome(0.1)); // 1948 columns
  const json &profile = document.at("features").at(0).at("profile_along");
  const json &mean_um = profile.at("mean_residual_um");
  EXPECT_LE(mean_um.size(), 400u);
  EXPECT_EQ(mean_um.size(), profile.at("s_mm").size());
  EXPECT_NEAR(mean_um.at(200).get<double>() - mean_um.at(0).get<double>(), kGrooveSeen_um, kSummed_um);
  EXPECT_EQ(document.at("features").at(0).at("profile_up").at("mean_residual_um").at(0),
            nullptr); // in the lip
}

TEST(OutcomeJson, WhatIsNotFiniteBecomesNull) {
  constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
  constexpr double kInfinity = std::numeric_limits<double>::infinity();
  Outcome outcome = rim_outcome();
  outcome.checks[0].predicted = kNan;
  outcome.features[0].sizes[0].mean_mm = kInfinity;
  outcome.features[0].cut_share = kNan;
  outcome.findings[0].place_mm.x = -kInfinity;
  outcome.findings[0].size[0].value = kNan;
  outcome.path.duration_s = kInfinity;
  std::get<WallChart>(outcome.charts[0]) = make_wall_chart(Outline::circle({0, 0}, 62), false, 0, 14, 1.0);
  const json document = outcome_json(outcome);
  expect_all_finite(document);
  EXPECT_EQ(document.at("checks").at(0).at("predicted"), nullptr);
  EXPECT_EQ(document.at("findings").at(0).at("place_mm").at(0), nullptr);
  EXPECT_EQ(document.at("features").at(0).at("residual").at("mean_um"), nullptr);
  EXPECT_NO_THROW(json::parse(outcome_json_text(outcome)));
}

TEST(OutcomeJson, BytesThatAreNotUtf8AreReplaced) {
  Outcome outcome = rim_outcome();
  outcome.job.title = "r\xFFm";
  EXPECT_EQ(json::parse(outcome_json_text(outcome)).at("job").at("title"), "r\xEF\xBF\xBDm");
}

TEST(OutcomeJson, AnEmptyOutcomeIsStillADocument) {
  Outcome outcome;
  outcome.status = Status::cancelled;
  const json document = json::parse(outcome_json_text(outcome));
  EXPECT_EQ(document.at("status"), "cancelled");
  EXPECT_TRUE(document.at("features").empty());
}

} // namespace asperity
