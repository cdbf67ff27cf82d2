// Sweeps a patch of floor pass by pass, rows by rows, and keeps the lowest of all passes with their marks.
#include "asperity/texture/floor_texture.h"

#include "asperity/base/parallel.h"
#include "asperity/sweep/sweep_floor.h"
#include "floor_marks_at.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <limits>
#include <numeric>
#include <optional>
#include <thread>

namespace asperity {

namespace {

constexpr std::size_t kBandRows = 64;

FloorChart rows_of(const FloorChart &patch, std::size_t begin, std::size_t end) {
  FloorChart rows;
  rows.origin_mm = {patch.origin_mm.x, patch.y_mm(begin)};
  rows.spacing_mm = patch.spacing_mm;
  rows.nx = patch.nx;
  rows.ny = end - begin;
  rows.base_mm = patch.base_mm;
  const auto first = static_cast<std::ptrdiff_t>(patch.at(0, begin));
  const auto last = static_cast<std::ptrdiff_t>(patch.at(0, end));
  rows.wanted_mm.assign(patch.wanted_mm.begin() + first, patch.wanted_mm.begin() + last);
  rows.blank_mm.assign(patch.blank_mm.begin() + first, patch.blank_mm.begin() + last);
  return rows;
}

/// Passes above the blank's surface change nothing that remains.
double highest_mm(const FloorChart &chart, int threads) {
  constexpr double kRoom_mm = 0.1;
  constexpr std::size_t kCells = std::size_t{1} << 16;
  const std::size_t cells = chart.blank_mm.size();
  constexpr double kNone = -std::numeric_limits<double>::infinity();
  std::vector<double> of_band(band_count(cells, kCells), kNone);
  for_each_band(cells, kCells, threads, [&](std::size_t begin, std::size_t end) {
    double highest = of_band[begin / kCells];
    for (std::size_t cell = begin; cell < end; ++cell)
      if (chart.in_feature(cell))
        highest = std::max(highest, static_cast<double>(chart.blank_mm[cell]) + chart.wanted_mm[cell]);
    of_band[begin / kCells] = highest;
  });
  return std::reduce(of_band.begin(), of_band.end(), kNone,
                     [](double a, double b) { return std::max(a, b); }) +
         chart.base_mm + kRoom_mm;
}

Region region_of(const FloorChart &chart, int threads) {
  return {{chart.x_mm(0), chart.y_mm(0)},
          {chart.x_mm(chart.nx - 1), chart.y_mm(chart.ny - 1)},
          -std::numeric_limits<double>::infinity(),
          highest_mm(chart, threads)};
}

class BandSweep {
public:
  BandSweep(FloorChart &patch, std::size_t begin, std::size_t end, const TextureSource &source)
      : patch_(patch), begin_(begin), source_(source), chart_(rows_of(patch, begin, end)), marks_(source) {}

  void cut(const LargeArray<PassPart> &parts, const Progress &progress) {
    const std::vector<Pass> passes = passes_near(parts, source_.swept.cutters, region_of(chart_, 1), 0.0);
    for (std::size_t first = 0; first < passes.size(); first += kTogether) {
      swept_.clear();
      for (std::size_t i = first; i < std::min(first + kTogether, passes.size()); ++i)
        if (!sweep(passes[i]) || progress.cancelled())
          return;
      lower();
    }
  }

private:
  /// Passes are compared cell by cell before their marks are asked for, so many at a time: some 2 MB a
  /// thread.
  static constexpr std::size_t kTogether = 4;
  /// Fewer cells are quicker asked one by one.
  static constexpr std::size_t kTogetherFrom = 3;
  /// What one pass leaves by itself, without marks.
  struct Swept {
    const Pass *pass;
    PassTrack track;
    LargeArray<float> envelope_mm;
    LargeArray<std::uint32_t> owner; ///< its part
    /// A mark found in a row, from which its neighbours are told.
    struct Known {
      std::optional<FloorMarks::KnownArc> arc;
      double x_mm = 0;
      std::size_t row = 0;
    } known;
  };

  bool sweep(const Pass &pass) {
    const std::size_t cells = chart_.nx * chart_.ny;
    chart_.envelope_mm.assign(cells, std::numeric_limits<float>::infinity());
    chart_.owner.assign(cells, kNobody);
    if (!sweep_floor(chart_, pass.swept(source_.swept.cutters), 1, silent_))
      return false;
    swept_.push_back({&pass, PassTrack(pass), std::move(chart_.envelope_mm), std::move(chart_.owner), {}});
    return true;
  }

