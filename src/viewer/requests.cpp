// What the renderer is asked to draw.
#include "requests.h"

#include "cell_quantity.h"

#include <algorithm>
#include <cmath>

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
