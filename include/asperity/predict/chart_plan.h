// Which charts a job needs, how fine, and how much memory that takes.
#pragma once

#include "asperity/finding/find_all.h"
#include "asperity/job/job.h"

#include <cstddef>

namespace asperity {

/// Automatic spacing: fine enough to see a witness line (0.35 mm wide and more), no more than kMostCells
/// cells.
inline constexpr double kFinestSpacing_mm = 0.05;
inline constexpr double kMostCells = 4e6;

double chart_spacing_mm(const Job &job, const Feature &feature);
struct ChartSize {
  double columns = 0, rows = 0, spacing_mm = 0;
  double cells() const { return columns * rows; }
};
ChartSize chart_size(const Job &job, const Feature &feature);
double chart_cells(const Job &job, const Feature &feature);
inline constexpr double kFloorBytesPerCell = 16.0; // envelope, blank, wanted, owner
inline constexpr double kWallBytesPerCell = 12.0;  // envelope, blank, owner

/// The feature's chart with the blank's surface filled in, nothing swept yet.
Chart make_chart(const Job &job, const Feature &feature, int threads);

} // namespace asperity
