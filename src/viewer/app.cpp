// The viewer without its window.
#include "app.h"

#include "panels.h"
#include "requests.h"
#include "save_job.h"

#include "asperity/render/scene.h"
#include "place.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kRest_s = 0.2; ///< then what was drawn coarsely is drawn finely
constexpr double kFirstElevation_rad = rad_from_deg(26.0);
constexpr double kAside_rad =
    rad_from_deg(20.0); ///< the worst finding lies this much left of the middle, in the lamp's light
constexpr double kSheetMargin = 1.25;
constexpr double kTallest = 4.0; ///< a strip is stretched up no more than this by itself

/// So that the finding that matters most is seen at first.
double first_azimuth_rad(const Outcome &outcome) {
  constexpr double kNoFinding_rad = rad_from_deg(-52.0);
  const Vec3 middle = surface_bounds(outcome).middle();
  for (const Finding &finding : outcome.findings) {
    const Vec2 out = plan(finding.place_mm - middle);
    if (finding.feature >= 0 && glm::length(out) > 1e-3)
      return std::atan2(out.y, out.x) + kAside_rad;
  }
  return kNoFinding_rad;
}

} // namespace

App::App(AppState state, AppOptions options) : state_(std::move(state)), options_(std::move(options)) {
  const auto wake = options_.wake ? options_.wake : [] {};
  for (std::size_t i = 0; i < 2; ++i) {
    runs_[i] = std::make_unique<BackgroundRun>(wake);
    traces_[i] = std::make_unique<BackgroundTask<LaidTrace>>(wake);
    closeups_[i] = std::make_unique<BackgroundTask<std::optional<Closeup>>>(wake);
  }
}

App::~App() {
  // All are told to stop before any is waited for.
  for (std::size_t i = 0; i < 2; ++i) {
    runs_[i]->stop();
    traces_[i]->stop();
    closeups_[i]->stop();
  }
}

void App::take(const Wish &wish) { apply(state_, wish); }

void App::fetch_news() {
  for (int i = 0; i < 2; ++i) {
    const auto at = static_cast<std::size_t>(i);
    if (const auto news = runs_[at]->news()) {
      if (!news->is_end)
        take(RunReports{i, news->stage, news->fraction});
      if (news->is_end)
        take(RunEnded{i, news->result});
      else if (news->result)
        take(RunShows{i, news->result});
    }
    if (auto laid = traces_[at]->fetch())
      take(TraceLaid{i, std::move(laid->trace), std::move(laid->why)});
    if (auto laid = closeups_[at]->fetch())
      take(CloseupLaid{i, std::move(*laid)});
  }
}

void App::start_run(int i) {
  const auto at = static_cast<std::size_t>(i);
  const Seat &seat = state_.seat(i);
  if (seat.run.is_stopping)
    runs_[at]->stop();
  if (!seat.run.is_wanted || !seat.is_taken() || runs_[at]->is_busy())
    return;
  take(RunStarted{i});
  runs_[at]->start({seat.file, seat.changes, options_.threads, !seat.has(Grain::fine)});
}

void App::start_trace(int i) {
  const auto at = static_cast<std::size_t>(i);
  const TraceState &trace = state_.trace;
  const std::shared_ptr<const Outcome> outcome = state_.seat(i).outcome;
  if (traces_[at]->is_busy()) {
    if (!trace.is_asked || trace.is_wanted[at])
      traces_[at]->stop();
    return;
  }
  if (!trace.is_wanted[at] || !outcome)
    return;
  const auto feature = static_cast<std::size_t>(trace.feature);
  take(TraceStarted{i});
  if (feature >= outcome->charts.size())
    return take(TraceLaid{i, std::nullopt, "This job has no such surface."});
  traces_[at]->start(
      [outcome, feature, request = trace.request, threads = options_.threads](const Progress &progress) {
        return traced(*outcome, feature, request, threads, progress);
      });
}

void App::start_closeup(int i) {
  const auto at = static_cast<std::size_t>(i);
  const std::shared_ptr<const Outcome> outcome = state_.seat(i).outcome;
  const PictureSize size = said_.strip_size[at];
  std::optional<CloseupAsk> ask;
  if (size.width_px > 1 && state_.judged(i) && state_.strip.is_fitted && shows_marks(state_.space.colour))
    ask = closeup_ask(*outcome, static_cast<std::size_t>(state_.strip.feature), state_.strip.sheet, size);
  const bool is_asked = ask && asked_closeup_[at] && serves(*asked_closeup_[at], *outcome, *ask);
  if (closeups_[at]->is_busy()) {
    if (!is_asked)
      closeups_[at]->stop();
    return;
  }
  if (!ask || is_asked || ImGui::IsAnyMouseDown())
    return;
  asked_closeup_[at] = Closeup{outcome, nullptr, static_cast<int>(ask->feature), ask->box, ask->spacing_mm};
  closeups_[at]->start([outcome, ask = *ask, threads = options_.threads](const Progress &progress) {
    return lay_closeup(outcome, ask, threads, progress);
  });
}

void App::start_work() {
  for (int i = 0; i < 2; ++i) {
    start_run(i);
    start_trace(i);
    start_closeup(i);
  }
}

