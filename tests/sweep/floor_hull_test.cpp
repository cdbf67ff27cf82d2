// Runs of short joined moves, found as one and clipped at their joints, against the same moves each by
// itself.
#include "asperity/sweep/sweep_floor.h"

#include "sweep/floor_jobs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace asperity::floor_test {
namespace {

/// Storage in floats and arithmetic above the plane: the sweep's own promise.
constexpr double kPromised_mm = 1e-6;

struct Wave {
  double step_mm, up_mm, aside_mm, per_mm;
};

/// Passes there and back across the chart in tiny moves that rise, fall and turn.
SweptPath wavy_passes(const CutterProfile &profile, const Wave &wave) {
  SweptPath path = path_with(profile);
  const double pitch = 0.2 * profile.radius_mm();
  const int moves = static_cast<int>(2.0 / wave.step_mm);
  for (int pass = 0; pass < 8; ++pass) {
    const auto tip = [&](int i) {
      const double along = wave.step_mm * (pass % 2 == 0 ? i : moves - i) - 1.0, phase = wave.per_mm * along;
      const double aside = pitch * (pass - 3.5) + wave.aside_mm * std::sin(1.3 * phase);
      return Vec3(0.8 * along - 0.6 * aside, 0.6 * along + 0.8 * aside,
                  wave.up_mm * std::sin(phase + 0.3 * pass));
    };
    for (int i = 0; i < moves; ++i)
      add(path, Curve::line(tip(i), tip(i + 1)), i > 0);
  }
  return path;
}

FloorChart swept_singly(SweptPath path) {
  for (SweptPiece &piece : path.pieces)
    piece.joins_previous = false;
  FloorChart chart = square_chart(0.8, 0.01);
  EXPECT_TRUE(sweep_floor(chart, path, 2, Progress(), 0.0));
  return chart;
}

TEST(FloorHull, RunsOfTinyMovesLeaveWhatTheMovesLeaveOneByOne) {
  const Wave kWaves[] = {{0.01, 0.0, 0.0, 1.0},
                         {0.01, 0.3, 0.0, 1.0},
                         {0.01, 0.02, 0.02, 4.0},
                         {0.004, 0.1, 0.3, 3.0},
                         {0.02, 0.001, 0.0, 40.0}};
  for (const CutterProfile &cutter :
       {CutterProfile::ball(1.5), CutterProfile::ball(0.15), CutterProfile::ball(1.5).grown(0.01),
        CutterProfile::ball(1.5).grown(-0.01), CutterProfile::corner_radius(0.5, 0.2)})
    for (const Wave &wave : kWaves) {
      const SweptPath path = wavy_passes(cutter, wave);
      FloorChart chart = square_chart(0.8, 0.01);
      ASSERT_TRUE(sweep_floor(chart, path, 2, Progress(), 0.0));
      const FloorChart singly = swept_singly(path);
      for (std::size_t cell = 0; cell < chart.envelope_mm.size(); ++cell) {
        const double joined = double(chart.envelope_mm[cell]), alone = double(singly.envelope_mm[cell]);
        if (joined == alone) // out of reach, too
          continue;
        ASSERT_NEAR(joined, alone, kPromised_mm)
            << "radius " << cutter.radius_mm() << " flat " << cutter.tip_flat_mm() << " up " << wave.up_mm
            << " aside " << wave.aside_mm << " step " << wave.step_mm << " at " << chart.x_mm(cell % chart.nx)
            << " " << chart.y_mm(cell / chart.nx);
      }
    }
}

} // namespace
} // namespace asperity::floor_test
