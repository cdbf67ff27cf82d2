// Packs pieces of path and writes them out again.
#include "asperity/sweep/swept_path.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

std::int32_t units_of(double mm) {
  constexpr double kMost = 2147483647.0;
  const double units = std::clamp(mm * PackedOffset::kPerMm, -kMost, kMost);
  return static_cast<std::int32_t>(units + std::copysign(0.5, units)); // to the nearest, halves outwards
}

std::uint32_t index_of(LargeArray<PackedOffset> &offsets, const AxisOffset &offset) {
  const PackedOffset packed = PackedOffset::of(offset);
  if (offsets.empty() || offsets.back() != packed)
    offsets.push_back(packed);
  return static_cast<std::uint32_t>(offsets.size() - 1);
}

} // namespace

double longest_mm(const BendNodes &nodes) {
  double square = 0.0;
  for (const Vec2 node : nodes)
    square = std::max(square, glm::dot(node, node));
  return std::sqrt(square);
}

double longest_mm(const AxisOffset &offset) {
  return std::max(longest_mm(offset.left), longest_mm(offset.right));
}

BendNodes between(const BendNodes &a, const BendNodes &b, double share) {
  BendNodes nodes;
  for (std::size_t i = 0; i < kBendNodes; ++i)
    nodes[i] = a[i] + share * (b[i] - a[i]);
  return nodes;
}

AxisOffset between(const AxisOffset &a, const AxisOffset &b, double share) {
  return {between(a.left, b.left, share), between(a.right, b.right, share),
          a.axial_mm + share * (b.axial_mm - a.axial_mm)};
}

PackedOffset PackedOffset::of(const AxisOffset &offset) {
  PackedOffset packed;
  for (std::size_t i = 0; i < kBendNodes; ++i)
    for (const int axis : {0, 1}) {
      const std::size_t at = 2 * i + static_cast<std::size_t>(axis);
      packed.units[at] = units_of(offset.left[i][axis]);
      packed.units[2 * kBendNodes + at] = units_of(offset.right[i][axis]);
    }
  packed.units.back() = units_of(offset.axial_mm);
  return packed;
}

AxisOffset PackedOffset::unpacked() const {
  AxisOffset offset;
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    offset.left[i] = left(i);
    offset.right[i] = right(i);
  }
  offset.axial_mm = axial_mm();
  return offset;
}

double PackedOffset::plan_bound_mm() const {
  std::int32_t most = 0;
  for (std::size_t i = 0; i < 4 * kBendNodes; ++i)
    most = std::max(most, std::abs(units[i]));
  return std::sqrt(2.0) * most / kPerMm;
}

void SweptPath::add(const BentPiece &piece, double u0, double u1) {
  SweptPiece packed;
  const Curve &curve = piece.curve;
  packed.begin = u0 == 0.0 ? curve.begin : curve.point(u0);
  packed.end = u1 == 1.0 ? curve.end : curve.point(u1);
  if (!curve.is_line()) {
    if (arcs.empty() || arcs.back() != curve)
      arcs.push_back(curve);
    packed.arc = static_cast<std::uint32_t>(arcs.size() - 1);
    packed.u0 = u0;
    packed.u1 = u1;
  }
  packed.begin_offset = index_of(offsets, piece.begin);
  packed.end_offset = index_of(offsets, piece.end);
  packed.owner = piece.owner;
  packed.cutter = piece.cutter;
  packed.joins_previous = piece.joins_previous;
  pieces.push_back(packed);
}

Curve SweptPath::curve(const SweptPiece &piece) const {
  return piece.is_line() ? Curve::line(piece.begin, piece.end)
                         : arcs[piece.arc].portion(piece.u0, piece.u1, piece.begin, piece.end);
}

BentPiece SweptPath::bent(const SweptPiece &piece) const {
  return {curve(piece),
          begin_offset(piece).unpacked(),
          end_offset(piece).unpacked(),
          piece.owner,
          piece.cutter,
          piece.joins_previous};
}

SweptPath SweptPath::stretch(std::uint32_t first, std::uint32_t end) const {
  const auto from = [this](std::uint32_t owner) {
    return std::partition_point(pieces.begin(), pieces.end(),
                                [owner](const SweptPiece &piece) { return piece.owner < owner; });
  };
  SweptPath part;
  part.pieces.assign(from(first), from(end));
  if (part.pieces.empty())
    return part;

  // Which offsets and arcs they use.
  std::size_t cutter_count = 0;
  std::uint32_t first_offset = part.pieces.front().begin_offset, last_offset = first_offset;
  std::uint32_t first_arc = kNoArc, last_arc = 0;
  for (const SweptPiece &piece : part.pieces) {
    cutter_count = std::max<std::size_t>(cutter_count, piece.cutter + 1u);
    first_offset = std::min({first_offset, piece.begin_offset, piece.end_offset});
    last_offset = std::max({last_offset, piece.begin_offset, piece.end_offset});
    if (!piece.is_line()) {
      first_arc = std::min(first_arc, piece.arc);
      last_arc = std::max(last_arc, piece.arc);
    }
  }
  const auto copy = [](const auto &all, std::size_t begin, std::size_t count, auto &some) {
    some.assign(all.begin() + static_cast<std::ptrdiff_t>(begin),
                all.begin() + static_cast<std::ptrdiff_t>(begin + count));
  };
  copy(cutters, 0, cutter_count, part.cutters);
  copy(offsets, first_offset, last_offset - first_offset + 1u, part.offsets);
  if (first_arc != kNoArc)
    copy(arcs, first_arc, last_arc - first_arc + 1u, part.arcs);
  for (SweptPiece &piece : part.pieces) {
    piece.begin_offset -= first_offset;
    piece.end_offset -= first_offset;
    piece.arc -= piece.is_line() ? 0 : first_arc;
  }
  part.pieces.front().joins_previous = false;
  return part;
}

} // namespace asperity
