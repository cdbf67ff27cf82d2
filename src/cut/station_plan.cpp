#include "station_plan.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace asperity {

namespace {

/// A part of a piece's length with stations evenly spread over it, the last one at its end.
struct Spread {
  double from_mm = 0, to_mm = 0;
  int count = 0;
};

Spread spread(double from_mm, double to_mm, double most_apart_mm) {
  constexpr double kNoLength_mm = 1e-9;
  const double length_mm = to_mm - from_mm;
  const int count = std::max(1, static_cast<int>(std::ceil(length_mm / most_apart_mm - 1e-9)));
  return {from_mm, to_mm, length_mm > kNoLength_mm ? count : 0};
}

/// Speeding up, steady, slowing down: v^2 = v0^2 + 2 a d.
std::array<Spread, 3> spreads_of(const PathPiece &piece, double cutter_radius_mm) {
  const double a = piece.acceleration_mm_per_s2;
  const auto ramp_mm = [&](double v) {
    return a > 0.0 ? (piece.v_peak_mm_per_s * piece.v_peak_mm_per_s - v * v) / (2.0 * a) : 0.0;
  };
  const double up = std::clamp(ramp_mm(piece.v_in_mm_per_s), 0.0, piece.length_mm);
  const double down = std::clamp(piece.length_mm - ramp_mm(piece.v_out_mm_per_s), up, piece.length_mm);
  double step = kStepShare * cutter_radius_mm;
  if (!piece.curve.is_line())
    step = std::min(step, 0.15 * piece.curve.radius_mm);
  return {spread(0.0, up, step / 2.0), spread(up, down, step), spread(down, piece.length_mm, step / 2.0)};
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
  std::vector<double> places;
  for (const auto &[from_mm, to_mm, count] : spreads_of(piece, cutter_radius_mm))
    for (int i = 1; i <= count; ++i)
      places.push_back((i == count ? to_mm : from_mm + (to_mm - from_mm) * i / count) / piece.length_mm);
  if (places.empty())
    places.push_back(1.0);
  places.back() = 1.0;
  return places;
}

int planned_station_count(const PathPiece &piece, double cutter_radius_mm) {
  int count = 0;
  for (const Spread &part : spreads_of(piece, cutter_radius_mm))
    count += part.count;
  return std::max(1, count);
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
