// What a panel, a key or a background run may ask of the state.
#pragma once

#include "app_state.h"

#include <variant>

namespace asperity {

struct OpenFile {
  int seat = 0;
  std::filesystem::path file;
};
struct LeaveSeat {
  int seat = 0;
};
struct Predict {
  int seat = 0;
};
struct StopRun {
  int seat = 0;
};
struct RunStarted {
  int seat = 0;
};
struct RunReports {
  int seat = 0;
  std::string stage;
  double fraction = 0;
};
/// What can be shown while the rest is being predicted.
struct RunShows {
  int seat = 0;
  std::shared_ptr<const RunResult> result;
};
struct RunEnded {
  int seat = 0;
  std::shared_ptr<const RunResult> result;
};

struct SetCamera {
  Camera camera;
};
/// As SetCamera, by the program itself: the eye stays fitted when the picture changes its size.
struct FitEye {
  Camera camera;
};
struct FlyTo {
  Camera camera;
};
struct FitPart {};
struct LookFrom {
  double azimuth_rad = 0, elevation_rad = 0;
};
struct SetLamp {
  Lamp lamp;
};
struct SetColour {
  Colour colour = Colour::lamp;
};
struct SetExaggeration {
  double times = 0;
};
struct SetThings {
  Things things;
  std::array<bool, 4> path_kind{};
};
struct SetMoment {
  double time_s = 0;
};
struct SetPlaying {
  bool is_playing = false;
};
struct SetPlayRate {
  double rate = 1;
};
struct SetArrangement {
  Arrangement arrangement = Arrangement::front;
};
struct SetFront {
  int seat = 0;
};
struct SetWipe {
  double share = 0.5;
};
/// Time goes on: flights and playing move.
struct Tick {
  double seconds = 0;
};

struct ChooseFinding {
  int seat = 0, finding = -1;
  bool flies = true; ///< the eye goes there
};
/// The next or previous finding of the seat in front.
struct StepFinding {
  int by = 1;
};
struct ChooseLine {
  int seat = 0;
  std::uint32_t line = 0;
};
struct Picked {
  int seat = 0;
  Pick pick;
};

struct ShowFeature {
  int feature = 0;
};
struct ShowLower {
  Lower lower = Lower::flat;
  bool is_alone = false; ///< in a window too low for both
};
struct SetSection {
  double at_mm = 0;
};
struct SetSectionView {
  SheetView sheet;
};
/// As SetSectionView, by the program itself.
struct FitSection {
  SheetView sheet;
};
/// Asks for the section to be fitted into the picture again.
struct FitCut {};
struct CloseupLaid {
  int seat = 0;
  std::optional<Closeup> closeup;
};
struct SetSheetView {
  SheetView sheet;
};
/// As SetSheetView, by the program itself.
struct FitSheet {
  SheetView sheet;
};
/// Asks for the sheet to be fitted into the picture again.
struct FitStrip {};
struct SetStripLamp {
  Lamp lamp;
};
/// A trace through two places of the sheet; the same place twice asks for a short one there.
struct TraceBetween {
  Vec2 first_mm{0.0}, second_mm{0.0};
};
struct LayTrace {
  int feature = 0;
  TraceRequest request;
};
struct TraceStarted {
  int seat = 0;
};
struct TraceLaid {
  int seat = 0;
  std::optional<Trace> trace;
  std::string why;
};
struct ClearTrace {};

struct ChangeValue {
  int seat = 0;
  std::string id;
  std::string value; ///< TOML text
};
struct ResetValue {
  int seat = 0;
  std::string id;
};
struct Undo {
  int seat = 0;
};
struct Redo {
  int seat = 0;
};
/// What came of writing a job; the window's owner writes, the state only tells.
struct SaveEnded {
  bool is_saved = false;
  bool would_replace = false; ///< a file of that name is there already
  std::string message;
};
struct SetSaveName {
  std::string name;
};

struct SetDark {
  bool is_dark = false;
};
struct SetScale {
  double scale = 1;
};
struct ShowSheet {
  Sheet sheet = Sheet::none;
  int open_into = 0;
};
struct ShowWhatIf {
  bool in_front = true;
  bool by_hand = false; ///< the tab was clicked: nothing needs to move
};
struct SetFolder {
  std::filesystem::path folder;
};
struct Say {
  std::string message;
};
struct CloseWindow {};

using Wish =
    std::variant<OpenFile, LeaveSeat, Predict, StopRun, RunStarted, RunReports, RunShows, RunEnded, SetCamera,
                 FitEye, FlyTo, FitPart, LookFrom, SetLamp, SetColour, SetExaggeration, SetThings, SetMoment,
                 SetPlaying, SetPlayRate, SetArrangement, SetFront, SetWipe, Tick, ChooseFinding, StepFinding,
                 ChooseLine, Picked, ShowFeature, ShowLower, SetSection, SetSectionView, FitSection, FitCut,
                 CloseupLaid, SetSheetView, FitSheet, FitStrip, SetStripLamp, TraceBetween, LayTrace,
                 TraceStarted, TraceLaid, ClearTrace, ChangeValue, ResetValue, Undo, Redo, SaveEnded,
                 SetSaveName, SetDark, SetScale, ShowSheet, ShowWhatIf, SetFolder, Say, CloseWindow>;
using Wishes = std::vector<Wish>;

/// What a panel wants done outside the state; the window's owner does it and reports back with wishes.
struct SaveJob {
  int seat = 0;
  std::string name; ///< beside the job
  bool may_replace = false;
};

} // namespace asperity
