// The pictures in the window.
#include "gallery.h"

#include "cell_quantity.h"
#include "requests.h"

namespace asperity {

namespace {

constexpr double kCoarse = 2.0; ///< while something moves
constexpr double kFine = 0.5;   ///< at rest: drawn larger and averaged by the texture filter

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
    if (!outcome || !is_quantity(colour) || (seat.quantity == colour && seat.other == other))
      continue;
    // Both seats show B minus A: the cells are the same, so either chart can carry it.
    const Outcome *a = state.outcome(0), *b = state.outcome(1);
    const CellQuantity quantity =
        other && a && b ? cell_quantity(*a, colour, b) : cell_quantity(*outcome, colour, nullptr);
    seat.half_span = other ? half_span(quantity) : 0.0;
    seat.renderer->set_quantity(quantity);
    seat.quantity = colour;
    seat.other = other;
    ++seat.content;
  }
}

void Gallery::draw(const AppState &state, int seat, bool is_strip, PictureSize size, bool coarse) {
  PerSeat &at = seats_[static_cast<std::size_t>(seat)];
  ShownPicture &picture = is_strip ? pictures_.strip[static_cast<std::size_t>(seat)]
                                   : pictures_.space[static_cast<std::size_t>(seat)];
  if (size.width_px < 2 || size.height_px < 2 || !state.outcome(seat)) {
    picture.is_there = false;
    return;
  }
  DrawRequest whole = is_strip ? strip_request(state, seat, size) : space_request(state, seat, size);
  if (state.space.colour == Colour::difference) {
    whole.range_low = -at.half_span;
    whole.range_high = at.half_span;
  }
  const bool is_old = !picture.is_there || picture.content != at.content;
  // Something else moves: what stands still stays as fine as it is.
  if (!is_old && is_same(shrunk(whole, picture.shrink), picture.request) &&
      (coarse || picture.shrink == kFine))
    return;
  picture.is_there = false;
  picture.shrink = coarse ? kCoarse : kFine;
  picture.request = shrunk(whole, picture.shrink);
  PictureTarget &target = is_strip ? at.strip : at.space;
  if (!target.bind(picture.request.size))
    return;
  picture.drawn = at.renderer->draw(picture.request);
  picture.texture = reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(target.texture()));
  picture.content = at.content;
  picture.is_there = true;
}

void Gallery::update(const AppState &state, const PanelsSay &wanted, bool coarse) {
  show_outcomes(state);
  is_coarse_ = false;
  for (int seat = 0; seat < 2; ++seat) {
    const auto at = static_cast<std::size_t>(seat);
    draw(state, seat, false, wanted.space_size[at], coarse);
    draw(state, seat, true, wanted.strip_size[at], coarse);
    for (const ShownPicture *picture : {&pictures_.space[at], &pictures_.strip[at]})
      is_coarse_ = is_coarse_ || (picture->is_there && picture->shrink != kFine);
  }
}

Pick Gallery::pick(const AppState &state, const PickAt &at) {
  const auto seat = static_cast<std::size_t>(at.seat);
  const ShownPicture &picture = at.is_strip ? pictures_.strip[seat] : pictures_.space[seat];
  if (!picture.is_there || seats_[seat].shown.get() != state.outcome(at.seat))
    return {};
  return seats_[seat].renderer->pick(picture.request, at.x_px / picture.shrink, at.y_px / picture.shrink);
}

} // namespace asperity
