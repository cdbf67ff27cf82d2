// Finds moves in which cutter or shank enters a bolt or clamp.
#include "found.h"
#include "line_tally.h"
#include "wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// Depth to which a touch is resolved, and what counts as one [mm].
constexpr double kResolution_mm = 1e-3;

/// The standing cutter as far as a keep-out is concerned.
struct Body {
  CutterProfile profile;
  double flute_length_mm = 0, shank_radius_mm = 0, stick_out_mm = 0;

  /// Widest radius between the tip and height h above it [mm]; negative below the tip. The holder is not
  /// known.
  double radius_up_to(double h_mm) const {
    if (h_mm < 0.0)
      return -1.0;
    const double edge = profile.radius_at(std::min(h_mm, std::max(flute_length_mm, profile.shoulder_mm())));
    return h_mm > flute_length_mm ? std::max(edge, shank_radius_mm) : edge;
  }
};

Body body_of(const Job &job, int tool) {
  Body body;
  const Cutter *cutter = job.cutter(tool);
  if (!cutter)
    return body;
  body.profile =
      cutter->profile().grown(0.5 * (job.effects.diameter_error ? cutter->diameter_error_mm : 0.0));
  body.flute_length_mm = cutter->flute_length_mm;
  body.shank_radius_mm = 0.5 * cutter->shank_diameter_mm;
  body.stick_out_mm = cutter->stick_out_mm;
  return body;
}

/// Plan distance from p to the keep-out [mm], negative inside.
double plan_distance_mm(const KeepOut &keep_out, Vec2 p) {
  const Vec2 d = p - keep_out.centre;
  if (keep_out.is_round)
    return glm::length(d) - 0.5 * keep_out.diameter_mm;
  const Vec2 beyond(std::abs(d.x) - 0.5 * keep_out.size_mm.x, std::abs(d.y) - 0.5 * keep_out.size_mm.y);
  return glm::length(glm::max(beyond, Vec2(0.0))) + std::min(std::max(beyond.x, beyond.y), 0.0);
}

struct Touch {
  double depth_mm = 0; ///< how far the cutter's side lies inside the keep-out
  Vec3 tip_mm{0.0};
  bool by_holder = false; ///< the keep-out reaches above the stick-out there
};

/// Deepest entry over the portion [u0, u1], if deeper than `touch` already has: the interval is split until
/// its bound says no more. Plan distance cannot change faster than the path is long.
void deepest_entry(const KeepOut &keep_out, const Body &body, const Curve &curve, double u0, double u1,
                   double length_mm, Touch &touch) {
  const double half = 0.5 * length_mm;
  const Vec3 middle = curve.point(0.5 * (u0 + u1));
  const double distance = plan_distance_mm(keep_out, plan(middle));
  const double bound = body.radius_up_to(keep_out.z_top_mm - middle.z + half) - (distance - half);
  // A hundredth of a deep entry is near enough; finer, a path all round a bolt would be split into dust.
  if (bound <= 1.01 * touch.depth_mm + kResolution_mm)
    return;
  const double above_tip = keep_out.z_top_mm - middle.z;
  if (above_tip >= 0.0)
    if (const double depth = body.radius_up_to(above_tip) - distance; depth > touch.depth_mm)
      touch = {depth, middle, above_tip > body.stick_out_mm};
  if (length_mm <= kResolution_mm)
    return;
  const double u = 0.5 * (u0 + u1);
  deepest_entry(keep_out, body, curve, u0, u, half, touch);
  deepest_entry(keep_out, body, curve, u, u1, half, touch);
}

/// Height of the holder's face over the top of a keep-out that the holder, of unknown size, might hit.
bool holder_below_top(const KeepOut &keep_out, const Body &body, const Curve &curve) {
  return std::min(curve.begin.z, curve.end.z) + body.stick_out_mm < keep_out.z_top_mm;
}

struct Entries {
  Touch worst;
  bool rapid = false;
  bool holder_low = false; ///< somewhere on the path the holder runs below the keep-out's top
  LineTally lines;
};

Entries entries_into(const Evidence &evidence, const KeepOut &keep_out) {
  Entries entries;
  Body body;
  int tool = -1;
  for (const PathPiece &piece : evidence.path.pieces) {
    if (piece.tool != tool) {
      tool = piece.tool;
      body = body_of(evidence.job, tool);
    }
    Touch touch;
    deepest_entry(keep_out, body, piece.curve, 0.0, 1.0, piece.curve.length_mm(), touch);
    entries.holder_low = entries.holder_low || holder_below_top(keep_out, body, piece.curve);
    if (touch.depth_mm <= kResolution_mm)
      continue;
    entries.lines.add_line(piece.line, touch.depth_mm);
    entries.rapid = entries.rapid || piece.kind == MoveKind::rapid;
    if (touch.depth_mm > entries.worst.depth_mm)
      entries.worst = touch;
  }
  return entries;
}

Found found_entry(const KeepOut &keep_out, const Entries &entries) {
  Found found;
  Finding &finding = found.finding;
  const std::string name = keep_out.name.empty() ? "a keep-out" : keep_out.name;
  found.excess = 10.0 + entries.worst.depth_mm;
  finding.kind = FindingKind::keep_out_touched;
  finding.weight = Weight::danger;
  finding.place_mm = entries.worst.tip_mm;
  finding.where = fmt::format("at {}, tip at {}", name, words_xyz(entries.worst.tip_mm));
  finding.size = {{"depth", entries.worst.depth_mm, "mm"}};
  finding.cause =
      fmt::format("The cutter{} runs {:.2f} mm into {}{}.", entries.worst.by_holder ? " and its holder" : "",
                  entries.worst.depth_mm, name, entries.rapid ? ", in part at rapid speed" : "");
  finding.remedy = "Do not run this program. Move the path, the bolt or clamp, or travel above it.";
  if (entries.holder_low)
    finding.rests_on = "the holder also runs below its top; the holder's size is not known and not checked";
  entries.lines.write_to(finding);
  return found;
}

} // namespace

FoundList find_keep_outs_touched(const Evidence &evidence) {
  FoundList all;
  for (const KeepOut &keep_out : evidence.job.holding.keep_outs) {
    const Entries entries = entries_into(evidence, keep_out);
    if (entries.worst.depth_mm > kResolution_mm)
      all.push_back(found_entry(keep_out, entries));
  }
  return all;
}

} // namespace asperity
