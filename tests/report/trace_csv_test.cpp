// The table of a trace read back: header lines, columns, every value.
#include "asperity/report/trace_csv.h"

#include "asperity/base/units.h"
#include "support/rim_trace.h"

#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

namespace asperity {

namespace {

using test_support::kMark_mm;
using test_support::kMarkHeight_um;
using test_support::rim_trace;
using test_support::RimTrace;

struct Row {
  double position_mm = 0, profile_um = 0, waviness_um = 0, roughness_um = 0;
  int line = 0;
};

struct Table {
  std::vector<std::string> comments;
  std::string columns;
  std::vector<Row> rows;
};

Table read_back(const std::string &text) {
  Table table;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with('#')) {
      EXPECT_TRUE(table.columns.empty()) << "comments come first";
      table.comments.push_back(line);
    } else if (table.columns.empty()) {
      table.columns = line;
    } else {
      Row row;
      char comma[4]{};
      std::istringstream cells(line);
      cells >> row.position_mm >> comma[0] >> row.profile_um >> comma[1] >> row.waviness_um >> comma[2] >>
          row.roughness_um >> comma[3] >> row.line;
      EXPECT_TRUE(cells && cells.peek() == EOF && std::string_view(comma, 4) == ",,,,") << line;
      table.rows.push_back(row);
    }
  }
  return table;
}

bool any_holds(const std::vector<std::string> &lines, std::string_view begin, std::string_view part) {
  return std::any_of(lines.begin(), lines.end(), [&](const std::string &line) {
    return line.starts_with(begin) && line.find(part) != std::string::npos;
  });
}

} // namespace

TEST(TraceCsv, HeaderStatesJobFeatureDirectionPlaceCutoffAndUnits) {
  const RimTrace rim = rim_trace();
  const Table table = read_back(trace_csv_text(rim.view()));
  EXPECT_TRUE(any_holds(table.comments, "# job: ", "sheave.toml"));
  EXPECT_TRUE(any_holds(table.comments, "# feature: ", "rim"));
  EXPECT_TRUE(any_holds(table.comments, "# direction: ", "s"));
  EXPECT_TRUE(any_holds(table.comments, "# place: ", "z = 7.000 mm"));
  EXPECT_TRUE(any_holds(table.comments, "# cutoff lc: ", "0.8 mm"));
  EXPECT_TRUE(any_holds(table.comments, "# cutoff ls: ", "0.0025 mm"));
  EXPECT_TRUE(any_holds(table.comments, "# evaluated: ", "5 sections of 0.8 mm = 4 mm"));
  EXPECT_TRUE(any_holds(table.comments, "# units: ", "um"));
  EXPECT_EQ(table.columns, "position_mm,profile_um,waviness_um,roughness_um,line");
}

TEST(TraceCsv, EveryPointReadsBack) {
  constexpr double kLastPlace_mm = 0.51e-6, kLastHeight_um = 0.51e-5; // half of the last decimal written
  const RimTrace rim = rim_trace();
  const Table table = read_back(trace_csv_text(rim.view()));
  ASSERT_EQ(table.rows.size(), rim.trace.profile_mm.size());
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    EXPECT_NEAR(table.rows[i].position_mm, rim.view().place_mm(i), kLastPlace_mm);
    EXPECT_NEAR(table.rows[i].profile_um, um_from_mm(rim.trace.profile_mm[i]), kLastHeight_um);
    EXPECT_NEAR(table.rows[i].waviness_um, um_from_mm(rim.trace.waviness_mm[i]), kLastHeight_um);
    EXPECT_NEAR(table.rows[i].roughness_um, um_from_mm(rim.trace.roughness_mm[i]), kLastHeight_um);
    EXPECT_EQ(table.rows[i].line, rim.trace.owner[i] == kNobody ? 0 : 13);
  }
}

TEST(TraceCsv, RoughnessColumnIsTheProfileAsTheGaussianFilterPassesIt) {
  // Share of a wavelength that a Gaussian of cutoff c leaves in the mean line: 2^-((c / wavelength)^2)
  // [ISO 16610-21:2011, 4.2]; ls takes a little off, lc lets nothing of 0.1 mm into the mean line.
  const double share =
      std::exp2(-std::pow(0.0025 / kMark_mm, 2.0)) - std::exp2(-std::pow(0.8 / kMark_mm, 2.0));
  constexpr double kSampled_um = 0.002; // ls as wide as a point: the sampled weights are not the smooth curve
  const RimTrace rim = rim_trace();
  for (const Row &row : read_back(trace_csv_text(rim.view())).rows) {
    const double x = row.position_mm - rim.trace.begin_mm;
    if (x < 1.0 || x > 5.0)
      continue; // the filter's reach at the ends
    EXPECT_NEAR(row.roughness_um, share * kMarkHeight_um * std::cos(2.0 * kPi * x / kMark_mm), kSampled_um);
  }
}

TEST(TraceCsv, NamesWithLineBreaksStayInTheirComment) {
  RimTrace rim = rim_trace();
  std::get<WallFeature>(rim.outcome.job.features[0]).name = "rim\n1,2,3,4,5\r\x1b[2J";
  const Table table = read_back(trace_csv_text(rim.view()));
  EXPECT_EQ(table.rows.size(), rim.trace.profile_mm.size());
  EXPECT_TRUE(any_holds(table.comments, "# feature: ", "rim 1,2,3,4,5"));
}

} // namespace asperity
