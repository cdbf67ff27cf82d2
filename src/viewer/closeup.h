// The flat sheet under a loupe: a small part of it laid anew with every tooth mark.
#pragma once

#include "app_state.h"

namespace asperity {

struct CloseupAsk {
  std::size_t feature = 0;
  SheetBox box; ///< sheet coordinates
  double spacing_mm = 0.01;
};

/// What to lay so that this view of the sheet is sharp: nothing while the chart itself is fine enough.
std::optional<CloseupAsk> closeup_ask(const Outcome &outcome, std::size_t feature, const SheetView &sheet,
                                      PictureSize size);

/// Still sharp where the ask looks: it lies within, and the cells are not much coarser than asked.
bool serves(const Closeup &closeup, const Outcome &outcome, const CloseupAsk &ask);

/// The close-up to draw in place of the flat sheet, if there is one that is sharp and shows the colours
/// asked.
const Closeup *sharp_closeup(const AppState &state, int seat, PictureSize size);
/// A pass's tooth marks have a shape but no colours of their own.
bool shows_marks(Colour colour);

/// Nothing when cancelled or beside the feature.
std::optional<Closeup> lay_closeup(const std::shared_ptr<const Outcome> &outcome, const CloseupAsk &ask,
                                   int threads, const Progress &progress);

} // namespace asperity
