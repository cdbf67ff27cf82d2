// Sweeps a patch of floor pass by pass, rows by rows, and keeps the lowest of all passes with their marks.
#include "asperity/texture/floor_texture.h"

#include "asperity/base/parallel.h"
#include "asperity/sweep/sweep_floor.h"
#include "floor_marks_at.h"

#include <algorithm>
#include <atomic>
#include <limits>
#include <thread>

namespace asperity {

namespace {

constexpr std::size_t kBandRows = 32;

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
  rows.envelope_mm.resize(rows.nx * rows.ny);
  rows.owner.resize(rows.nx * rows.ny);
  return rows;
}

/// Passes above the blank's surface change nothing that remains.
double highest_mm(const FloorChart &chart) {
  constexpr double kRoom_mm = 0.1;
  double highest = -std::numeric_limits<double>::infinity();
  for (std::size_t cell = 0; cell < chart.blank_mm.size(); ++cell)
    if (chart.in_feature(cell))
      highest = std::max(highest, static_cast<double>(chart.blank_mm[cell]) + chart.wanted_mm[cell]);
  return highest + chart.base_mm + kRoom_mm;
}

Region region_of(const FloorChart &chart) {
  return {{chart.x_mm(0), chart.y_mm(0)},
          {chart.x_mm(chart.nx - 1), chart.y_mm(chart.ny - 1)},
          -std::numeric_limits<double>::infinity(),
          highest_mm(chart)};
}

class BandSweep {
public:
  BandSweep(FloorChart &patch, std::size_t begin, std::size_t end, const TextureSource &source)
      : patch_(patch), begin_(begin), source_(source), chart_(rows_of(patch, begin, end)), marks_(source) {}

  void cut(const LargeArray<PassPart> &parts, const Progress &progress) {
    for (const Pass &pass : passes_near(parts, source_.swept.cutters, region_of(chart_), 0.0)) {
      std::fill(chart_.envelope_mm.begin(), chart_.envelope_mm.end(), std::numeric_limits<float>::infinity());
      std::fill(chart_.owner.begin(), chart_.owner.end(), kNobody);
      if (!sweep_floor(chart_, pass.swept(source_.swept.cutters), 1, silent_) || progress.cancelled())
        return;
      lower_under(pass);
    }
  }

private:
  void lower_under(const Pass &pass) {
    const PassTrack track(pass);
    for (std::size_t j = 0; j < chart_.ny; ++j)
      for (std::size_t i = 0; i < chart_.nx; ++i) {
        const std::size_t cell = chart_.at(i, j), target = patch_.at(i, begin_ + j);
        // Marks only add: what lies higher already cannot lower anything.
        if (chart_.owner[cell] == kNobody || chart_.envelope_mm[cell] > patch_.envelope_mm[target])
          continue;
        const auto mark =
            marks_.height_mm(pass, track, chart_.owner[cell], Vec2(chart_.x_mm(i), chart_.y_mm(j)));
        if (!mark)
          continue;
        const auto height = static_cast<float>(static_cast<double>(chart_.envelope_mm[cell]) + *mark);
        const std::uint32_t owner = pass.parts[chart_.owner[cell]]->piece.owner;
        if (height < patch_.envelope_mm[target] ||
            (height == patch_.envelope_mm[target] && owner < patch_.owner[target])) {
          patch_.envelope_mm[target] = height;
          patch_.owner[target] = owner;
        }
      }
  }

  FloorChart &patch_;
  std::size_t begin_;
  const TextureSource &source_;
  FloorChart chart_;
  FloorMarks marks_;
  Progress silent_;
};

} // namespace

bool sweep_floor_with_marks(FloorChart &patch, const TextureSource &source, int threads,
                            const Progress &progress) {
  const LargeArray<PassPart> parts = pass_parts(source.path, source.swept, region_of(patch), 0.0);
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
