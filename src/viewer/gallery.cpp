// The pictures in the window.
#include "gallery.h"

#include "asperity/render/cell_quantity.h"
#include "closeup.h"
#include "requests.h"

namespace asperity {

namespace {

constexpr double kCoarse = 2.0; ///< while something moves
constexpr double kFine = 0.5;   ///< at rest: drawn larger and averaged by the texture filter

CellQuantity quantity_of(const AppState &state, int seat) {
  const Outcome *a = state.outcome(0), *b = state.outcome(1);
  switch (state.space.colour) {
  case Colour::difference:
    // Both seats show B minus A: the cells are the same, so either chart can carry it.
    return a && b ? difference(*a, *b) : CellQuantity{};
  case Colour::roughness:
    return cell_quantity(*state.outcome(seat), Measure::roughness);
  case Colour::bending:
    return cell_quantity(*state.outcome(seat), Measure::bending);
  case Colour::chip_load:
    return cell_quantity(*state.outcome(seat), Measure::chip_load);
  default:
    return cell_quantity(*state.outcome(seat), Measure::speed);
  }
}

} // namespace

Gallery::Gallery() {
  for (PerSeat &seat : seats_) {
    seat.renderer = std::make_unique<Renderer>();
    if (fault_.empty())
      fault_ = seat.renderer->fault();
  }
}

void Gallery::show_outcomes(const AppState &state) {
  for (int i = 0; i < 2; ++i) {
    PerSeat &seat = seats_[static_cast<std::size_t>(i)];
    const std::shared_ptr<const Outcome> &outcome = state.seat(i).outcome;
    if (outcome && outcome != seat.shown) {
      seat.renderer->show(*outcome);
      seat.shown = outcome;
      seat.quantity = Colour::lamp;
      ++seat.content;
    }
    const Colour colour = state.space.colour;
    const Outcome *other = colour == Colour::difference ? state.outcome(1 - i) : nullptr;
    if (!outcome || colour < Colour::roughness || (seat.quantity == colour && seat.other == other))
      continue;
    const CellQuantity quantity = quantity_of(state, i);
    seat.half_span = other ? half_span(quantity) : 0.0;
    seat.renderer->set_quantity(quantity);
    seat.quantity = colour;
    seat.other = other;
    ++seat.content;
  }
}

void Gallery::draw(const Work &work, bool coarse) {
  ShownPicture &picture = work.picture;
  const bool is_old = !picture.is_there || picture.content != work.content;
  // Something else moves: what stands still stays as fine as it is.
  if (!is_old && is_same(shrunk(work.request, picture.shrink), picture.request) &&
      (coarse || picture.shrink == kFine))
    return;
  picture.is_there = false;
  picture.shrink = coarse ? kCoarse : kFine;
  picture.request = shrunk(work.request, picture.shrink);
  picture.request.is_light = coarse;
  if (!work.target.bind(picture.request.size))
    return;
  picture.drawn = work.renderer.draw(picture.request);
  picture.texture = reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(work.target.texture()));
  picture.content = work.content;
  picture.is_there = true;
}

void Gallery::update_closeup(const AppState &state, int seat, PictureSize size, bool coarse) {
  PerSeat &at = seats_[static_cast<std::size_t>(seat)];
  ShownPicture &picture = pictures_.closeup[static_cast<std::size_t>(seat)];
  const Closeup *closeup = sharp_closeup(state, seat, size);
  if (!closeup) {
    picture.is_there = false;
    return;
  }
  if (!at.loupe)
    at.loupe = std::make_unique<Renderer>();
  if (closeup->sheet != at.in_loupe) {
    at.loupe->show(*closeup->sheet);
    at.in_loupe = closeup->sheet;
    ++at.loupe_content;
  }
  draw({closeup_request(state, seat, size), *at.loupe, at.closeup, picture, at.loupe_content}, coarse);
}

void Gallery::update_seat(const AppState &state, int seat, const PanelsSay &wanted, bool coarse) {
  const auto i = static_cast<std::size_t>(seat);
  PerSeat &at = seats_[i];
  const auto one = [&](PictureSize size, DrawRequest request, PictureTarget &target, ShownPicture &picture) {
    if (size.width_px < 2 || size.height_px < 2 || !state.outcome(seat)) {
      picture.is_there = false;
      return;
    }
    if (state.space.colour == Colour::difference) {
      request.range_low = -at.half_span;
      request.range_high = at.half_span;
    }
    draw({std::move(request), *at.renderer, target, picture, at.content}, coarse);
    is_coarse_ = is_coarse_ || (picture.is_there && picture.shrink != kFine);
  };
  one(wanted.space_size[i], space_request(state, seat, wanted.space_size[i]), at.space, pictures_.space[i]);
  one(wanted.section_size[i], section_request(state, seat, wanted.section_size[i]), at.section,
      pictures_.section[i]);
  update_closeup(state, seat, wanted.strip_size[i], coarse);
  if (pictures_.closeup[i].is_there)
    pictures_.strip[i].is_there = false;
  else
    one(wanted.strip_size[i], strip_request(state, seat, wanted.strip_size[i]), at.strip, pictures_.strip[i]);
  is_coarse_ = is_coarse_ || (pictures_.closeup[i].is_there && pictures_.closeup[i].shrink != kFine);
}

void Gallery::update(const AppState &state, const PanelsSay &wanted, bool coarse) {
  show_outcomes(state);
  is_coarse_ = false;
  for (int seat = 0; seat < 2; ++seat)
    update_seat(state, seat, wanted, coarse);
}

Pick Gallery::pick(const AppState &state, const PickAt &at) {
  const auto i = static_cast<std::size_t>(at.seat);
  PerSeat &seat = seats_[i];
  if (!state.outcome(at.seat) || seat.shown.get() != state.outcome(at.seat))
    return {};
  if (at.kind == PictureKind::strip || at.kind == PictureKind::closeup) {
    // The sheet's own chart knows what was cut where, also under the loupe.
    return seat.renderer->pick(strip_request(state, at.seat, at.size), at.x_px, at.y_px);
  }
  const ShownPicture &picture = at.kind == PictureKind::section ? pictures_.section[i] : pictures_.space[i];
  if (!picture.is_there)
    return {};
  return seat.renderer->pick(picture.request, at.x_px / picture.shrink, at.y_px / picture.shrink);
}

} // namespace asperity
