// Finds places that keep the blank's own skin: too little stock there, or no pass comes by.
#include "line_tally.h"
#include "surface_view.h"
#include "wall_reference.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// More skin than this share of the surface, or skin this far below the wanted surface, is a flaw. Common
/// practice, no published source.
constexpr double kFlawShare = 0.01;
constexpr double kFlawMissing_mm = 0.05;
/// Stock standing less proud than this where no pass comes by is left unsaid [mm].
constexpr double kLeastStock_mm = 0.05;
/// Less than this share of the surface is not reported, unless the blank is too small there.
constexpr double kLeastShare = 1e-4;

struct SkinPatches {
  std::vector<bool> marked;
  std::size_t count = 0;         ///< marked cells
  std::size_t all = 0;           ///< cells of the feature
  std::size_t extreme = 0;       ///< marked cell with the lowest (skin) or highest (stock) blank
  double blank_mm = 0;           ///< there
  std::size_t without_blank = 0; ///< marked cells with no blank at all
};

/// Cells a pass went over without touching the blank.
SkinPatches passed_over(const SurfaceView &view) {
  SkinPatches skin;
  skin.marked.assign(view.cells(), false);
  for (std::size_t cell = 0; cell < view.cells(); ++cell) {
    if (!view.in_feature(cell))
      continue;
    ++skin.all;
    if (!view.is_reached(cell) || view.is_cut(cell))
      continue;
    const double blank = (*view.blank_mm)[cell];
    skin.marked[cell] = true;
    ++skin.count;
    if (!std::isfinite(blank)) {
      if (skin.count == 1)
        skin.extreme = cell;
      ++skin.without_blank;
    } else if (skin.count - skin.without_blank == 1 || blank < skin.blank_mm) {
      skin.extreme = cell;
      skin.blank_mm = blank;
    }
  }
  return skin;
}

/// Cells with stock that no pass comes by; `is_lip` says which of them the base lip already covers.
template <class IsLip> SkinPatches not_reached(const SurfaceView &view, IsLip is_lip) {
  SkinPatches skin;
  skin.marked.assign(view.cells(), false);
  for (std::size_t cell = 0; cell < view.cells(); ++cell) {
    if (!view.in_feature(cell))
      continue;
    ++skin.all;
    const double blank = (*view.blank_mm)[cell];
    if (view.is_reached(cell) || blank <= kLeastStock_mm || is_lip(cell))
      continue;
    if (blank > skin.blank_mm) {
      skin.extreme = cell;
      skin.blank_mm = blank;
    }
    skin.marked[cell] = true;
    ++skin.count;
  }
  return skin;
}

Found found_patches(const SurfaceView &view, const SkinPatches &skin) {
  Found found;
  Finding &finding = found.finding;
  const double share = static_cast<double>(skin.count) / static_cast<double>(skin.all);
  const std::vector<Patch> patches = patches_of(skin.marked, view.columns, view.wraps);
  finding.kind = FindingKind::uncut_skin;
  finding.feature = view.feature;
  finding.place_mm = view.place_mm(skin.extreme);
  finding.where = view.where(patches.front());
  if (patches.size() > 1)
    finding.where += fmt::format(" (the largest of {} patches)", patches.size());
  finding.size = {{"share of the surface", 100.0 * share, "%"}};
  found.excess = share / kFlawShare;
  finding.weight = share > kFlawShare ? Weight::flaw : Weight::note;
  return found;
}

Found found_skin(const Evidence &evidence, const SurfaceView &view, const SkinPatches &skin) {
  Found found = found_patches(view, skin);
  Finding &finding = found.finding;
  const double missing = std::max(0.0, -skin.blank_mm);
  finding.size.push_back({"missing", missing, "mm"});
  found.excess = std::max(found.excess, missing / kFlawMissing_mm);
  if (missing > kFlawMissing_mm)
    finding.weight = Weight::flaw;
  finding.cause =
      missing > 0.0
          ? fmt::format("The blank is too small here: it lies up to {:.3f} mm below the wanted surface, so "
                        "the cutter passes over it.",
                        missing)
          : "The blank's own surface lies lower than the cut, so its skin stays.";
  if (skin.without_blank > 0) {
    finding.size.push_back({"no blank at all", 100.0 * double(skin.without_blank) / double(skin.all), "%"});
    finding.cause += " Part of it has no blank at all.";
    finding.weight = Weight::flaw;
  }
  finding.remedy = "Make the blank larger here, or shift the zero so that stock is left all round.";
  LineTally lines;
  for (std::size_t cell = 0; cell < view.cells(); ++cell)
    if (skin.marked[cell])
      lines.add_owner(evidence.path, (*view.owner)[cell]);
  lines.write_to(finding);
  return found;
}

Found found_stock(const SurfaceView &view, const SkinPatches &skin) {
  Found found = found_patches(view, skin);
  Finding &finding = found.finding;
  finding.size.push_back({"stock left", skin.blank_mm, "mm"});
  finding.cause = "No pass comes by here: the stock stays as it is.";
  finding.remedy =
      "Add passes that cover this place, or check the program zero and the side the cutter runs on.";
  return found;
}

/// Which cells of a wall belong to the lip at its base.
std::vector<bool> lip_cells(const WallChart &chart, const WallReference &reference) {
  std::vector<bool> lip(chart.envelope_mm.size(), false);
  if (!reference.usable)
    return lip;
  const BaseRows &base = reference.base;
  for (std::size_t i = 0; i < chart.columns(); ++i)
    if (base.first_clean[i] != BaseRows::kNone)
      for (std::size_t j = 0; j < base.first_clean[i]; ++j)
        lip[chart.at(i, j)] = true;
  return lip;
}

} // namespace

FoundList find_uncut_skin(const Evidence &evidence) {
  FoundList all;
  for (const SurfaceView &view : surface_views(evidence)) {
    const SkinPatches skin = passed_over(view);
    const auto enough = [&](const SkinPatches &patches) {
      return static_cast<double>(patches.count) > kLeastShare * static_cast<double>(patches.all);
    };
    if (enough(skin) || (skin.count > 0 && skin.blank_mm < -kFlawMissing_mm))
      all.push_back(found_skin(evidence, view, skin));
    std::vector<bool> lip(view.cells(), false);
    if (const auto *wall = std::get_if<WallChart>(&evidence.charts[static_cast<std::size_t>(view.feature)]))
      lip = lip_cells(*wall, reference_on(evidence, view.feature, *wall));
    if (const SkinPatches stock = not_reached(view, [&](std::size_t cell) { return lip[cell]; });
        enough(stock))
      all.push_back(found_stock(view, stock));
  }
  return all;
}

} // namespace asperity