  /// Eight cells of a row at a time, the pass that is deepest there first. Marks only add: what lies higher
  /// than a pass with its marks cannot lower anything.
  void lower() {
    for (std::size_t j = 0; j < chart_.ny; ++j)
      for (std::size_t i = 0; i < chart_.nx; i += kEight) {
        std::size_t deepest = 0;
        const std::size_t cell = chart_.at(i, j);
        for (std::size_t k = 1; k < swept_.size(); ++k)
          deepest = swept_[k].envelope_mm[cell] < swept_[deepest].envelope_mm[cell] ? k : deepest;
        lower_under(swept_[deepest], i, j);
        for (std::size_t k = 0; k < swept_.size(); ++k)
          if (k != deepest)
            lower_under(swept_[k], i, j);
      }
  }

  void lower_under(Swept &swept, std::size_t first, std::size_t j) {
    std::array<std::size_t, kEight> reached{};
    std::size_t count = 0;
    for (std::size_t i = first; i < std::min(first + kEight, chart_.nx); ++i) {
      const std::size_t cell = chart_.at(i, j);
      reached[count] = i;
      count += swept.owner[cell] != kNobody && swept.envelope_mm[cell] <= patch_.envelope_mm[patch_at(i, j)]
                   ? 1
                   : 0;
    }
    if (count == 0)
      return;
    Eight x_mm{};
    for (std::size_t k = 0; k < count; ++k)
      x_mm[k] = chart_.x_mm(reached[k]);

    FloorMarks::Row row = beside_known(swept, j, x_mm);
    for (std::size_t k = 0; k < count; ++k) {
      const std::size_t cell = chart_.at(reached[k], j);
      const std::uint32_t part = swept.owner[cell];
      const Vec2 p(x_mm[k], chart_.y_mm(j));
      if (row.known[k] == 0 && count - k >= kTogetherFrom) {
        swept.known = {marks_.known_arc(*swept.pass, swept.track, part, p), p.x, j};
        row = beside_known(swept, j, x_mm);
      }
      const auto mark = row.known[k] != 0 ? std::optional(row.height_mm[k])
                                          : marks_.height_mm(*swept.pass, swept.track, part, p);
      if (mark)
        lower_cell(static_cast<float>(static_cast<double>(swept.envelope_mm[cell]) + *mark),
                   swept.pass->parts[part]->piece.owner, patch_at(reached[k], j));
    }
  }

  /// Marks that can be told from the one found last.
  static FloorMarks::Row beside_known(const Swept &swept, std::size_t j, Eight x_mm) {
    if (!swept.known.arc || swept.known.row != j)
      return {};
    for (double &x : x_mm)
      x -= swept.known.x_mm;
    return FloorMarks::beside(*swept.known.arc, x_mm);
  }

  void lower_cell(float height_mm, std::uint32_t owner, std::size_t target) {
    float &there_mm = patch_.envelope_mm[target];
    if (height_mm < there_mm || (height_mm == there_mm && owner < patch_.owner[target])) {
      there_mm = height_mm;
      patch_.owner[target] = owner;
    }
  }

  std::size_t patch_at(std::size_t i, std::size_t j) const { return patch_.at(i, begin_ + j); }

  FloorChart &patch_;
  std::size_t begin_;
  const TextureSource &source_;
  FloorChart chart_;
  FloorMarks marks_;
  std::vector<Swept> swept_;
  Progress silent_;
};

} // namespace

bool sweep_floor_with_marks(FloorChart &patch, const TextureSource &source, int threads,
                            const Progress &progress) {
  const LargeArray<PassPart> parts = pass_parts(source.path, source.swept, region_of(patch, threads), 0.0);
  const std::thread::id caller = std::this_thread::get_id();
  std::atomic<std::size_t> done{0};
  for_each_band(patch.ny, kBandRows, threads, [&](std::size_t begin, std::size_t end) {
    if (progress.cancelled())
      return;
    BandSweep(patch, begin, end, source).cut(parts, progress);
    done += end - begin;
    if (std::this_thread::get_id() == caller)
      progress.at("tooth marks", static_cast<double>(done) / static_cast<double>(patch.ny));
  });
  return !progress.cancelled();
}

} // namespace asperity
