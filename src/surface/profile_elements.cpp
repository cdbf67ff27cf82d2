// Profile elements between crossings of the mean line, for RSm.
#include "asperity/surface/profile_parameters.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// What lies between two crossings of the mean line [samples; height in mm].
struct Lobe {
  double begin = 0, end = 0;
  bool is_peak = false;
  bool is_whole = true; ///< false where the profile's end cuts it off
  double height_mm = 0;
};

/// Crossings stand where the straight line between samples does.
std::vector<Lobe> lobes_of(std::span<const double> heights) {
  std::vector<Lobe> lobes;
  Lobe open;
  open.is_whole = false;
  for (std::size_t i = 0; i < heights.size(); ++i) {
    const bool above = heights[i] > 0;
    if (i > 0 && above != open.is_peak) {
      open.end = static_cast<double>(i) - heights[i] / (heights[i] - heights[i - 1]);
      lobes.push_back(open);
      const double crossing = open.end;
      open = Lobe{};
      open.begin = crossing;
    }
    open.is_peak = above;
    open.height_mm = std::max(open.height_mm, std::abs(heights[i]));
  }
  open.is_whole = false;
  open.end = static_cast<double>(heights.size());
  lobes.push_back(open);
  return lobes;
}

/// Small lobes join the lobe before them; neighbours then left on the same side join too. A small rest at
/// either end of the profile belongs to nobody.
std::vector<Lobe> joined(std::span<const double> heights, double spacing_mm, const Discrimination &least) {
  std::vector<Lobe> kept;
  for (const Lobe &lobe : lobes_of(heights)) {
    const double least_mm = lobe.is_peak ? least.peak_mm : least.valley_mm;
    const bool is_wide = !lobe.is_whole || (lobe.end - lobe.begin) * spacing_mm >= least.width_mm;
    const bool counts = lobe.height_mm > least_mm && is_wide;
    if (counts && (kept.empty() || kept.back().is_peak != lobe.is_peak)) {
      kept.push_back(lobe);
    } else if (!kept.empty() && (counts || lobe.is_whole)) {
      kept.back().end = lobe.end;
      kept.back().is_whole = kept.back().is_whole && lobe.is_whole;
    }
  }
  return kept;
}

struct Widths {
  double sum = 0; ///< samples
  std::size_t elements = 0;
};

/// Two whole lobes make an element.
Widths search(std::span<const double> heights, double spacing_mm, const Discrimination &least) {
  const std::vector<Lobe> lobes = joined(heights, spacing_mm, least);
  std::size_t first = 0, end = lobes.size();
  if (end > 0 && !lobes.front().is_whole)
    ++first;
  if (end > first && !lobes[end - 1].is_whole)
    --end;
  const std::size_t elements = (end - first) / 2;
  if (elements == 0)
    return {};
  return {lobes[first + 2 * elements - 1].end - lobes[first].begin, elements};
}

} // namespace

double mean_element_width_mm(std::span<const double> roughness_mm, double spacing_mm,
                             const Discrimination &least) {
  const std::vector<double> reversed(roughness_mm.rbegin(), roughness_mm.rend());
  const Widths forward = search(roughness_mm, spacing_mm, least);
  const Widths backward = search(reversed, spacing_mm, least);
  const std::size_t elements = forward.elements + backward.elements;
  return elements == 0 ? 0.0 : (forward.sum + backward.sum) * spacing_mm / static_cast<double>(elements);
}

} // namespace asperity
