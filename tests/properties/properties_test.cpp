// Things that are always true of a whole prediction.
#include "small_job.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity::test {
namespace {

constexpr double kNanometre_mm = 1e-6;

TEST(Property, MorePassesNeverRaiseACell) {
  const Job job = boss_job();
  const std::string once = boss_program();
  std::string more = once;
  more.insert(more.rfind("G0 Z10\nM30"), "G1 X12.97 F300\nG2 X12.97 Y0 I-12.97 J0 F900\nG1 X14\n");
  const Outcome a = predicted(job, once), b = predicted(job, more);
  const auto &first = std::get<WallChart>(a.charts[0]), &second = std::get<WallChart>(b.charts[0]);
  double deeper = 0.0;
  for (std::size_t cell = 0; cell < first.envelope_mm.size(); ++cell) {
    ASSERT_LE(second.residual_mm(cell), first.residual_mm(cell));
    deeper = std::max(deeper, static_cast<double>(first.residual_mm(cell) - second.residual_mm(cell)));
  }
  EXPECT_NEAR(deeper, 0.03, 1e-4) << "the added lap cuts 0.03 mm deeper somewhere";
}

TEST(Property, ThreadCountNeverMatters) {
  Job job = boss_job();
  job.effects = {};
  const Outcome one = predicted(job, boss_program(), 1);
  for (const int threads : {2, 3, 7}) {
    const Outcome many = predicted(job, boss_program(), threads);
    for (std::size_t i = 0; i < one.charts.size(); ++i)
      std::visit(
          [&](const auto &chart) {
            const auto &other = std::get<std::decay_t<decltype(chart)>>(many.charts[i]);
            EXPECT_EQ(chart.envelope_mm, other.envelope_mm);
            EXPECT_EQ(chart.owner, other.owner);
          },
          one.charts[i]);
  }
}

TEST(Property, InchAndMillimetreProgramsAgree) {
  // 13 mm and 900 mm/min are no round numbers of inches: 1e-6 inch rounding is 25 nm.
  const auto inch = [](double mm) { return fmt::format("{:.7f}", mm / 25.4); };
  const std::string text = "G20 G90 G17 G94 G54\nT1 M6\nS18000 M3\nG0 X" + inch(20) + " Y0 Z" + inch(10) +
                           "\nG0 Z" + inch(4) + "\nG1 X" + inch(-20) + " F" + inch(900) + "\nG0 Z" +
                           inch(10) + "\nG0 X" + inch(13) + " Y0\nG0 Z" + inch(5) + "\nG1 Z" + inch(2) +
                           " F" + inch(300) + "\nG2 X" + inch(13) + " Y0 I" + inch(-13) + " J0 F" +
                           inch(900) + "\nG1 Z0 F" + inch(300) + "\nG2 X" + inch(13) + " Y0 I" + inch(-13) +
                           " J0 F" + inch(900) + "\nG0 Z" + inch(10) + "\nM30\n";
  const Job job = boss_job();
  const Outcome mm = predicted(job, boss_program());
  const Outcome in = predict(job, program_of(text, true), {1, 0}, Progress{});
  for (std::size_t i = 0; i < mm.charts.size(); ++i)
    EXPECT_LT(largest_difference_mm(mm.charts[i], in.charts[i]), 10 * kNanometre_mm); // seven inch decimals
}

TEST(Property, AMoveSplitInAThousandGivesTheSameChart) {
  const Job job = boss_job();
  std::string split;
  for (int i = 1; i <= 1000; ++i)
    split += fmt::format("G1 X{:.6f} F900\n", 20.0 - 40.0 * i / 1000);
  std::string text = boss_program();
  const std::string whole = "G1 X-20 F900\n";
  text.replace(text.find(whole), whole.size(), split);
  const Outcome a = predicted(job, boss_program()), b = predicted(job, text);
  EXPECT_LT(largest_difference_mm(a.charts[1], b.charts[1]), kNanometre_mm);
}

TEST(Property, AnArcSplitInAThousandGivesTheSameWall) {
  const Job job = boss_job();
  std::string split;
  for (int i = 1; i <= 1000; ++i) {
    const double a = -2.0 * kPi * i / 1000;
    split += fmt::format("G2 X{:.9f} Y{:.9f} R13 F900\n", 13 * std::cos(a), 13 * std::sin(a));
  }
  std::string text = boss_program();
  const std::string whole = "G2 X13 Y0 I-13 J0 F900\n";
  text.replace(text.rfind(whole), whole.size(), split);
  const Outcome a = predicted(job, boss_program()), b = predicted(job, text);
  EXPECT_LT(largest_difference_mm(a.charts[0], b.charts[0]), kNanometre_mm);
}

TEST(Property, MirroredJobMirrorsTheCharts) {
  // Mirrored at the x axis the cutter runs the other way round; nothing bends here, so climb or not does not
  // matter.
  Job job = boss_job();
  std::string text = boss_program(), mirrored = text;
  const std::string part = "G2 X13 Y0 I-13 J0 F900\nG0 Z10", half = "G2 X-13 Y0 I-13 J0 F900\nG0 Z10";
  text.replace(text.find(part), part.size(), half);
  mirrored = text;
  for (std::size_t at = mirrored.find("G2"); at != std::string::npos; at = mirrored.find("G2", at + 2))
    if (mirrored.compare(at, 3, "G21") != 0)
      mirrored.replace(at, 2, "G3");
  const Outcome a = predicted(job, text), b = predicted(job, mirrored);
  const auto &there = std::get<WallChart>(a.charts[0]), &back = std::get<WallChart>(b.charts[0]);
  double most = 0.0, cut_on_one_side_only = 0.0;
  for (std::size_t row = 0; row < there.rows(); ++row) {
    for (std::size_t column = 0; column < there.columns(); ++column) {
      const std::size_t mirror = there.columns() - 1 - column;
      const double e = there.residual_mm(there.at(column, row));
      most = std::max(most, std::abs(e - back.residual_mm(back.at(mirror, row))));
      cut_on_one_side_only =
          std::max(cut_on_one_side_only, std::abs(e - there.residual_mm(there.at(mirror, row))));
    }
  }
  EXPECT_LT(most, kNanometre_mm);
  EXPECT_GT(cut_on_one_side_only, 0.1) << "the scene itself must not be symmetrical";
}

} // namespace
} // namespace asperity::test
