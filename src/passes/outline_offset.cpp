// Offsets of outlines: shift every element, trim or join neighbours, take out what vanishes, check the rest.
#include "asperity/passes/outline_offset.h"

#include "asperity/base/units.h"
#include "offset_piece.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Ends nearer than this meet; far below what any program writes [mm].
constexpr double kMeet_mm = 1e-7;
/// Pieces shorter than this are taken out [mm].
constexpr double kShortest_mm = 1e-7;
/// The distance kept may be off by rounding of a few steps of arithmetic [mm].
constexpr double kKept_mm = 1e-6;
/// Places looked at when the distance is checked lie this close [mm] ...
constexpr double kCheckStep_mm = 0.05;
/// ... but never more than so many a piece.
constexpr int kMostChecks = 4000;

/// Where the pieces' neighbours meet.
enum class Joint { meets, opens, crosses };

Joint joint_between(const OffsetPiece &a, const OffsetPiece &b, double outward_mm) {
  if (glm::distance(a.end(), b.begin()) < kMeet_mm)
    return Joint::meets;
  if (!a.is_followed_by(b))
    return Joint::crosses;
  const double turn = cross(a.tangent_at_end(), b.tangent_at_begin());
  return (outward_mm > 0.0 ? turn > 0.0 : turn < 0.0) ? Joint::opens : Joint::crosses;
}

/// Trims both to their crossing nearest the corner; false if they have none.
bool trim(OffsetPiece &a, OffsetPiece &b) {
  const Vec2 corner = a.is_followed_by(b) ? a.corner_after() : 0.5 * (a.corner_after() + b.corner_before());
  const std::vector<Vec2> crossings = crossings_of(a, b);
  if (crossings.empty())
    return false;
  const Vec2 at = *std::min_element(crossings.begin(), crossings.end(), [corner](Vec2 p, Vec2 q) {
    return glm::distance(p, corner) < glm::distance(q, corner);
  });
  a.end_at(at);
  b.begin_at(at);
  return true;
}

/// One round of trimming. Returns the piece that came out shortest, if it has no length left.
std::optional<std::size_t> trim_all(std::vector<OffsetPiece> &pieces, double outward_mm, bool &is_trimmed,
                                    std::optional<std::size_t> &stuck) {
  for (OffsetPiece &piece : pieces)
    piece.restore();
  const std::size_t n = pieces.size();
  std::vector<Joint> joints(n);
  for (std::size_t i = 0; i < n; ++i)
    joints[i] = joint_between(pieces[i], pieces[(i + 1) % n], outward_mm);
  for (std::size_t i = 0; i < n; ++i) {
    if (joints[i] != Joint::crosses)
      continue;
    is_trimmed = true;
    if (!trim(pieces[i], pieces[(i + 1) % n]) && !stuck)
      stuck = i;
  }
  const auto shortest =
      std::min_element(pieces.begin(), pieces.end(), [](const OffsetPiece &a, const OffsetPiece &b) {
        return a.length_mm() < b.length_mm();
      });
  if (shortest->length_mm() > kShortest_mm)
    return std::nullopt;
  return static_cast<std::size_t>(shortest - pieces.begin());
}

std::vector<OutlineElement> joined(const std::vector<OffsetPiece> &pieces, double outward_mm) {
  std::vector<OutlineElement> elements;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const OffsetPiece &next = pieces[(i + 1) % pieces.size()];
    OutlineElement element = pieces[i].element();
    if (joint_between(pieces[i], next, outward_mm) != Joint::opens) {
      element.end = next.begin();
      elements.push_back(element);
      continue;
    }
    elements.push_back(element);
    const Vec2 centre = pieces[i].corner_after();
    const Vec2 from = element.end - centre, to = next.begin() - centre;
    elements.push_back({element.end, next.begin(), centre, std::atan2(cross(from, to), glm::dot(from, to))});
  }
  return elements;
}

/// The first place where the path comes nearer to the outline than it should, or lies on its wrong side.
std::optional<Vec2> too_near(const Outline &outline, const std::vector<OutlineElement> &path,
                             double outward_mm) {
  for (const OutlineElement &element : path) {
    const double length_mm = element.length_mm();
    const int steps = std::clamp(static_cast<int>(std::ceil(length_mm / kCheckStep_mm)), 2, kMostChecks);
    for (int i = 0; i <= steps; ++i) {
      const Vec2 p = element.point(length_mm * i / steps);
      const double depth_mm = outline.depth_mm(p);
      if (outward_mm > 0.0 ? depth_mm > -outward_mm + kKept_mm : depth_mm < -outward_mm - kKept_mm)
        return p;
    }
  }
  return std::nullopt;
}

} // namespace

OffsetOutline offset_outline(const Outline &outline, double outward_mm) {
  OffsetOutline result;
  if (outward_mm == 0.0) {
    result.path = outline;
    return result;
  }
  std::vector<OffsetPiece> pieces;
  for (std::size_t i = 0; i < outline.elements().size(); ++i)
    if (const auto piece =
            OffsetPiece::shifted(outline.elements()[i], i, outline.elements().size(), outward_mm))
      pieces.push_back(*piece);
  result.tightest = outline.elements().front().begin;

  // Pieces that lose all their length go, one at a time: their neighbours then cross each other.
  while (!pieces.empty()) {
    std::optional<std::size_t> stuck;
    const auto gone = trim_all(pieces, outward_mm, result.is_trimmed, stuck);
    if (!gone && !stuck)
      break;
    const std::size_t which = gone ? *gone : *stuck;
    result.tightest = pieces[which].corner_after();
    if (!gone)
      return result;
    pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(which));
  }
  if (pieces.empty())
    return result;
  std::vector<OutlineElement> elements = joined(pieces, outward_mm);
  if (const auto near = too_near(outline, elements, outward_mm)) {
    result.tightest = *near;
    return result;
  }
  result.path = Outline(std::move(elements));
  return result;
}

std::optional<double> smallest_hollow_mm(const Outline &outline, bool from_outside) {
  std::optional<double> smallest;
  for (const OutlineElement &element : outline.elements())
    if (element.is_arc() && (element.sweep_rad > 0.0) != from_outside)
      smallest = std::min(smallest.value_or(element.radius_mm()), element.radius_mm());
  return smallest;
}

} // namespace asperity
