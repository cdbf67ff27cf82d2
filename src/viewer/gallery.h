// The pictures in the window: drawn when something changed, coarser while the eye moves.
#pragma once

#include "picture_target.h"
#include "ui.h"

#include <memory>

namespace asperity {

class Gallery {
public:
  Gallery();

  /// Empty, or why nothing can be drawn.
  const std::string &fault() const { return fault_; }

  /// Draws what is out of date. With `coarse` at half the size.
  void update(const AppState &state, const PanelsSay &wanted, bool coarse);
  /// Something is shown coarser than it could be.
  bool is_coarse() const { return is_coarse_; }
  const Pictures &pictures() const { return pictures_; }
  Pick pick(const AppState &state, const PickAt &at);

private:
  struct PerSeat {
    std::unique_ptr<Renderer> renderer, loupe;      ///< the loupe is made when first needed
    std::shared_ptr<const Outcome> shown, in_loupe; ///< the renderers point into them
    PictureTarget space, strip, closeup, section;
    Colour quantity = Colour::lamp; ///< that the renderer holds; lamp = none
    const Outcome *other = nullptr; ///< the difference was made with it
    double half_span = 0;           ///< of the difference's colours
    std::uint64_t content = 0;      ///< counts up with every outcome and quantity
    std::uint64_t loupe_content = 0;
  };
  struct Work {
    DrawRequest request; ///< at the size shown
    Renderer &renderer;
    PictureTarget &target;
    ShownPicture &picture;
    std::uint64_t content;
  };

  void show_outcomes(const AppState &state);
  void update_seat(const AppState &state, int seat, const PanelsSay &wanted, bool coarse);
  void update_closeup(const AppState &state, int seat, PictureSize size, bool coarse);
  static void draw(const Work &work, bool coarse);

  std::array<PerSeat, 2> seats_;
  Pictures pictures_;
  std::string fault_;
  bool is_coarse_ = false;
};

} // namespace asperity
