// Groups laps of the same steady feed, and leaves out teeth too short to touch.
#include "tooth_block.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace asperity {
namespace {

/// Laps whose turns differ by no more than this have the same feed [turns]: 1e-6 of a hollow's height.
constexpr double kSameTurns = 1e-7;
/// No place is farther from a pass than half a turn, a little more where turns shorten quickly.
constexpr double kFarthestTurns = 0.6;

struct Slopes {
  double first, second;
};

/// Derivatives of turns over s at a column, by the parabola through three neighbours.
Slopes slopes_at(const std::vector<double> &s, const std::vector<double> &turns, std::size_t column) {
  const std::size_t i = std::clamp<std::size_t>(column, 1, s.size() - 2);
  const double before = s[i] - s[i - 1], after = s[i + 1] - s[i];
  const double a = (turns[i] - turns[i - 1]) / before, b = (turns[i + 1] - turns[i]) / after;
  const double second = 2.0 * (b - a) / (before + after);
  const double at_middle = (a * after + b * before) / (before + after);
  return {at_middle + second * (s[column] - s[i]), second};
}

/// -0.5 to 0.5.
double off_whole(double turns) { return turns - std::floor(turns + 0.5); }

/// Turns so many offsets into the places of the passes [turns]; the outermost are seen from the other side
/// too.
std::span<const float> passes_round(std::span<float> offset, std::size_t count) {
  const auto given = offset.first(count);
  for (float &place : given)
    place = -place;
  const auto [least, most] = std::minmax_element(given.begin(), given.end());
  offset[count] = *least + 1.0f;
  offset[count + 1] = *most - 1.0f;
  return offset.first(count + 2);
}

double rise_mm(const ToothLap &lap, double aside_mm) {
  const double x = aside_mm * aside_mm;
  return x * (lap.bow_per_mm + lap.bow4_per_mm3 * x);
}

} // namespace

ToothBlock::ToothBlock(const WallChart &chart, std::span<const ToothLap> laps, std::size_t first_column)
    : laps_(laps), first_(first_column), count_(std::min(kColumns, chart.columns() - first_column)) {
  for (std::size_t lap = 0; lap < laps.size(); ++lap)
    add(chart, lap);
  for (Group &group : groups_)
    std::sort(group.teeth.begin(), group.teeth.end(),
              [](const Tooth &a, const Tooth &b) { return a.base_mm < b.base_mm; });
}

double ToothBlock::steady_turns_per_mm(const WallChart &chart, const ToothLap &lap) const {
  const double begin = lap.turns[first_], from = chart.s_mm[first_];
  const double slope = slopes_at(chart.s_mm, lap.turns, first_).first;
  double bent = 0.0;
  for (std::size_t k = first_; k < first_ + count_; ++k)
    bent = std::max(bent, std::abs(lap.turns[k] - begin - slope * (chart.s_mm[k] - from)));
  return bent <= kSameTurns ? slope : 0.0;
}

ToothBlock::Group *ToothBlock::group_like(const ToothLap &lap, double turns_per_mm) {
  for (Group &group : groups_) {
    const ToothLap &other = laps_[group.teeth.front().lap];
    // Both are straight: their ends tell.
    const double across = (lap.turns[first_ + count_ - 1] - lap.turns[first_]) -
                          (other.turns[first_ + count_ - 1] - other.turns[first_]);
    if (group.is_steady() && turns_per_mm != 0.0 && lap.bow_per_mm == other.bow_per_mm &&
        lap.bow4_per_mm3 == other.bow4_per_mm3 && std::abs(across) <= kSameTurns)
      return &group;
  }
  return nullptr;
}

ToothBlock::Group ToothBlock::group_of(const WallChart &chart, const ToothLap &lap,
                                       double turns_per_mm) const {
  Group group;
  group.turns_per_mm = turns_per_mm;
  for (std::size_t k = first_; k < first_ + count_; ++k)
    group.turns.push_back(static_cast<float>(off_whole(lap.turns[k] - lap.turns[first_])));
  if (group.is_steady()) {
    group.longest_mm = 1.0 / std::abs(turns_per_mm);
    return group;
  }
  for (std::size_t k = first_; k < first_ + count_; ++k) {
    const Slopes at = slopes_at(chart.s_mm, lap.turns, k);
    const double length = 1.0 / at.first; // ds per turn; its change: -u'' / u'^3
    group.length_mm.push_back(static_cast<float>(length));
    group.half_change_mm.push_back(static_cast<float>(-0.5 * at.second * length * length * length));
    group.longest_mm = std::max(group.longest_mm, std::abs(length));
  }
  return group;
}

void ToothBlock::add(const WallChart &chart, std::size_t index) {
  const ToothLap &lap = laps_[index];
  const double turns_per_mm = steady_turns_per_mm(chart, lap);
  Group *home = group_like(lap, turns_per_mm);
  if (home == nullptr)
    home = &groups_.emplace_back(group_of(chart, lap, turns_per_mm));
  const auto teeth = static_cast<double>(lap.lag_mm.size());
  for (std::size_t i = 0; i < lap.lag_mm.size(); ++i)
    home->teeth.push_back(
        {lap.base_mm + lap.lag_mm[i], index, lap.turns[first_] - static_cast<double>(i) / teeth});
}

void ToothBlock::lower_group(const Group &group, double z, float &ceiling, std::span<float> square,
                             std::span<float> e) const {
  constexpr std::size_t kMostOffsets = 64;
  std::array<float, kMostOffsets + 2> offset;
  for (std::size_t i = 0; i < group.teeth.size();) {
    // Steady teeth of one height are asked for together: the nearest pass of any of them is the lowest.
    const Tooth &first = group.teeth[i];
    std::size_t count = 0;
    for (; i < group.teeth.size() && group.teeth[i].base_mm == first.base_mm && count < kMostOffsets; ++i) {
      const ToothLap &lap = laps_[group.teeth[i].lap];
      const double turns = group.teeth[i].turns - lap.turns_per_mm_up * z;
      if (z >= lap.low_mm && z <= lap.high_mm)
        offset[count++] = static_cast<float>(off_whole(turns));
      if (!group.is_steady() && count > 0) {
        ++i;
        break;
      }
    }
    if (count == 0)
      continue;
    // No hollow of this tooth is lower than its own bottom; some other already is, everywhere.
    const auto base = static_cast<float>(first.base_mm);
    if (base >= ceiling)
      continue;
    const ToothLap &lap = laps_[first.lap];
    ceiling = std::min(ceiling,
                       static_cast<float>(first.base_mm + rise_mm(lap, kFarthestTurns * group.longest_mm)));
    const double turn2 = group.longest_mm * group.longest_mm;
    if (group.is_steady()) {
      nearest_passes(group.turns, passes_round(offset, count), square);
      lower_to_bow(square, {base, float(lap.bow_per_mm * turn2), float(lap.bow4_per_mm3 * turn2 * turn2)}, e);
    } else {
      lower_to_passes({group.turns, group.length_mm, group.half_change_mm}, offset[0],
                      {base, float(lap.bow_per_mm), float(lap.bow4_per_mm3)}, e);
    }
  }
}

void ToothBlock::lower(WallChart &chart, std::size_t row, std::span<float> square) const {
  const std::span<float> e(&chart.envelope_mm[chart.at(first_, row)], count_);
  float ceiling = std::numeric_limits<float>::infinity();
  for (const Group &group : groups_)
    lower_group(group, chart.z_mm[row], ceiling, square.first(count_), e);
}

} // namespace asperity
