// What every panel is given, and the few things they all do.
#pragma once

#include "ui_style.h"
#include "wish.h"

#include <map>
#include <optional>
#include <string_view>

namespace asperity {

/// One picture on the graphics card, as it was last drawn.
struct ShownPicture {
  ImTextureID texture = nullptr;
  DrawRequest request; ///< size and scale as drawn
  Drawn drawn;
  std::uint64_t content = 0; ///< of the outcome and quantity drawn
  double shrink = 1.0;       ///< drawn so many times smaller than shown (while the eye moves)
  bool is_there = false;
};

/// [seat]; a close-up, where there is one, lies over the strip.
struct Pictures {
  std::array<ShownPicture, 2> space, strip, closeup, section;
};

enum class PictureKind { space, strip, closeup, section };

struct PickAt {
  int seat = 0;
  PictureKind kind = PictureKind::space;
  double x_px = 0, y_px = 0; ///< of the picture as shown
  PictureSize size;          ///< as shown
};

/// What the panels of one frame ask for.
struct PanelsSay {
  Wishes wishes;
  std::optional<PickAt> pick;
  std::optional<SaveJob> save;
  std::array<PictureSize, 2> space_size{PictureSize{0, 0}, PictureSize{0, 0}};
  std::array<PictureSize, 2> strip_size{PictureSize{0, 0}, PictureSize{0, 0}};
  std::array<PictureSize, 2> section_size{PictureSize{0, 0}, PictureSize{0, 0}};
  /// Where things came to lie on the screen: x, y, width, height; for tests that point at them.
  std::map<std::string, std::array<float, 4>> places;
};

struct Ui {
  const AppState &state;
  const Pictures &pictures;
  const Fonts &fonts;
  Inks inks;
  PanelsSay &says;

  float px(double size) const { return static_cast<float>(size * state.look.scale); }
  template <class W> void wish(W w) const { says.wishes.emplace_back(std::move(w)); }
};

void text_of(std::string_view text);
void soft_text(const Ui &ui, std::string_view text);
void ink_text(ImU32 ink, std::string_view text);
void heading(const Ui &ui, std::string_view text);
void wrapped_text(std::string_view text);
void wrapped_soft_text(const Ui &ui, std::string_view text);
/// Cut off with an ellipsis where it is wider than `width`; the whole is shown beside the pointer.
void short_text(const Ui &ui, ImU32 ink, std::string_view text, float width);
std::string shortened(std::string_view text, float width);
/// Shown beside the pointer while the last thing drawn is under it.
void hint(const Ui &ui, std::string_view text);
/// Meaning of a trade word, if there is one.
void hint_word(const Ui &ui, std::string_view word);
/// "A" or "B" in the job's colour.
void seat_letter(const Ui &ui, int seat);
/// Remembers under this name where the last thing drawn lies.
void mark_place(const Ui &ui, const std::string &name);
/// On the same line, if `width` more still fits there.
void same_line_if_fits(float width);
float button_width(const char *label);
bool small_choice(const char *label, bool is_chosen);

} // namespace asperity