void App::fit() {
  const int front = state_.space.front;
  const PictureSize size = said_.space_size[static_cast<std::size_t>(front)];
  const Outcome *outcome = state_.outcome(front);
  const bool is_right = state_.space.is_fitted && (state_.space.is_own_eye || is_same(size, fitted_space_));
  if (is_right || !outcome || size.width_px < 2)
    return;
  fitted_space_ = size;
  const double azimuth = first_azimuth_rad(*outcome);
  const std::vector<Vec3> points = surface_points(*outcome);
  take(FitEye{points.empty() ? camera_on(whole_bounds(*outcome), size, azimuth, kFirstElevation_rad)
                             : camera_on(points, size, azimuth, kFirstElevation_rad)});
}

void App::fit_strip() {
  const int front = state_.space.front;
  const PictureSize size = said_.strip_size[static_cast<std::size_t>(front)];
  const Outcome *outcome = state_.outcome(front);
  const auto feature = static_cast<std::size_t>(state_.strip.feature);
  const bool is_right = state_.strip.is_fitted && (state_.strip.is_own_view || is_same(size, fitted_strip_));
  if (is_right || !outcome || size.width_px < 2 || feature >= outcome->charts.size())
    return;
  const SheetBox box = strip_box(*outcome, feature);
  const Vec2 extent = box.high_mm - box.low_mm;
  double up = 1.0;
  if (std::holds_alternative<WallChart>(outcome->charts[feature]) && extent.x > 0.0 && extent.y > 0.0)
    up = std::clamp(extent.x / extent.y * size.height_px / size.width_px, 1.0, kTallest);
  SheetView sheet = sheet_on(box.low_mm, box.high_mm, size, up);
  sheet.mm_per_px *= kSheetMargin; // marks at the edges must be whole
  fitted_strip_ = size;
  take(FitSheet{sheet});
}

void App::fit_section() {
  const int front = state_.space.front;
  const PictureSize size = said_.section_size[static_cast<std::size_t>(front)];
  const Outcome *outcome = state_.outcome(front);
  const auto feature = static_cast<std::size_t>(state_.strip.feature);
  if (!outcome || size.width_px < 2 || feature >= outcome->charts.size())
    return;
  if (!state_.section.is_placed)
    take(SetSection{first_cut_mm(*outcome, feature)});
  const bool is_right =
      state_.section.is_fitted && (state_.section.is_own_view || is_same(size, fitted_section_));
  if (is_right)
    return;
  fitted_section_ = size;
  const SheetBox box = section_box(*outcome, feature, state_.section.at_mm);
  take(FitSection{sheet_on(box.low_mm, box.high_mm, size)});
}

void App::prepare(double seconds) {
  fetch_news();
  if (state_.space.flight || state_.space.is_playing)
    take(Tick{std::clamp(seconds, 0.0, 0.1)});
  start_work();
  fit();
  fit_strip();
  fit_section();
  rest_s_ = state_.revision == seen_revision_ ? rest_s_ + seconds : 0.0;
  seen_revision_ = state_.revision;
  const bool is_moving = state_.space.flight || state_.space.is_playing || ImGui::IsAnyMouseDown() ||
                         (gallery_.is_coarse() && rest_s_ < kRest_s);
  gallery_.update(state_, said_, is_moving);
}

void App::load_fonts() {
  fonts_ = asperity::load_fonts(state_.look.scale);
  fonts_scale_ = state_.look.scale;
  set_style(state_.look.is_dark, state_.look.scale);
  is_styled_dark_ = state_.look.is_dark;
}

void App::show() {
  if (is_styled_dark_ != state_.look.is_dark) {
    set_style(state_.look.is_dark, state_.look.scale);
    is_styled_dark_ = state_.look.is_dark;
  }
  PanelsSay says;
  lay_out(Ui{state_, gallery_.pictures(), fonts_, inks_of(state_.look.is_dark), says});
  said_ = says;
  answer(says);
}

void App::answer(const PanelsSay &says) {
  for (const Wish &wish : says.wishes)
    take(wish);
  if (says.pick)
    take(Picked{says.pick->seat, gallery_.pick(state_, *says.pick)});
  if (says.save)
    take(save_job(state_.seat(says.save->seat), *says.save));
}

bool App::is_restless() const {
  return state_.space.flight || state_.space.is_playing || gallery_.is_coarse() ||
         state_.revision != seen_revision_ || wants_fonts();
}

bool App::is_busy() const {
  for (std::size_t i = 0; i < 2; ++i)
    if (runs_[i]->is_busy() || traces_[i]->is_busy() || closeups_[i]->is_busy() ||
        state_.seats[i].run.is_wanted || (state_.trace.is_wanted[i] && state_.seats[i].outcome))
      return true;
  return false;
}

void App::drop(const std::vector<std::filesystem::path> &files) {
  if (files.size() >= 2) {
    take(OpenFile{0, files[0]});
    take(OpenFile{1, files[1]});
  } else if (files.size() == 1) {
    take(OpenFile{state_.seats[0].is_taken() ? 1 : 0, files[0]});
  }
}

} // namespace asperity
