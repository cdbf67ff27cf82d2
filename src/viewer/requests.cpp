// What the renderer is asked to draw.
#include "requests.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace asperity {

namespace {

Colouring colouring_of(Colour colour) {
  switch (colour) {
  case Colour::lamp:
    return Colouring::lamp;
  case Colour::residual:
    return Colouring::residual;
  case Colour::line:
    return Colouring::line;
  case Colour::level:
    return Colouring::level;
  default:
    return Colouring::quantity;
  }
}

DrawRequest request_of(const AppState &state, int seat, PictureSize size) {
  DrawRequest request;
  request.size = size;
  request.px_scale = state.look.scale;
  request.theme = state.look.is_dark ? dark_theme() : light_theme();
  request.things = state.space.things;
  std::copy(state.space.path_kind.begin(), state.space.path_kind.end(), request.shows_path_kind);
  request.colouring = colouring_of(state.space.colour);
  request.exaggeration = state.space.exaggeration;
  if (state.choice.seat == seat) {
    request.chosen_finding = state.choice.finding;
    request.chosen_piece = state.choice.piece;
  }
  return request;
}

} // namespace

DrawRequest space_request(const AppState &state, int seat, PictureSize size) {
  DrawRequest request = request_of(state, seat, size);
  request.camera = state.space.camera;
  request.lamp = state.space.lamp;
  if (state.space.things.cutter)
    request.moment_s = state.space.moment_s;
  // Nothing is cut yet: what will be is told by the blank and the way the cutter goes.
  if (!state.seat(seat).has(Grain::coarse))
    request.things.blank = request.things.path = true;
  return request;
}

DrawRequest strip_request(const AppState &state, int seat, PictureSize size) {
  DrawRequest request = request_of(state, seat, size);
  request.view = View::strip;
  request.feature = state.strip.feature;
  request.sheet = state.strip.sheet;
  request.lamp = state.strip.lamp;
  return request;
}

DrawRequest section_request(const AppState &state, int seat, PictureSize size) {
  DrawRequest request = request_of(state, seat, size);
  request.view = View::section;
  request.feature = state.strip.feature;
  request.section_at_mm = state.section.at_mm;
  request.sheet = state.section.sheet;
  return request;
}

DrawRequest closeup_request(const AppState &state, int seat, PictureSize size) {
  DrawRequest request = strip_request(state, seat, size);
  request.feature = 0;
  request.chosen_piece = -1;
  return request;
}

bool is_same(PictureSize a, PictureSize b) { return a.width_px == b.width_px && a.height_px == b.height_px; }

bool is_same(const DrawRequest &a, const DrawRequest &b) {
  const auto whole = [](const DrawRequest &r) {
    return std::tie(r.view, r.size.width_px, r.size.height_px, r.px_scale, r.theme.ground.r, r.feature,
                    r.section_at_mm, r.colouring, r.range_low, r.range_high, r.exaggeration, r.farthest_mm,
                    r.moment_s, r.chosen_piece, r.chosen_finding);
  };
  const auto eye = [](const Camera &c) {
    return std::tie(c.target_mm.x, c.target_mm.y, c.target_mm.z, c.azimuth_rad, c.elevation_rad, c.height_mm,
                    c.is_perspective, c.opening_rad);
  };
  const auto sheet = [](const SheetView &s) {
    return std::tie(s.centre_mm.x, s.centre_mm.y, s.mm_per_px, s.up_stretch, s.across_stretch);
  };
  const auto lamp = [](const Lamp &l) {
    return std::tie(l.azimuth_rad, l.elevation_rad, l.turns_with_eye, l.strength, l.ambient, l.highlight);
  };
  const auto things = [](const Things &t) {
    return std::tie(t.surfaces, t.rest_of_part, t.path, t.cutter, t.blank, t.spoilboard, t.holding, t.marks);
  };
  return whole(a) == whole(b) && eye(a.camera) == eye(b.camera) && sheet(a.sheet) == sheet(b.sheet) &&
         lamp(a.lamp) == lamp(b.lamp) && things(a.things) == things(b.things) &&
         a.shows_feature == b.shows_feature &&
         std::equal(a.shows_path_kind, a.shows_path_kind + 4, b.shows_path_kind);
}

PictureSize shrunk(PictureSize size, double times) {
  const auto smaller = [&](int px) { return std::max(1, static_cast<int>(std::lround(px / times))); };
  return {smaller(size.width_px), smaller(size.height_px)};
}

DrawRequest shrunk(DrawRequest request, double times) {
  request.size = shrunk(request.size, times);
  request.px_scale /= times;
  request.sheet.mm_per_px *= times;
  return request;
}

} // namespace asperity
