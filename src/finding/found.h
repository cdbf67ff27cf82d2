// What a finder returns, the list of finders, and the walk over the features of one kind.
#pragma once

#include "asperity/finding/find_all.h"

namespace asperity {

/// A finding and how far it exceeds its limit: size over limit, 1 = just at it. Ranking goes by that.
struct Found {
  Finding finding;
  double excess = 0;
};
using FoundList = std::vector<Found>;

/// A lip higher than this is a flaw where the job wants nothing particular [mm]. Common practice, no
/// published source.
inline constexpr double kLipLimit_mm = 0.05;
/// A cut deeper than this below the wanted surface is a gouge where the job gives no limits [mm]. Common
/// practice, no published source.
inline constexpr double kGougeLimit_mm = 0.05;
/// Shallower than this no line or step is reported [mm]; charts resolve far less, eyes do not.
inline constexpr double kLeastMark_mm = 0.3e-3;
/// A line or step shallower than this is not seen even on a glossy surface [mm]; used to rank where nothing
/// is wanted. From memory.
inline constexpr double kVisibleMark_mm = 2e-3;

FoundList find_base_lips(const Evidence &evidence);
FoundList find_witness_lines(const Evidence &evidence);
FoundList find_level_steps(const Evidence &evidence);
FoundList find_scallops(const Evidence &evidence);
FoundList find_uncut_skin(const Evidence &evidence);
FoundList find_gouges(const Evidence &evidence);
FoundList find_spoilboard_cuts(const Evidence &evidence);
FoundList find_keep_outs_touched(const Evidence &evidence);
FoundList find_rapids_in_stock(const Evidence &evidence);
FoundList find_rubbing(const Evidence &evidence);
FoundList find_overheating(const Evidence &evidence);
FoundList find_break_risk(const Evidence &evidence);
FoundList find_slip_risk(const Evidence &evidence);
FoundList find_cutter_overload(const Evidence &evidence);

/// Calls look(index, wall feature, its chart) for every wall.
template <class Look> void for_each_wall(const Evidence &evidence, Look look) {
  for (std::size_t i = 0; i < evidence.job.features.size() && i < evidence.charts.size(); ++i) {
    const auto *wall = std::get_if<WallFeature>(&evidence.job.features[i]);
    const auto *chart = std::get_if<WallChart>(&evidence.charts[i]);
    if (wall && chart && chart->columns() > 0 && chart->rows() > 0)
      look(static_cast<int>(i), *wall, *chart);
  }
}

/// Calls look(index, feature, its chart) for every floor and dome.
template <class Look> void for_each_floor(const Evidence &evidence, Look look) {
  for (std::size_t i = 0; i < evidence.job.features.size() && i < evidence.charts.size(); ++i) {
    const auto *chart = std::get_if<FloorChart>(&evidence.charts[i]);
    if (chart && chart->nx > 0 && chart->ny > 0)
      look(static_cast<int>(i), evidence.job.features[i], *chart);
  }
}

} // namespace asperity
