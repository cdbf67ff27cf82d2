// The flat sheet under a loupe.
#include "closeup.h"

#include "asperity/texture/mark_patch.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kSharpShare = 0.5; ///< a pixel this small a share of a chart's cell asks for the loupe
constexpr double kMargin = 0.3;     ///< laid beyond the view on every side, in views
constexpr double kMostCells = 6e5;  ///< laid in about a second
constexpr double kFinest_mm = 5e-4; ///< tooth marks have nothing finer
constexpr double kMostBlur = 2.2;   ///< cells may be so many pixels wide until they are laid anew

double spacing_of(const Chart &chart) {
  if (const auto *wall = std::get_if<WallChart>(&chart))
    return wall->outline.length_mm() / static_cast<double>(std::max<std::size_t>(wall->columns(), 1));
  return std::get<FloorChart>(chart).spacing_mm;
}

/// The other way round, as an inside wall lies on the sheet.
FloorChart mirrored(const FloorChart &chart, double length_mm) {
  FloorChart other = chart;
  if (chart.nx == 0)
    return other;
  other.origin_mm.x = length_mm - chart.x_mm(chart.nx - 1);
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i) {
      const std::size_t from = chart.at(chart.nx - 1 - i, j), to = chart.at(i, j);
      other.envelope_mm[to] = chart.envelope_mm[from];
      other.blank_mm[to] = chart.blank_mm[from];
      other.owner[to] = chart.owner[from];
    }
  return other;
}

std::optional<FloorChart> laid(const Outcome &outcome, const CloseupAsk &ask, int threads,
                               const Progress &progress) {
  const TextureSource source{outcome.job, outcome.path, outcome.cut.swept};
  const Feature &feature = outcome.job.features[ask.feature];
  const auto *wall = std::get_if<WallChart>(&outcome.charts[ask.feature]);
  PatchAsk patch{ask.box.low_mm, ask.box.high_mm, ask.spacing_mm};
  if (!wall)
    return mark_patch(feature, source, patch, threads, progress);
  const double length = wall->outline.length_mm(), seam = seam_mm(outcome, ask.feature);
  if (wall->inside) {
    patch.low_mm.x = length - ask.box.high_mm.x;
    patch.high_mm.x = length - ask.box.low_mm.x;
  }
  patch.low_mm.x += seam;
  patch.high_mm.x += seam;
  std::optional<FloorChart> chart = mark_patch(feature, source, patch, threads, progress);
  if (!chart)
    return std::nullopt;
  chart->origin_mm.x -= seam;
  return wall->inside ? mirrored(*chart, length) : *chart;
}

} // namespace

std::optional<CloseupAsk> closeup_ask(const Outcome &outcome, std::size_t feature, const SheetView &sheet,
                                      PictureSize size) {
  const double px_mm = sheet.across_mm_per_px();
  if (feature >= outcome.charts.size() || px_mm > kSharpShare * spacing_of(outcome.charts[feature]))
    return std::nullopt;
  const Vec2 view(px_mm * size.width_px, sheet.up_mm_per_px() * size.height_px);
  const SheetBox whole = strip_box(outcome, feature);
  const Vec2 reach = (0.5 + kMargin) * view;
  CloseupAsk ask{
      feature,
      {glm::max(sheet.centre_mm - reach, whole.low_mm), glm::min(sheet.centre_mm + reach, whole.high_mm)},
      std::max(px_mm, kFinest_mm)};
  const Vec2 extent = ask.box.high_mm - ask.box.low_mm;
  if (extent.x <= ask.spacing_mm || extent.y <= ask.spacing_mm)
    return std::nullopt;
  ask.spacing_mm = std::max(ask.spacing_mm, std::sqrt(extent.x * extent.y / kMostCells));
  return ask;
}

bool serves(const Closeup &closeup, const Outcome &outcome, const CloseupAsk &ask) {
  // The margin round the view need not be there.
  const Vec2 spare = (ask.box.high_mm - ask.box.low_mm) * (kMargin / (1.0 + 2.0 * kMargin));
  const Vec2 low = ask.box.low_mm + spare, high = ask.box.high_mm - spare;
  return closeup.of.get() == &outcome && closeup.feature == static_cast<int>(ask.feature) &&
         closeup.box.low_mm.x <= low.x && closeup.box.low_mm.y <= low.y && closeup.box.high_mm.x >= high.x &&
         closeup.box.high_mm.y >= high.y && closeup.spacing_mm <= kMostBlur * ask.spacing_mm;
}

bool shows_marks(Colour colour) { return colour == Colour::lamp || colour == Colour::residual; }

const Closeup *sharp_closeup(const AppState &state, int seat, PictureSize size) {
  const std::optional<Closeup> &closeup = state.closeup[static_cast<std::size_t>(seat)];
  const Outcome *outcome = state.judged(seat);
  if (!closeup || !outcome || size.width_px < 2 || !shows_marks(state.space.colour))
    return nullptr;
  const auto ask =
      closeup_ask(*outcome, static_cast<std::size_t>(state.strip.feature), state.strip.sheet, size);
  return ask && serves(*closeup, *outcome, *ask) ? &*closeup : nullptr;
}

std::optional<Closeup> lay_closeup(const std::shared_ptr<const Outcome> &outcome, const CloseupAsk &ask,
                                   int threads, const Progress &progress) {
  std::optional<FloorChart> chart = laid(*outcome, ask, threads, progress);
  if (!chart || progress.cancelled())
    return std::nullopt;
  // A sheet of its own: one flat chart, with the findings where they lie on it.
  auto sheet = std::make_shared<Outcome>();
  sheet->job = outcome->job;
  for (Finding finding : outcome->findings) {
    finding.feature = finding.feature == static_cast<int>(ask.feature) ? 0 : -1;
    finding.place_mm = {strip_place_mm(*outcome, ask.feature, finding.place_mm), 0.0};
    sheet->findings.push_back(std::move(finding));
  }
  sheet->charts.emplace_back(std::move(*chart));
  return Closeup{outcome, sheet, static_cast<int>(ask.feature), ask.box, ask.spacing_mm};
}

} // namespace asperity
