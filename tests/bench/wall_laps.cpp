// Tooth passes of the bore's laps, laid plainly and looked up exactly.
#include "bench/wall_laps.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace asperity::bench {

namespace {

constexpr double kTurn = 2.0 * kPi;
constexpr double kPath_mm = kBore_mm - kCutter_mm; ///< the axis's circle
constexpr double kSwing = 1.0 / 3.0, kWaves = 3.0;

/// Laps begin anywhere in the spindle's turn.
double phase(int lap) { return 0.37 * lap - std::floor(0.37 * lap); }

double tooth_mm(long pass) { return kCutter_mm - (pass % 2 == 0 ? 0.0 : kRunout_mm); }

} // namespace

double pass_angle_rad(const WallCase &job, int lap, double pass) {
  const double share = (pass + phase(lap)) / kPassesPerLap;
  const double swing =
      job.has_varying_feed ? kSwing / (kTurn * kWaves) * std::sin(kTurn * kWaves * share) : 0.0;
  return kTurn * (share + swing);
}

double passes_at(const WallCase &job, int lap, double angle_rad) {
  const double wanted = angle_rad / kTurn;
  double share = wanted;
  for (int step = 0; job.has_varying_feed && step < 50; ++step) {
    const double turn = kTurn * kWaves * share;
    const double off = share + kSwing / (kTurn * kWaves) * std::sin(turn) - wanted;
    share -= off / (1.0 + kSwing * std::cos(turn));
    if (std::abs(off) < 1e-16)
      break;
  }
  return share * kPassesPerLap - phase(lap);
}

double passes_up(double z_mm) { return z_mm * std::tan(kHelix_rad) / (kPi * kCutter_mm); }

double column_rad(const WallCase &job, std::size_t column) {
  return kTurn * (double(column) + 0.5) / double(job.columns);
}

double row_mm(const WallCase &job, std::size_t row) {
  return kDepth_mm * (double(row) + 0.5) / double(job.rows);
}

double tooth_surface_mm(double angle_rad, double tooth) {
  const double aside = kPath_mm * std::sin(angle_rad), along = kPath_mm * std::cos(angle_rad);
  return kBore_mm - (along + std::sqrt(tooth * tooth - aside * aside));
}

std::vector<ToothLap> tooth_laps(const WallCase &job) {
  // Even terms of the circle's series (derived): rho (1 + rho/R)/2 and the next, per angle at the bore.
  const double rho = kPath_mm, r = kCutter_mm, wall2 = kBore_mm * kBore_mm;
  const double bow = 0.5 * rho * (1.0 + rho / r);
  const double bow4 = -rho / 24.0 + rho * rho / r * (rho * rho / (8.0 * r * r) - 1.0 / 6.0);
  std::vector<ToothLap> laps;
  for (int k = 0; k < kLaps; ++k) {
    ToothLap lap;
    lap.low_mm = lap_tip_mm(k);
    lap.high_mm = 2.0 * kDepth_mm;
    lap.turns_per_mm_up = passes_up(1.0) / kTeeth;
    lap.lag_mm = {0.0, kRunout_mm};
    lap.bow_per_mm = bow / wall2;
    lap.bow4_per_mm3 = bow4 / (wall2 * wall2);
    for (std::size_t i = 0; i < job.columns; ++i)
      lap.turns.push_back(passes_at(job, k, column_rad(job, i)) / kTeeth);
    laps.push_back(lap);
  }
  return laps;
}

WallChart bore_chart(std::size_t columns) {
  std::vector<double> s, z;
  const WallCase job;
  for (std::size_t i = 0; i < columns; ++i)
    s.push_back(column_rad(job, i) * kBore_mm);
  for (std::size_t j = 0; j < job.rows; ++j)
    z.push_back(row_mm(job, j));
  WallChart chart = make_wall_chart(Outline::circle({0, 0}, 2.0 * kBore_mm), true, s, z);
  chart.blank_mm.assign(chart.blank_mm.size(), 1.0f);
  return chart;
}

void lay_passes_plainly(std::vector<double> &e_mm, const WallCase &job, int first, int count) {
  constexpr double kReach_rad = 0.3 / kBore_mm;
  const double step = kTurn / double(job.columns);
  for (std::size_t row = 0; row < job.rows; ++row)
    for (int pass = first; pass < first + count; ++pass) {
      const double centre = pass_angle_rad(job, kLaps - 1, pass + passes_up(row_mm(job, row)));
      const auto from = long(std::ceil((centre - kReach_rad) / step - 0.5));
      const auto to = long(std::floor((centre + kReach_rad) / step - 0.5));
      for (long i = from; i <= to; ++i) {
        const auto column = std::size_t((i + 2 * long(job.columns)) % long(job.columns));
        double &e = e_mm[row * job.columns + column];
        e = std::min(e, tooth_surface_mm((double(i) + 0.5) * step - centre, tooth_mm(pass)));
      }
    }
}

double reference_mm(const WallCase &job, std::size_t column, std::size_t row) {
  const double angle = column_rad(job, column), z = row_mm(job, row);
  double least = std::numeric_limits<double>::infinity();
  for (int lap = 0; lap < kLaps; ++lap) {
    if (z < lap_tip_mm(lap))
      continue;
    // Laps close on themselves: passes before the first and after the last belong to the same round.
    const double up = passes_up(z);
    const long nearest = std::lround(passes_at(job, lap, angle) - up);
    for (long pass = nearest - 6; pass <= nearest + 6; ++pass)
      least = std::min(least, tooth_surface_mm(angle - pass_angle_rad(job, lap, double(pass) + up),
                                               tooth_mm(std::abs(pass))));
  }
  return least;
}

double worst_wall_error_mm(std::span<const float> e_mm, const WallCase &job, int rays) {
  std::mt19937 random(11);
  std::uniform_int_distribution<std::size_t> any(0, job.rows * job.columns - 1);
  double worst = 0.0;
  for (int n = 0; n < rays; ++n) {
    const std::size_t ray = any(random);
    const double exact = reference_mm(job, ray % job.columns, ray / job.columns);
    if (std::isfinite(exact))
      worst = std::max(worst, std::abs(double(e_mm[ray]) - exact));
  }
  return worst;
}

} // namespace asperity::bench
