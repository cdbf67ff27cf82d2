// Heights, levels and the ways to and from the work that all passes share.
#include "planning.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// A level less than this below its neighbour is rounding, not a level [mm].
constexpr double kNoStep_mm = 1e-6;
/// Places looked at along a stroke lie this close [mm] ...
constexpr double kLookStep_mm = 0.1;
/// ... but never more than so many a stroke.
constexpr int kMostLooks = 20000;

constexpr double kMostOfAnything = 20000;

/// Plan distance from p to the keep-out's side, negative inside [mm].
double distance_mm(const KeepOut &keep_out, Vec2 p) {
  if (keep_out.is_round)
    return glm::distance(p, keep_out.centre) - 0.5 * keep_out.diameter_mm;
  const Vec2 out = glm::abs(p - keep_out.centre) - 0.5 * keep_out.size_mm;
  const double outside = glm::length(glm::max(out, Vec2(0.0)));
  return outside > 0.0 ? outside : std::max(out.x, out.y);
}

const KeepOut *hit(const Planning &planning, Vec3 tip) {
  for (const KeepOut &keep_out : planning.job.holding.keep_outs)
    if (tip.z < keep_out.z_top_mm && distance_mm(keep_out, plan(tip)) < planning.radius_mm())
      return &keep_out;
  return nullptr;
}

} // namespace

bool Planning::refuse(const std::string &message, const std::string &remedy) const {
  problems.error(job.file.string(), pass.line, pass.column, fmt::format("{}: {}", pass.name, message),
                 remedy);
  return false;
}

void Planning::warn(const std::string &message, const std::string &remedy) const {
  problems.warning(job.file.string(), pass.line, pass.column, fmt::format("{}: {}", pass.name, message),
                   remedy);
}

bool Planning::is_few(double count, const std::string &what) const {
  return count <= kMostOfAnything ||
         refuse(fmt::format("it would take more than {:g} {}", kMostOfAnything, what),
                "Choose larger steps or a steeper ramp; check their unit.");
}

void Planning::come_down(Vec2 p) const {
  if (!(route.at().z >= heights.safe_mm))
    go_up();
  route.rapid_to({p, heights.safe_mm});
  route.rapid_to({p, heights.near_mm});
}

void Planning::plunge_to(double z_mm) const {
  route.line_to({route.plan_at(), z_mm}, pass.plunge_feed_mm_per_min);
}

std::vector<double> level_heights(double top_mm, double bottom_mm, double stepdown_mm, LastLevel rule) {
  const double height_mm = top_mm - bottom_mm;
  if (stepdown_mm <= 0.0 || height_mm <= kNoStep_mm)
    return {bottom_mm};
  const auto count = static_cast<int>(std::max(1.0, std::ceil((height_mm - kNoStep_mm) / stepdown_mm)));
  const double step_mm = rule == LastLevel::equal ? height_mm / count : stepdown_mm;
  std::vector<double> heights;
  for (int i = 1; i < count; ++i)
    heights.push_back(top_mm - i * step_mm);
  heights.push_back(bottom_mm);
  return heights;
}

bool keeps_out(const Planning &planning, std::size_t first) {
  const std::vector<PassStroke> &strokes = planning.route.strokes();
  for (std::size_t i = first; i < strokes.size(); ++i) {
    const PassStroke &stroke = strokes[i];
    const bool is_known = stroke.moves() && !std::isnan(stroke.begin.x + stroke.begin.z);
    if (!is_known)
      continue;
    const int looks =
        std::clamp(static_cast<int>(std::ceil(stroke.length_mm() / kLookStep_mm)), 1, kMostLooks);
    for (int k = 0; k <= looks; ++k) {
      const Vec3 tip = stroke.point(static_cast<double>(k) / looks);
      if (const KeepOut *keep_out = hit(planning, tip))
        return planning.refuse(
            fmt::format("the cutter would run into \"{}\" at X{:.2f} Y{:.2f} Z{:.2f}", keep_out->name, tip.x,
                        tip.y, tip.z),
            stroke.kind == StrokeKind::rapid
                ? "Raise safe_mm or near_mm under [between_passes], or move what holds the blank."
                : "Move what holds the blank, or give the pass another edge, start or approach.");
    }
  }
  return true;
}

} // namespace asperity
