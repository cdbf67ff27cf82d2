// Passes round a wall or an outline: the path beside it, levels with an allowance, then the finish.
#include "asperity/base/units.h"
#include "wall_run.h"

#include <fmt/format.h>

namespace asperity {

namespace {

/// A cutter fits a hollow of its own radius; this much is rounding [mm].
constexpr double kFits_mm = 1e-9;

/// Path of the cutter's axis kept_mm from the wall.
std::optional<Outline> path_beside(const Planning &planning, double kept_mm) {
  const bool is_outside = planning.pass.side == Side::outside;
  const OffsetOutline offset = offset_outline(planning.pass.outline, is_outside ? kept_mm : -kept_mm);
  if (!offset.path) {
    planning.refuse(
        fmt::format(
            "the cutter does not fit: near X{:.2f} Y{:.2f} the wall leaves less room than the {:g} mm "
            "that the cutter's axis must keep",
            offset.tightest.x, offset.tightest.y, kept_mm),
        "Take a thinner cutter, or make allowance_mm smaller.");
    return std::nullopt;
  }
  if (offset.is_trimmed && kept_mm == planning.radius_mm())
    planning.warn("inside corners keep the cutter's radius: it cannot reach into them",
                  "Round the drawn corners by at least the cutter's radius, or take a thinner cutter.");
  return offset.path;
}

bool can_cut_walls(const Planning &planning) {
  const Cutter &cutter = planning.cutter;
  if (cutter.kind == CutterKind::tapered || cutter.kind == CutterKind::v)
    return planning.refuse(
        fmt::format("cutter {} has a slanted side and cannot cut an upright wall", cutter.number),
        "Choose a flat, corner-radius or ball cutter.");
  const auto hollow_mm = smallest_hollow_mm(planning.pass.outline, planning.pass.side == Side::outside);
  if (hollow_mm && planning.radius_mm() > *hollow_mm + kFits_mm)
    return planning.refuse(
        fmt::format("the cutter does not fit: its radius is {:g} mm, the wall's tightest hollow {:g} mm",
                    planning.radius_mm(), *hollow_mm),
        fmt::format("Take a cutter of at most {:g} mm diameter.", 2.0 * *hollow_mm));
  if (planning.pass.z_top_mm - planning.pass.z_bottom_mm > cutter.flute_length_mm)
    planning.warn(fmt::format("the wall is {:g} mm high, the cutter's flutes {:g} mm long",
                              planning.pass.z_top_mm - planning.pass.z_bottom_mm, cutter.flute_length_mm),
                  "The shank will rub unless it is thinner; take a longer cutter.");
  return true;
}

bool plan_finish(Planning &planning) {
  const PlannedPass &pass = planning.pass;
  const auto path = path_beside(planning, planning.radius_mm());
  if (!path)
    return false;
  planning.route.note(fmt::format("finish: the last {:g} mm", pass.allowance_mm));
  const auto levels =
      level_heights(pass.z_top_mm, pass.z_bottom_mm, pass.finish->stepdown_mm, pass.last_level);
  return WallRun(planning, *path, planning.radius_mm(), levels,
                 {pass.finish->feed_mm_per_min, pass.spring_laps})
      .run();
}

} // namespace

bool plan_wall(Planning &planning) {
  const PlannedPass &pass = planning.pass;
  if (!can_cut_walls(planning))
    return false;
  if (!planning.is_few((pass.z_top_mm - pass.z_bottom_mm) / pass.stepdown_mm, "levels"))
    return false;
  const double kept_mm = planning.radius_mm() + pass.allowance_mm;
  const auto path = path_beside(planning, kept_mm);
  if (!path)
    return false;
  const auto levels = level_heights(pass.z_top_mm, pass.z_bottom_mm, pass.stepdown_mm, pass.last_level);
  if (!WallRun(planning, *path, kept_mm, levels, {pass.feed_mm_per_min, pass.finish ? 0 : pass.spring_laps})
           .run())
    return false;
  return !pass.finish || plan_finish(planning);
}

} // namespace asperity
