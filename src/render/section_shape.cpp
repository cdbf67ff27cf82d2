// A feature cut through.
#include "section_shape.h"

#include "surface_grid.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kStockShown_mm = 3.0; ///< of the material behind the wanted surface
constexpr double kBesideShown_mm = 2.0;
constexpr double kBoardShown_mm = 1.5;

std::size_t nearest(const std::vector<double> &places, double at) {
  const auto after = std::lower_bound(places.begin(), places.end(), at);
  if (after == places.begin())
    return 0;
  const bool is_last = after == places.end();
  const auto before = after - 1;
  return static_cast<std::size_t>((is_last || at - *before < *after - at ? before : after) - places.begin());
}

/// The cells of the cut in turn: where along it, kind, residual, blank, and the wanted height of a floor.
struct Profile {
  std::vector<double> along_mm, residual_mm, blank_mm, wanted_mm;
  std::vector<SurfaceKind> kinds;
  bool is_wall = true;
};

Profile profile_of(const Chart &chart, double at_mm) {
  Profile profile;
  const auto take = [&](double along, std::size_t cell, double blank, double wanted) {
    profile.along_mm.push_back(along);
    profile.residual_mm.push_back(static_cast<double>(residual_mm(chart, cell)));
    profile.blank_mm.push_back(blank);
    profile.wanted_mm.push_back(wanted);
    profile.kinds.push_back(surface_kind(chart, cell));
  };
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    const std::size_t column = nearest(wall->s_mm, at_mm);
    for (std::size_t j = 0; j < wall->rows(); ++j) {
      const std::size_t cell = wall->at(column, j);
      take(wall->z_mm[j], cell, static_cast<double>(wall->blank_mm[cell]), 0.0);
    }
    return profile;
  }
  const auto &floor = std::get<FloorChart>(chart);
  profile.is_wall = false;
  const SectionCell at = section_cell(chart, at_mm, Vec2(0.0));
  for (std::size_t i = 0; i < floor.nx; ++i) {
    const std::size_t cell = floor.at(i, at.row);
    take(floor.x_mm(i), cell, static_cast<double>(floor.blank_mm[cell]),
         static_cast<double>(floor.wanted_mm[cell]));
  }
  return profile;
}

double shown(const Profile &p, std::size_t k, const SectionAsk &ask) {
  const double times = p.kinds[k] == SurfaceKind::cut ? ask.times : 1.0;
  return std::clamp(p.residual_mm[k] * times, -ask.farthest_mm, ask.farthest_mm);
}

/// (along, off) to the sheet: a wall stands upright, a floor lies.
Vec2 on_sheet(const Profile &p, double along, double off) {
  return p.is_wall ? Vec2(off, along) : Vec2(along, off);
}

void add_line(std::vector<LineStretch> &lines, Vec2 a, Vec2 b, double &along_mm) {
  lines.push_back({.begin = {static_cast<float>(a.x), static_cast<float>(a.y), 0.0f},
                   .end = {static_cast<float>(b.x), static_cast<float>(b.y), 0.0f},
                   .along_mm = static_cast<float>(along_mm)});
  along_mm += glm::length(b - a);
}

/// Stretches of one kind: their surface as points (along, off), reaching half a cell beyond the end cells.
void add_run(SectionShape &shape, const Profile &p, std::size_t first, std::size_t last,
             const SectionAsk &ask) {
  const auto border = [&](std::size_t k, bool is_upper) {
    const std::size_t other = is_upper ? std::min(k + 1, p.along_mm.size() - 1) : (k > 0 ? k - 1 : 0);
    return 0.5 * (p.along_mm[k] + p.along_mm[other]);
  };
  const auto surface = [&](std::size_t k) { return p.wanted_mm[k] + shown(p, k, ask); };
  std::vector<Vec2> points{{border(first, false), surface(first)}};
  for (std::size_t k = first; k <= last; ++k)
    points.push_back({p.along_mm[k], surface(k)});
  points.push_back({border(last, true), surface(last)});
  const bool is_cut = p.kinds[first] == SurfaceKind::cut;
  double along = 0.0, foot = p.wanted_mm[first] - kStockShown_mm;
  for (std::size_t k = first; k <= last; ++k)
    foot = std::min(foot, p.wanted_mm[k] - kStockShown_mm);
  for (std::size_t k = 0; k + 1 < points.size(); ++k) {
    const Vec2 a = points[k], b = points[k + 1];
    add_line(shape.surface, on_sheet(p, a.x, a.y), on_sheet(p, b.x, b.y), along);
    const double floor_a = std::min(foot, a.y), floor_b = std::min(foot, b.y);
    (is_cut ? shape.stock : shape.uncut)
        .add_flat(on_sheet(p, a.x, floor_a), on_sheet(p, b.x, floor_b), on_sheet(p, b.x, b.y),
                  on_sheet(p, a.x, a.y));
  }
}

