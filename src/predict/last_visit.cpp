// Looks along the path for places that are not surely clear of a feature.
#include "last_visit.h"

#include "asperity/chart/feature_chart.h"
#include "asperity/shape/keeps_clear.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Runout and bending of a cutter that does not spring out of all bounds [mm].
constexpr double kUsualBend_mm = 0.06;
/// Looks at an outline's elements: a few hundredths of a second at most.
constexpr std::size_t kMostLooks = 2'000'000;

/// Where a cutter comes to the feature's chart.
class Surroundings {
public:
  Surroundings(const Job &job, const Feature &feature);

  struct Visitor {
    double radius_mm = 0, flute_length_mm = 0;
    double slack_mm = 0; ///< how far its axis may be off the curve, in plan or in height
  };
  /// Is it sure that no cell is cut along the curve?
  bool are_left_alone(const Curve &curve, const Visitor &visitor);

private:
  double clearance_mm(Vec2 p) const;

  const Outline *outline_;
  bool is_wall_;
  double z_low_mm_, z_high_mm_; ///< tips that stay above, and flutes that end below, cut nothing
  int looks_left_;
  double band_mm_ = WallChart().band_mm;
};

Surroundings::Surroundings(const Job &job, const Feature &feature)
    : outline_(&outline_of(feature)), is_wall_(std::holds_alternative<WallFeature>(feature)),
      z_low_mm_(-std::numeric_limits<double>::infinity()),
      looks_left_(static_cast<int>(kMostLooks / std::max<std::size_t>(1, outline_->elements().size()))) {
  constexpr double kAbove_mm = 0.5; // retracts and rapids go higher
  if (const auto *wall = std::get_if<WallFeature>(&feature)) {
    z_low_mm_ = wall->z_bottom_mm;
    z_high_mm_ = wall->z_top_mm;
  } else if (const auto *floor = std::get_if<FloorFeature>(&feature)) {
    z_high_mm_ = std::max(job.blank.z_top_mm, floor->z_mm) + kAbove_mm;
  } else {
    z_high_mm_ = std::max(job.blank.z_top_mm, std::get<DomeFeature>(feature).apex_z_mm) + kAbove_mm;
  }
}

/// How far a cutter's axis is from where its edge would come to a cell, were it of no radius.
double Surroundings::clearance_mm(Vec2 p) const {
  const double depth_mm = outline_->depth_mm(p);
  return is_wall_ ? std::abs(depth_mm) - band_mm_ : kFloorEdge_mm - depth_mm;
}

bool Surroundings::are_left_alone(const Curve &curve, const Visitor &visitor) {
  const double bulge_mm = curve.is_line() || curve.is_plan_arc() ? 0.0 : 2.0 * curve.radius_mm;
  const double lowest_mm = std::min(curve.begin.z, curve.end.z) - bulge_mm - visitor.slack_mm;
  const double highest_mm = std::max(curve.begin.z, curve.end.z) + bulge_mm + visitor.slack_mm;
  if (lowest_mm > z_high_mm_ || highest_mm + visitor.flute_length_mm < z_low_mm_)
    return true;
  const double away_mm = visitor.radius_mm + visitor.slack_mm;
  return keeps_clear(
      curve, [&](Vec2 p) { return clearance_mm(p) - away_mm; }, looks_left_);
}

} // namespace

std::size_t end_of_visits(const Job &job, const TimedPath &path, const Feature &feature) {
  Surroundings surroundings(job, feature);
  std::size_t end = path.pieces.size();
  for (; end > 0; --end) {
    const PathPiece &piece = path.pieces[end - 1];
    const Cutter *cutter = job.cutter(piece.tool);
    if (cutter == nullptr)
      cutter = &job.cutters.front();
    if (!surroundings.are_left_alone(piece.curve,
                                     {0.5 * cutter->diameter_mm, cutter->flute_length_mm, kUsualBend_mm}))
      break;
  }
  return end;
}

bool keeps_away(const Job &job, const SweptPath &swept, std::size_t first_owner, const Feature &feature) {
  Surroundings surroundings(job, feature);
  const auto first = std::partition_point(swept.pieces.begin(), swept.pieces.end(),
                                          [&](const SweptPiece &piece) { return piece.owner < first_owner; });
  return std::all_of(first, swept.pieces.end(), [&](const SweptPiece &piece) {
    const SweptCutter &cutter = swept.cutters[piece.cutter];
    double slack_mm = 0.0;
    for (const PackedOffset *offset : {&swept.begin_offset(piece), &swept.end_offset(piece)})
      slack_mm = std::max({slack_mm, offset->longest_mm(), std::abs(offset->axial_mm())});
    return surroundings.are_left_alone(swept.curve(piece),
                                       {cutter.profile.radius_mm(), cutter.flute_length_mm, slack_mm});
  });
}

} // namespace asperity
