// Offsets of outlines: shift every element, trim or join neighbours, take out what vanishes, check the rest.
#include "asperity/passes/outline_offset.h"

#include "asperity/base/units.h"
#include "offset_piece.h"

#include <algorithm>
#include <cmath>
#include <utility>

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

/// Trims both to their crossing: one that lies on both if there is, else the nearest to the corner between
/// them. False if they have none.
bool trim(OffsetPiece &a, OffsetPiece &b) {
  const Vec2 corner = 0.5 * (a.corner_after() + b.corner_before());
  const std::vector<Vec2> crossings = crossings_of(a, b);
  if (crossings.empty())
    return false;
  const auto rank = [&](Vec2 p) {
    const double beyond_mm = a.beyond_mm(p) + b.beyond_mm(p);
    return std::pair(beyond_mm < kMeet_mm ? 0.0 : beyond_mm, glm::distance(p, corner));
  };
  const Vec2 at = *std::min_element(crossings.begin(), crossings.end(),
                                    [&rank](Vec2 p, Vec2 q) { return rank(p) < rank(q); });
  a.end_at(at);
  b.begin_at(at);
  return true;
}

/// One round of trimming all neighbours that do not meet. Returns a piece that has to go: the one with the
/// least length left, if that is none, or the shorter of two that cannot meet.
std::optional<std::size_t> trim_all(std::vector<OffsetPiece> &pieces, bool &is_trimmed) {
  for (OffsetPiece &piece : pieces)
    piece.restore();
  const std::size_t n = pieces.size();
  std::vector<bool> meets(n);
  for (std::size_t i = 0; i < n; ++i)
    meets[i] = glm::distance(pieces[i].end(), pieces[(i + 1) % n].begin()) < kMeet_mm;
  is_trimmed = false;
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t next = (i + 1) % n;
    if (meets[i])
      continue;
    is_trimmed = true;
    if (!trim(pieces[i], pieces[next]))
      return pieces[i].whole().length_mm() < pieces[next].whole().length_mm() ? i : next;
  }
  const auto shortest =
      std::min_element(pieces.begin(), pieces.end(), [](const OffsetPiece &a, const OffsetPiece &b) {
        return a.length_mm() < b.length_mm();
      });
  if (shortest->length_mm() > kShortest_mm)
    return std::nullopt;
  return static_cast<std::size_t>(shortest - pieces.begin());
}

std::vector<OutlineElement> joined(const std::vector<OffsetPiece> &pieces) {
  std::vector<OutlineElement> elements;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    elements.push_back(pieces[i].element());
    elements.back().end = pieces[(i + 1) % pieces.size()].begin();
  }
  return elements;
}

std::vector<OffsetPiece> shifted_pieces(const Outline &outline, double outward_mm) {
  std::vector<OffsetPiece> pieces;
  const std::vector<OutlineElement> &elements = outline.elements();
  for (std::size_t i = 0; i < elements.size(); ++i) {
    if (const auto piece = OffsetPiece::shifted(elements[i], outward_mm))
      pieces.push_back(*piece);
    if (const auto arc =
            OffsetPiece::round_corner(elements[i], elements[(i + 1) % elements.size()], outward_mm))
      pieces.push_back(*arc);
  }
  return pieces;
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
  std::vector<OffsetPiece> pieces = shifted_pieces(outline, outward_mm);
  result.tightest = outline.elements().front().begin;
  // Pieces that lose all their length go, one at a time: their neighbours then cross each other.
  while (!pieces.empty()) {
    const auto gone = trim_all(pieces, result.is_trimmed);
    if (!gone)
      break;
    result.tightest = pieces[*gone].corner_after();
    pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(*gone));
  }
  if (pieces.empty())
    return result;
  std::vector<OutlineElement> elements = joined(pieces);
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