void add_ledges(SectionShape &shape, const Profile &p, const SectionAsk &ask) {
  for (std::size_t k = 0; k + 1 < p.kinds.size(); ++k) {
    const bool is_edge = p.kinds[k] != p.kinds[k + 1] && p.kinds[k] != SurfaceKind::absent &&
                         p.kinds[k + 1] != SurfaceKind::absent;
    if (!is_edge)
      continue;
    const double at = 0.5 * (p.along_mm[k] + p.along_mm[k + 1]);
    double along = 0.0;
    add_line(shape.surface, on_sheet(p, at, p.wanted_mm[k] + shown(p, k, ask)),
             on_sheet(p, at, p.wanted_mm[k + 1] + shown(p, k + 1, ask)), along);
  }
}

void add_reference_lines(SectionShape &shape, const Profile &p, const SectionAsk &ask) {
  double along_blank = 0.0, along_wanted = 0.0;
  for (std::size_t k = 0; k + 1 < p.kinds.size(); ++k) {
    if (p.kinds[k] == SurfaceKind::absent || p.kinds[k + 1] == SurfaceKind::absent)
      continue;
    add_line(shape.wanted, on_sheet(p, p.along_mm[k], p.wanted_mm[k]),
             on_sheet(p, p.along_mm[k + 1], p.wanted_mm[k + 1]), along_wanted);
    const auto blank = [&](std::size_t c) {
      return p.wanted_mm[c] + std::clamp(p.blank_mm[c], -ask.farthest_mm, ask.farthest_mm);
    };
    if (std::isfinite(p.blank_mm[k]) && std::isfinite(p.blank_mm[k + 1]))
      add_line(shape.blank, on_sheet(p, p.along_mm[k], blank(k)),
               on_sheet(p, p.along_mm[k + 1], blank(k + 1)), along_blank);
  }
}

} // namespace

SectionCell section_cell(const Chart &chart, double at_mm, Vec2 place_mm) {
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return {nearest(wall->s_mm, at_mm), nearest(wall->z_mm, place_mm.y)};
  const auto &floor = std::get<FloorChart>(chart);
  const auto index = [&](double place, double origin, std::size_t count) {
    const double k = std::round((place - origin) / floor.spacing_mm);
    return static_cast<std::size_t>(std::clamp(k, 0.0, static_cast<double>(count - 1)));
  };
  return {index(place_mm.x, floor.origin_mm.x, floor.nx), index(at_mm, floor.origin_mm.y, floor.ny)};
}

SectionShape section_of(const Outcome &outcome, const SectionAsk &ask) {
  SectionShape shape;
  const Profile profile = profile_of(outcome.charts[ask.feature], ask.at_mm);
  for (std::size_t first = 0; first < profile.kinds.size();) {
    std::size_t last = first;
    while (last + 1 < profile.kinds.size() && profile.kinds[last + 1] == profile.kinds[first])
      ++last;
    if (profile.kinds[first] != SurfaceKind::absent)
      add_run(shape, profile, first, last, ask);
    first = last + 1;
  }
  add_ledges(shape, profile, ask);
  add_reference_lines(shape, profile, ask);
  const auto &board = outcome.job.holding.spoilboard_top_z_mm;
  if (board && profile.is_wall && !profile.along_mm.empty()) {
    constexpr double kWide_mm = 1e4;
    shape.spoilboard.add_flat({-kWide_mm, *board - 100.0}, {kWide_mm, *board - 100.0}, {kWide_mm, *board},
                              {-kWide_mm, *board});
  }
  return shape;
}

SheetBox section_box(const Outcome &outcome, std::size_t feature, double at_mm) {
  const Profile p = profile_of(outcome.charts[feature], at_mm);
  if (p.along_mm.empty())
    return {};
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (std::size_t k = 0; k < p.kinds.size(); ++k) {
    if (p.kinds[k] == SurfaceKind::absent)
      continue;
    low = std::min(low, p.wanted_mm[k]);
    high = std::max(high, p.wanted_mm[k]);
    if (p.kinds[k] == SurfaceKind::standing)
      high = std::max(high, p.wanted_mm[k] + p.residual_mm[k]);
  }
  if (!(low <= high))
    return {};
  low -= kStockShown_mm;
  high += kBesideShown_mm;
  double begin = p.along_mm.front(), end = p.along_mm.back();
  const auto &board = outcome.job.holding.spoilboard_top_z_mm;
  if (p.is_wall && board)
    begin = std::min(begin, *board - kBoardShown_mm);
  const Vec2 a = on_sheet(p, begin, low), b = on_sheet(p, end, high);
  return {a, b};
}

} // namespace asperity
