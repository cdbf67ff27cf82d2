// Joins the dents of neighbouring rows and levels into vertical lines on the wall.
#include "groove_lines.h"

#include "asperity/base/parallel.h"
#include "wall_reference.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace asperity {

namespace {

/// Rows a line must be seen in, unless the chart has fewer.
constexpr std::size_t kLeastRows = 3;
/// A line may be missing from this many rows and still be the same piece.
constexpr std::size_t kRowGap = 1;

using DentRows = std::vector<std::vector<Dent>>;

double spacing_mm(const WallChart &chart) {
  return chart.columns() > 1
             ? (chart.s_mm.back() - chart.s_mm.front()) / static_cast<double>(chart.columns() - 1)
             : 1.0;
}

bool is_round(const Outline &outline) {
  const auto &elements = outline.elements();
  return std::all_of(elements.begin(), elements.end(), [&](const OutlineElement &element) {
    return element.is_arc() && glm::length(element.centre - elements.front().centre) < 1e-6;
  });
}

DentRows dents_by_row(const WallChart &chart, std::span<const std::size_t> first_clean, double window_mm,
                      double least_mm, int threads) {
  DentRows rows(chart.rows());
  const double spacing = spacing_mm(chart);
  const auto half = static_cast<std::size_t>(std::max(1.0, std::round(0.5 * window_mm / spacing)));
  const std::optional<SlowWaves> waves =
      is_round(chart.outline) ? std::optional<SlowWaves>(chart.columns()) : std::nullopt;
  for_each_band(chart.rows(), 8, threads, [&](std::size_t begin, std::size_t end) {
    std::vector<float> e(chart.columns());
    for (std::size_t j = begin; j < end; ++j) {
      for (std::size_t i = 0; i < e.size(); ++i) {
        const std::size_t cell = chart.at(i, j);
        const bool clean = chart.is_cut(cell) && first_clean[i] != BaseRows::kNone && j >= first_clean[i];
        e[i] = clean ? chart.envelope_mm[cell] : std::numeric_limits<float>::quiet_NaN();
      }
      const std::vector<float> deviation = deviation_from_trend(waves ? waves->taken_out_of(e) : e, half);
      const bool is_flat = std::none_of(deviation.begin(), deviation.end(), [least_mm](float value) {
        return std::abs(value) > static_cast<float>(least_mm);
      });
      if (is_flat)
        continue; // whatever stands clear of the row's waviness
      rows[j] = dents_in_row(deviation, clear_threshold_mm(deviation, least_mm), spacing);
    }
  });
  return rows;
}

/// Marks which line last used each column, for grooves or for ridges.
class LastSeen {
public:
  explicit LastSeen(std::size_t columns) : line_(columns, kNoLine), row_(columns, 0) {}
  static constexpr std::size_t kNoLine = static_cast<std::size_t>(-1);

  std::size_t line_under(const Dent &dent, std::size_t row) const {
    for (std::size_t k = dent.first; k <= dent.last; ++k) {
      const std::size_t i = k % line_.size();
      if (line_[i] != kNoLine && row - row_[i] <= 1 + kRowGap)
        return line_[i];
    }
    return kNoLine;
  }
  void mark(const Dent &dent, std::size_t row, std::size_t line) {
    for (std::size_t k = dent.first; k <= dent.last; ++k) {
      line_[k % line_.size()] = line;
      row_[k % line_.size()] = row;
    }
  }

private:
  std::vector<std::size_t> line_, row_;
};

void add_dent(GrooveLine &line, const Dent &dent, std::size_t row, const WallChart &chart) {
  if (line.cells.empty()) {
    line.ridge = dent.ridge;
    line.first_row = row;
  }
  line.last_row = row;
  line.cells.push_back(chart.at(dent.deepest, row));
  if (dent.depth_mm > line.depth_mm) {
    line.depth_mm = dent.depth_mm;
    line.width_mm = dent.width_mm;
    line.centre_column = dent.centre;
    line.column = dent.deepest;
    line.row = row;
  }
}

/// Dents that overlap from row to row.
std::vector<GrooveLine> join_rows(const WallChart &chart, const DentRows &rows) {
  std::vector<GrooveLine> lines;
  LastSeen grooves(chart.columns()), ridges(chart.columns());
  for (std::size_t j = 0; j < rows.size(); ++j)
    for (const Dent &dent : rows[j]) {
      LastSeen &seen = dent.ridge ? ridges : grooves;
      std::size_t line = seen.line_under(dent, j);
      if (line == LastSeen::kNoLine) {
        line = lines.size();
        lines.emplace_back();
      }
      add_dent(lines[line], dent, j, chart);
      seen.mark(dent, j, line);
    }
  return lines;
}

void absorb(GrooveLine &line, const GrooveLine &other) {
  const bool stronger = other.depth_mm > line.depth_mm;
  GrooveLine merged = stronger ? other : line;
  merged.first_row = std::min(line.first_row, other.first_row);
  merged.last_row = std::max(line.last_row, other.last_row);
  merged.cells = line.cells;
  merged.cells.insert(merged.cells.end(), other.cells.begin(), other.cells.end());
  std::sort(merged.cells.begin(), merged.cells.end());
  line = std::move(merged);
}

/// Pieces at the same place of different levels are one line.
std::vector<GrooveLine> join_levels(const WallChart &chart, std::vector<GrooveLine> pieces) {
  const auto n = static_cast<double>(chart.columns());
  std::sort(pieces.begin(), pieces.end(), [](const GrooveLine &a, const GrooveLine &b) {
    return a.ridge != b.ridge ? b.ridge : a.centre_column < b.centre_column;
  });
  const auto same_place = [&](const GrooveLine &a, const GrooveLine &b) {
    const double apart = std::abs(std::remainder(a.centre_column - b.centre_column, n));
    return a.ridge == b.ridge &&
           apart <= std::max(2.0, 0.125 * (a.width_mm + b.width_mm) / spacing_mm(chart));
  };
  std::vector<GrooveLine> lines;
  for (GrooveLine &piece : pieces) {
    if (!lines.empty() && same_place(lines.back(), piece))
      absorb(lines.back(), piece);
    else
      lines.push_back(std::move(piece));
  }
  // The outline closes: the last line may be the first one of its sort again.
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    const auto last = std::find_if(lines.rbegin(), lines.rend(),
                                   [&](const GrooveLine &line) { return line.ridge == lines[k].ridge; });
    if ((k == 0 || lines[k - 1].ridge != lines[k].ridge) && &*last != &lines[k] &&
        same_place(lines[k], *last)) {
      absorb(lines[k], *last);
      lines.erase(std::next(last).base());
    }
  }
  return lines;
}

} // namespace

std::vector<GrooveLine> groove_lines(const WallChart &chart, std::span<const std::size_t> first_clean,
                                     double window_mm, double least_mm, int threads) {
  std::vector<GrooveLine> lines =
      join_levels(chart, join_rows(chart, dents_by_row(chart, first_clean, window_mm, least_mm, threads)));
  const std::size_t least_rows = std::min(kLeastRows, chart.rows());
  std::erase_if(lines, [&](const GrooveLine &line) { return line.cells.size() < least_rows; });
  std::stable_sort(lines.begin(), lines.end(),
                   [](const GrooveLine &a, const GrooveLine &b) { return a.depth_mm > b.depth_mm; });
  return lines;
}

} // namespace asperity
