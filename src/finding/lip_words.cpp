// The base lip in words: where it stands, why, and what cures it.
#include "base_lip.h"

#include "wording.h"

#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// How far below the base the last level should run so that wear and a zero error leave no lip [mm]. Common
/// practice, no published source.
constexpr double kOverlap_mm = 0.1;
/// A fillet lower than this is not worth words [mm].
constexpr double kLeastFillet_mm = 0.005;

std::string words_spoilboard(const HoldDown &holding, double tip_z_mm) {
  if (!holding.spoilboard_top_z_mm)
    return "";
  const double depth = *holding.spoilboard_top_z_mm - tip_z_mm;
  if (depth <= 0.0)
    return " It stays above the spoilboard.";
  if (depth <= holding.spoilboard_cut_allowed_mm + 1e-9)
    return fmt::format(" It cuts {:.2f} mm into the spoilboard ({:.2f} mm allowed).", depth,
                       holding.spoilboard_cut_allowed_mm);
  return fmt::format(
      " That would cut {:.2f} mm into the spoilboard, but {:.2f} mm is allowed: raise the blank or "
      "allow more.",
      depth, holding.spoilboard_cut_allowed_mm);
}

} // namespace

bool stands_on_floor(const Job &job, const WallFeature &wall) {
  for (const Feature &feature : job.features)
    if (const auto *floor = std::get_if<FloorFeature>(&feature))
      if (std::abs(floor->z_mm - wall.z_bottom_mm) < 0.01)
        return true;
  return false;
}

std::string lip_where(const WallFeature &wall, const WallChart &chart, const BaseLip &lip) {
  const std::string height = words_z(wall.z_bottom_mm, wall.z_bottom_mm + lip.height_mm);
  if (lip.share > 0.995)
    return "all round the base, " + height;
  std::string text = fmt::format("{:.0f} % of the way round the base, ", 100.0 * lip.share);
  if (lip.stretches > 1)
    text += fmt::format("in {} stretches, highest {}, ", lip.stretches, words_at(wall, chart, lip.column));
  else if (wall.kind == OutlineKind::circle)
    text += fmt::format("from {:.1f} to {:.1f} deg, ", angle_deg(wall, chart, lip.stretch_first),
                        angle_deg(wall, chart, lip.stretch_last));
  else
    text += fmt::format("from {} to {}, ", words_xy(chart.foot[lip.stretch_first]),
                        words_xy(chart.foot[lip.stretch_last]));
  return text + height;
}

std::string lip_cause(const BaseLip &lip) {
  const double fillet = lip.height_mm - lip.unreached_mm;
  const bool has_fillet = lip.cutter_corner_mm > 0.0 && fillet > kLeastFillet_mm;
  if (lip.unreached_mm <= 0.0)
    return has_fillet ? fmt::format("The cutter's rounded corner ({:.2f} mm) leaves a fillet at the base.",
                                    lip.cutter_corner_mm)
                      : "The cut leans out towards the base.";
  std::string text = fmt::format("The deepest pass ends {:.3f} mm above the base", lip.unreached_mm);
  if (has_fillet)
    text += fmt::format(", and the cutter's rounded corner ({:.2f} mm) leaves a fillet above that",
                        lip.cutter_corner_mm);
  return text + ".";
}

std::string lip_remedy(const Job &job, const WallFeature &wall, const BaseLip &lip) {
  if (stands_on_floor(job, wall)) {
    if (lip.unreached_mm > kLeastFillet_mm)
      return fmt::format("Lower the last level by {:.3f} mm, down to the floor.{}", lip.unreached_mm,
                         lip.cutter_corner_mm > 0.0 ? " A sharp-cornered cutter leaves no fillet." : "");
    return "Finish the base with a sharp-cornered flat cutter, or accept a fillet of the corner radius.";
  }
  const double tip_z = wall.z_bottom_mm - lip.cutter_corner_mm - kOverlap_mm;
  const double program_z = tip_z - job.setup.program_zero_mm.z;
  const double lower_by = lip.deepest_tip_z_mm - tip_z;
  if (lower_by <= 0.0)
    return "Take a lighter finishing pass, or a shorter and thicker cutter: the cutter bends away at its "
           "tip.";
  return fmt::format(
      "Add a level at program Z {:.2f} mm, or lower the last level by {:.2f} mm: then the cutter's "
      "corner passes {:.1f} mm below the base.{}",
      program_z, lower_by, kOverlap_mm, words_spoilboard(job.holding, tip_z));
}

} // namespace asperity
