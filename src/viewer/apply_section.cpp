// Wishes about the feature cut through.
#include "apply_parts.h"
#include "place.h"

#include <algorithm>

namespace asperity {

namespace {

constexpr double kFinest_mm_per_px = 2e-5, kCoarsest_mm_per_px = 10.0;

} // namespace

void take(AppState &state, const SetSection &wish) {
  const Outcome *outcome = state.outcome(state.space.front);
  const auto feature = static_cast<std::size_t>(state.strip.feature);
  if (!outcome || feature >= outcome->charts.size())
    return;
  const CutRange range = cut_range(*outcome, feature);
  state.section.at_mm = std::clamp(wish.at_mm, range.low_mm, range.high_mm);
  state.section.is_placed = true;
}

void take(AppState &state, const SetSectionView &wish) {
  state.section.sheet = wish.sheet;
  state.section.sheet.mm_per_px = std::clamp(wish.sheet.mm_per_px, kFinest_mm_per_px, kCoarsest_mm_per_px);
  state.section.is_fitted = state.section.is_own_view = true;
}

void take(AppState &state, const FitSection &wish) {
  take(state, SetSectionView{wish.sheet});
  state.section.is_own_view = false;
}

void take(AppState &state, const FitCut &) { state.section.is_fitted = false; }

} // namespace asperity
