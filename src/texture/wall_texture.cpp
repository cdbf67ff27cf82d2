// Sweeps a strip of wall pass by pass, block by block, and keeps the lowest of all passes with their marks.
#include "asperity/texture/wall_texture.h"

#include "asperity/base/highest.h"
#include "asperity/base/parallel.h"
#include "asperity/sweep/sweep_wall.h"
#include "hidden_pass.h"
#include "pass.h"
#include "wall_marks.h"

#include <algorithm>
#include <atomic>
#include <thread>

namespace asperity {

namespace {

/// Blocks are long where there are few rows; of a patch they are many enough to be shared out.
constexpr std::size_t kMostColumns = 2048, kLeastColumns = 128, kMostRows = 256, kBlockCells = 8192;

/// Columns and rows of the strip that one thread works on.
struct Block {
  std::size_t column = 0, columns = 0, row = 0, rows = 0;
};

std::vector<Block> blocks_of(const WallChart &strip) {
  std::vector<Block> blocks;
  const std::size_t rows = std::min(kMostRows, strip.rows());
  const std::size_t columns =
      std::clamp(kBlockCells / std::max<std::size_t>(1, rows), kLeastColumns, kMostColumns);
  for (std::size_t row = 0; row < strip.rows(); row += rows)
    for (std::size_t column = 0; column < strip.columns(); column += columns)
      blocks.push_back(
          {column, std::min(columns, strip.columns() - column), row, std::min(rows, strip.rows() - row)});
  return blocks;
}

WallChart chart_of(const WallChart &strip, const Block &block) {
  const auto part = [](const std::vector<double> &all, std::size_t first, std::size_t count) {
    const auto begin = all.begin() + static_cast<std::ptrdiff_t>(first);
    return std::vector<double>(begin, begin + static_cast<std::ptrdiff_t>(count));
  };
  WallChart chart =
      make_wall_chart(strip.outline, strip.inside, part(strip.s_mm, block.column, block.columns),
                      part(strip.z_mm, block.row, block.rows));
  chart.band_mm = strip.band_mm;
  for (std::size_t j = 0; j < block.rows; ++j)
    for (std::size_t i = 0; i < block.columns; ++i)
      chart.blank_mm[chart.at(i, j)] = strip.blank_mm[strip.at(block.column + i, block.row + j)];
  return chart;
}

Region region_of(const WallChart &chart) {
  Region region{chart.foot.front(), chart.foot.front(), chart.z_mm.front(), chart.z_mm.back()};
  for (const Vec2 foot : chart.foot) {
    region.low = glm::min(region.low, foot);
    region.high = glm::max(region.high, foot);
  }
  return region;
}

/// How far off the wall a pass may still matter: up to the blank's surface, with a little room.
double reach_mm(const WallChart &chart) {
  constexpr double kRoom_mm = 0.1;
  return std::clamp(static_cast<double>(highest(chart.blank_mm)), 0.0, chart.band_mm) + kRoom_mm;
}

class BlockSweep {
public:
  BlockSweep(WallChart &strip, const Block &block, const TextureSource &source)
      : strip_(strip), block_(block), source_(source), chart_(chart_of(strip, block)), marks_(source) {
    for (std::size_t i = 0; i < chart_.columns(); ++i)
      rays_.push_back(wall_ray(chart_, i));
  }

  void cut(const LargeArray<PassPart> &parts, const Progress &progress) {
    // The last first: deeper levels come later and bend less at the heights above them, so that most of the
    // earlier ones are seen to lie higher before their marks are asked for.
    const std::vector<Pass> passes =
        passes_near(parts, source_.swept.cutters, region_of(chart_), reach_mm(chart_));
    for (auto at = passes.rbegin(); at != passes.rend(); ++at) {
      const Pass &pass = *at;
      if (stays_above(pass, source_.swept.cutters, chart_.outline, chart_.inside, highest_mm()))
        continue; // marks only add to what it would leave
      std::fill(chart_.envelope_mm.begin(), chart_.envelope_mm.end(), std::numeric_limits<float>::infinity());
      std::fill(chart_.owner.begin(), chart_.owner.end(), kNobody);
      if (!sweep_wall(chart_, pass.swept(source_.swept.cutters), 1, silent_) || progress.cancelled())
        return;
      lower_under(pass);
    }
  }

private:
  /// Of the block, as far as it is cut.
  double highest_mm() const {
    float most_mm = -std::numeric_limits<float>::infinity();
    for (std::size_t j = 0; j < block_.rows; ++j)
      most_mm = std::max(
          most_mm, highest({&strip_.envelope_mm[strip_.at(block_.column, block_.row + j)], block_.columns}));
    return static_cast<double>(most_mm);
  }

  void lower_under(const Pass &pass) {
    for (std::size_t j = 0; j < chart_.rows(); ++j)
      for (std::size_t i = 0; i < chart_.columns(); ++i) {
        const std::size_t cell = chart_.at(i, j), target = strip_.at(block_.column + i, block_.row + j);
        // Marks only add: what lies higher already cannot lower anything.
        if (chart_.owner[cell] == kNobody || chart_.envelope_mm[cell] > strip_.envelope_mm[target])
          continue;
        const double e = static_cast<double>(chart_.envelope_mm[cell]);
        const auto mark = marks_.height_mm(pass, rays_[i], {chart_.owner[cell], e, chart_.z_mm[j]});
        if (!mark)
          continue;
        const auto height = static_cast<float>(e + *mark);
        const std::uint32_t owner = pass.parts[chart_.owner[cell]]->piece.owner;
        if (height < strip_.envelope_mm[target] ||
            (height == strip_.envelope_mm[target] && owner < strip_.owner[target])) {
          strip_.envelope_mm[target] = height;
          strip_.owner[target] = owner;
        }
      }
  }

  WallChart &strip_;
  Block block_;
  const TextureSource &source_;
  WallChart chart_;
  WallMarks marks_;
  std::vector<WallRay> rays_;
  Progress silent_;
};

} // namespace

bool sweep_wall_with_marks(WallChart &strip, const TextureSource &source, int threads,
                           const Progress &progress) {
  const LargeArray<PassPart> parts = pass_parts(source.path, source.swept, region_of(strip), reach_mm(strip));
  const std::vector<Block> blocks = blocks_of(strip);
  const std::thread::id caller = std::this_thread::get_id();
  std::atomic<std::size_t> done{0};
  for_each_band(blocks.size(), 1, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t b = begin; b < end && !progress.cancelled(); ++b) {
      BlockSweep(strip, blocks[b], source).cut(parts, progress);
      const std::size_t finished = ++done;
      if (std::this_thread::get_id() == caller)
        progress.at("tooth marks", static_cast<double>(finished) / static_cast<double>(blocks.size()));
    }
  });
  return !progress.cancelled();
}

} // namespace asperity
