// Roughness of a hand-made rim in the summary and in the JSON.
#include "asperity/report/outcome_json.h"
#include "asperity/report/summary_text.h"
#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <limits>

namespace asperity::test {
namespace {

Trace hand_made_trace(const std::string &along, double ra_um) {
  Trace trace;
  trace.along = along;
  trace.at_mm = 7.0;
  trace.spacing_mm = 0.005;
  trace.profile_mm.assign(960, 0.0);
  trace.reading.parameters.ra_mm = ra_um * 1e-3;
  trace.reading.parameters.rz_mm = 4e-3 * ra_um;
  trace.reading.parameters.sections = 5;
  trace.reading.fit.sections = 5;
  trace.cusp_mm = 0.42e-3;
  return trace;
}

Outcome rough_sheave() {
  Outcome outcome = test_support::rim_outcome();
  outcome.roughness.resize(outcome.job.features.size());
  FeatureRoughness &rim = outcome.roughness.front();
  rim.measured = true;
  rim.lay = "upright lines, 90 deg to s";
  rim.along = hand_made_trace("z", 0.02);
  rim.across = hand_made_trace("s", 0.31);
  rim.around = hand_made_trace("s", 0.31);
  rim.around.waviness_mm = {0.001, -0.0042, 0.0};
  rim.around.roughness_mm = {0.0002, -0.0002, 0.0002, -0.0002};
  rim.ra_um = 0.31;
  rim.ra_band = {1.53, 4.01};
  rim.grade_low = 7, rim.grade_high = 9;
  rim.worst_ra_um = 0.8;
  rim.worst_line = 462;
  rim.map_columns = 2, rim.map_rows = 1;
  rim.map_ra_um = {0.3F, std::numeric_limits<float>::quiet_NaN()};
  return outcome;
}

TEST(RoughnessText, ShowsFloorBandAndBothDirections) {
  const std::string text = summary_text(rough_sheave(), {});
  for (const char *words : {"Ra 1.5 to 4.0 um (N7 to N9)", "0.31 um from geometry", "along z", "along s",
                            "cutoff 0.8 mm", "waviness 5.2", "line 462"})
    EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
}

TEST(RoughnessText, SaysNothingOfFeaturesThatAreNotCut) {
  Outcome outcome = rough_sheave();
  outcome.roughness.front().measured = false;
  EXPECT_EQ(summary_text(outcome, {}).find("Roughness, as"), std::string::npos);
}

TEST(RoughnessJson, HoldsTheNumbersWithNullForNone) {
  const nlohmann::json out = outcome_json(rough_sheave());
  const nlohmann::json &rim = out["features"][0]["roughness"];
  EXPECT_DOUBLE_EQ(rim["geometric_ra_um"], 0.31);
  EXPECT_DOUBLE_EQ(rim["ra_band_um"]["high"], 4.01);
  EXPECT_EQ(rim["n_grade_high"], 9);
  EXPECT_NEAR(rim["around"]["whole_wt_um"], 5.2, 1e-9);
  EXPECT_NEAR(rim["around"]["whole_ra_um"], 0.2, 1e-9);
  EXPECT_TRUE(rim["local_ra_map"]["ra_um"][1].is_null());
  EXPECT_EQ(rim["across_lay"]["along"], "s");
  EXPECT_TRUE(rim["uncut_skin_ra_um"].is_null());
}

} // namespace
} // namespace asperity::test
