#include "station_plan.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Places up to `to`, evenly spread from `from`, no farther apart than step_mm.
void spread(std::vector<double> &places_mm, double from_mm, double to_mm, double step_mm) {
  const double length = to_mm - from_mm;
  if (length <= 1e-9)
    return;
  const int count = std::max(1, static_cast<int>(std::ceil(length / step_mm - 1e-9)));
  for (int i = 1; i <= count; ++i)
    places_mm.push_back(i == count ? to_mm : from_mm + length * i / count);
}

bool on_line(const Station &a, const Station &b, const Station &x) {
  const double share = (x.u - a.u) / (b.u - a.u);
  const auto off = [share](Vec2 p, Vec2 q, Vec2 r) {
    const Vec2 d = glm::abs(p + share * (q - p) - r);
    return std::max(d.x, d.y);
  };
  double most =
      std::abs(a.offset.axial_mm + share * (b.offset.axial_mm - a.offset.axial_mm) - x.offset.axial_mm);
  for (std::size_t i = 0; i < kBendNodes; ++i)
    most = std::max({most, off(a.offset.left[i], b.offset.left[i], x.offset.left[i]),
                     off(a.offset.right[i], b.offset.right[i], x.offset.right[i])});
  return most <= kStraight_mm;
}

} // namespace

Vec3 heading(const PathPiece &piece, double u) {
  const Vec3 v = piece.curve.velocity(u);
  const double speed = glm::length(v);
  return speed > 0.0 ? v / speed : Vec3(0.0);
}

bool runs_on(Vec3 before, Vec3 after) {
  constexpr double kSmoothTurn_rad = 0.1;
  return glm::dot(before, after) > std::cos(kSmoothTurn_rad);
}

std::vector<double> planned_stations(const PathPiece &piece, double cutter_radius_mm) {
  if (piece.length_mm <= 0.0)
    return {1.0};
  // Lengths of speeding up and slowing down: v^2 = v0^2 + 2 a d.
  const double a = piece.acceleration_mm_per_s2;
  const auto ramp_mm = [&](double v) {
    return a > 0.0 ? (piece.v_peak_mm_per_s * piece.v_peak_mm_per_s - v * v) / (2.0 * a) : 0.0;
  };
  const double up = std::clamp(ramp_mm(piece.v_in_mm_per_s), 0.0, piece.length_mm);
  const double down = std::clamp(piece.length_mm - ramp_mm(piece.v_out_mm_per_s), up, piece.length_mm);
  double step = kStepShare * cutter_radius_mm;
  if (!piece.curve.is_line())
    step = std::min(step, 0.15 * piece.curve.radius_mm);
  std::vector<double> places;
  spread(places, 0.0, up, step / 2.0);
  spread(places, up, down, step);
  spread(places, down, piece.length_mm, step / 2.0);
  for (double &place : places)
    place /= piece.length_mm;
  places.back() = 1.0;
  return places;
}

std::uint32_t last_in_step(const TimedPath &path, std::uint32_t first, double cutter_radius_mm) {
  constexpr double kSteady = 0.8; // of the highest speed
  const PathPiece &begin = path.pieces[first];
  const auto is_steady = [](const PathPiece &piece) {
    const double slowest = std::min(piece.v_in_mm_per_s, piece.v_out_mm_per_s);
    return piece.length_mm > 0.0 && piece.curve.is_line() && slowest >= kSteady * piece.v_peak_mm_per_s;
  };
  const Vec3 begins = heading(begin, 0.0);
  double length_mm = begin.length_mm;
  std::uint32_t last = first;
  while (is_steady(path.pieces[last]) && last + 1 < path.pieces.size()) {
    const PathPiece &before = path.pieces[last], &next = path.pieces[last + 1];
    length_mm += next.length_mm;
    const bool same_cut = next.kind == begin.kind && next.tool == begin.tool &&
                          next.spindle_rpm == begin.spindle_rpm && next.turn == begin.turn;
    if (!same_cut || !is_steady(next) || length_mm > kStepShare * cutter_radius_mm ||
        !runs_on(heading(before, 1.0), heading(next, 0.0)) || !runs_on(begins, heading(next, 1.0)))
      break;
    ++last;
  }
  return last;
}

bool run_straight(const TimedPath &path, std::uint32_t first, std::uint32_t last, double within_mm) {
  const Vec3 begin = path.pieces[first].curve.begin, way = path.pieces[last].curve.end - begin;
  const double square = glm::dot(way, way);
  for (std::uint32_t i = first; i < last; ++i) {
    const Vec3 at = path.pieces[i].curve.end - begin;
    if (square <= 0.0 || glm::distance(at, glm::dot(at, way) / square * way) > within_mm)
      return false;
  }
  return true;
}

std::size_t last_in_line(const std::vector<Station> &stations, std::size_t from) {
  constexpr std::size_t kMost = 256; // looks back over at most so many stations
  std::size_t to = from + 1;
  while (to + 1 < stations.size() && to + 1 - from < kMost) {
    const auto fits = [&](const Station &x) { return on_line(stations[from], stations[to + 1], x); };
    if (!std::all_of(stations.begin() + static_cast<std::ptrdiff_t>(from) + 1,
                     stations.begin() + static_cast<std::ptrdiff_t>(to) + 1, fits))
      break;
    ++to;
  }
  return to;
}

} // namespace asperity
