// The pictures in the window.
#include "gallery.h"

#include "cell_quantity.h"
#include "requests.h"

namespace asperity {

namespace {

constexpr double kCoarse = 2.0;

bool is_same(PictureSize a, PictureSize b) { return a.width_px == b.width_px && a.height_px == b.height_px; }

bool fills(const ShownPicture &picture, PictureSize wanted) {
  return is_same(shrunk(wanted, picture.shrink), picture.request.size);
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
    }
    const Colour colour = state.space.colour;
    const Outcome *other = colour == Colour::difference ? state.outcome(1 - i) : nullptr;
    if (!outcome || !is_quantity(colour) || (seat.quantity == colour && seat.other == other))
      continue;
    const Outcome *a = state.outcome(0), *b = state.outcome(1);
    // Both seats show B minus A: the cells are the same, so either chart can carry it.
    seat.renderer->set_quantity(colour == Colour::difference && a && b
                                    ? cell_quantity(*a, colour, b)
                                    : cell_quantity(*outcome, colour, nullptr));
    seat.quantity = colour;
    seat.other = other;
  }
}

void Gallery::draw(const AppState &state, int seat, bool is_strip, PictureSize size, bool coarse) {
  PerSeat &at = seats_[static_cast<std::size_t>(seat)];
  ShownPicture &picture = is_strip ? pictures_.strip[static_cast<std::size_t>(seat)]
                                   : pictures_.space[static_cast<std::size_t>(seat)];
  picture.is_there = false;
  if (size.width_px < 2 || size.height_px < 2 || !state.outcome(seat))
    return;
  picture.shrink = coarse ? kCoarse : 1.0;
  picture.request =
      shrunk(is_strip ? strip_request(state, seat, size) : space_request(state, seat, size), picture.shrink);
  PictureTarget &target = is_strip ? at.strip : at.space;
  if (!target.bind(picture.request.size))
    return;
  picture.drawn = at.renderer->draw(picture.request);
  picture.texture = reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(target.texture()));
  picture.is_there = true;
}

void Gallery::update(const AppState &state, const PanelsSay &wanted, bool coarse) {
  show_outcomes(state);
  const bool is_new = state.revision != drawn_revision_;
  const bool refines = is_coarse_ && !coarse;
  for (int seat = 0; seat < 2; ++seat) {
    const auto at = static_cast<std::size_t>(seat);
    const auto is_off = [&](const ShownPicture &picture, PictureSize size) {
      return is_new || refines ||
             picture.is_there != (size.width_px >= 2 && state.outcome(seat) != nullptr) ||
             (picture.is_there && !fills(picture, size));
    };
    if (is_off(pictures_.space[at], wanted.space_size[at]))
      draw(state, seat, false, wanted.space_size[at], coarse);
    if (is_off(pictures_.strip[at], wanted.strip_size[at]))
      draw(state, seat, true, wanted.strip_size[at], coarse);
  }
  if (is_new || refines)
    is_coarse_ = coarse;
  drawn_revision_ = state.revision;
}

Pick Gallery::pick(const AppState &state, const PickAt &at) {
  const auto seat = static_cast<std::size_t>(at.seat);
  const ShownPicture &picture = at.is_strip ? pictures_.strip[seat] : pictures_.space[seat];
  if (!picture.is_there || seats_[seat].shown.get() != state.outcome(at.seat))
    return {};
  return seats_[seat].renderer->pick(picture.request, at.x_px / picture.shrink, at.y_px / picture.shrink);
}

} // namespace asperity
