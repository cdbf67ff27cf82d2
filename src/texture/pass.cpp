// Gathers parts of the path into passes.
#include "pass.h"

#include <cmath>

namespace asperity {

namespace {

/// A run that turns by more may come back over the same place.
constexpr double kMostTurn_rad = 2.0;

bool is_near(const PassPart &part, const SweptCutter &cutter, const Region &region, double reach_mm) {
  const double reach = cutter.profile.radius_mm() + reach_mm;
  return part.high.x + reach >= region.low.x && part.low.x - reach <= region.high.x &&
         part.high.y + reach >= region.low.y && part.low.y - reach <= region.high.y &&
         part.z_low_mm <= region.z_high_mm && part.z_high_mm + cutter.flute_length_mm >= region.z_low_mm;
}

double joint_turn_rad(const PassPart &before, const PassPart &after) {
  return std::atan2(cross(before.heading_out, after.heading_in),
                    glm::dot(before.heading_out, after.heading_in));
}

} // namespace

SweptPath Pass::swept(const std::vector<SweptCutter> &cutters) const {
  SweptPath path;
  path.cutters = cutters;
  path.pieces.reserve(parts.size());
  for (const PassPart *part : parts) {
    path.add(part->piece);
    path.pieces.back().owner = static_cast<std::uint32_t>(path.pieces.size() - 1);
  }
  path.pieces.front().joins_previous = false;
  return path;
}

bool Pass::is_left_to_neighbour(std::size_t part, double u) const {
  constexpr double kOutermost_mm = 1e-5; // far finer than any column spacing
  const double length = parts[part]->plan_length_mm;
  return (runs_on_before && part == 0 && u * length < kOutermost_mm) ||
         (runs_on_after && part + 1 == parts.size() && (1.0 - u) * length < kOutermost_mm);
}

std::vector<Pass> passes_near(const LargeArray<PassPart> &parts, const std::vector<SweptCutter> &cutters,
                              const Region &region, double reach_mm) {
  std::vector<Pass> passes;
  const PassPart *before = nullptr;
  double turned_rad = 0;
  for (const PassPart &part : parts) {
    if (!is_near(part, cutters[part.piece.cutter], region, reach_mm)) {
      before = nullptr;
      continue;
    }
    if (before == nullptr || part.begins_pass) {
      passes.emplace_back();
      turned_rad = part.turn_rad;
    } else {
      turned_rad += joint_turn_rad(*before, part) + part.turn_rad;
      if (std::abs(turned_rad) > kMostTurn_rad) {
        passes.back().runs_on_after = true;
        passes.emplace_back();
        passes.back().runs_on_before = true;
        passes.back().parts.push_back(before);
        turned_rad = before->turn_rad + joint_turn_rad(*before, part) + part.turn_rad;
      }
    }
    passes.back().parts.push_back(&part);
    before = &part;
  }
  return passes;
}

} // namespace asperity
