// Everything the viewer knows, as plain values: panels read it, only apply() changes it.
#pragma once

#include "asperity/number/key_number.h"
#include "asperity/predict/outcome.h"
#include "asperity/render/draw_request.h"
#include "asperity/render/renderer.h"
#include "asperity/render/scene.h"

#include <array>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace asperity {

/// Values tried in place of the job's own: TOML text by JobChange::key.
using Changes = std::map<std::string, std::string>;

/// How far a prediction has come: the path alone, coarse charts without roughness, all of it.
enum class Grain { path, coarse, fine };

/// What a background run brings back; outcome is empty when the files could not be read.
struct RunResult {
  Grain grain = Grain::fine;
  std::string job_text;
  std::vector<std::string> program_lines;
  std::optional<Job> job; ///< as read, before any change
  std::vector<Problem> problems;
  std::size_t problems_left_out = 0;
  std::shared_ptr<const Outcome> outcome;
  std::vector<KeyNumber> numbers; ///< of the outcome, worked out once
  Changes changes;                ///< those the outcome was made with
};

struct RunState {
  bool is_wanted = false;  ///< to be started
  bool is_running = false; ///< a thread is at work
  bool is_stopping = false;
  std::string stage;
  double fraction = 0;
};

/// One job at the table: its files, its prediction, what is being tried.
struct Seat {
  std::filesystem::path file; ///< empty: nobody sits here
  RunState run;
  std::shared_ptr<const RunResult> newest; ///< of the newest run, with its problems
  std::shared_ptr<const RunResult> result; ///< of the newest run that brought an outcome
  std::shared_ptr<const Outcome> outcome;  ///< newest that can be shown; stays while the next is made
  Changes outcome_changes;
  std::string fault; ///< why the newest run brought no outcome
  Changes changes;
  std::vector<Changes> past, future; ///< for undo and redo

  bool is_taken() const { return !file.empty(); }
  bool is_stale() const { return outcome && outcome_changes != changes; }
  bool has(Grain least) const { return outcome && result && result->grain >= least; }
};

/// What the surfaces' colours mean.
enum class Colour { lamp, residual, line, level, roughness, bending, chip_load, speed, difference };
inline constexpr int kColours = 9;

/// front: one job fills the picture. beside: both, same eye. wipe: one picture, split by a line.
enum class Arrangement { front, beside, wipe };

struct Flight {
  Camera from, to;
  double done = 0; ///< 0..1
};

struct SpaceState {
  Camera camera;
  bool is_fitted = false;
  bool is_own_eye = false; ///< the user has moved it: a new size of the picture leaves it alone
  std::optional<Flight> flight;
  Lamp lamp;
  Colour colour = Colour::lamp;
  double exaggeration = 0; ///< 0 = chosen by the renderer
  Things things;
  std::array<bool, 4> path_kind{true, true, true, true};
  double moment_s = 0;
  bool is_playing = false;
  double play_rate = 4.0; ///< seconds of path in a second
  Arrangement arrangement = Arrangement::front;
  int front = 0; ///< seat in front
  double wipe = 0.5;
};

/// What lies below the part.
enum class Lower { none, flat, section };

struct StripState {
  int feature = 0;
  SheetView sheet;
  bool is_fitted = false;
  bool is_own_view = false;
  Lamp lamp = strip_lamp();
};

/// The feature cut through.
struct SectionState {
  double at_mm = 0;       ///< arc length of a wall, y of a floor
  bool is_placed = false; ///< the cut goes through what was chosen; else through the first finding
  SheetView sheet;
  bool is_fitted = false;
  bool is_own_view = false;
};

/// A small part of the flat sheet with every tooth mark.
struct Closeup {
  std::shared_ptr<const Outcome> of;    ///< the outcome it was laid on
  std::shared_ptr<const Outcome> sheet; ///< one flat chart in sheet coordinates
  int feature = 0;
  SheetBox box;
  double spacing_mm = 0;
};

/// A trace is asked for once and laid on every seat that has the feature.
struct TraceState {
  bool is_asked = false;
  int feature = 0;
  TraceRequest request;
  std::array<bool, 2> is_wanted{}, is_running{};
  std::array<std::optional<Trace>, 2> laid{};
  std::array<std::string, 2> why{};
  std::array<std::vector<Vec3>, 2> line_mm{}; ///< where it runs, part frame
};

struct Choice {
  int seat = 0;
  int finding = -1;
  int piece = -1;         ///< index into TimedPath::pieces
  std::uint32_t line = 0; ///< program line that is lit; 0 = none
  int scroll = 0;         ///< counts up when the text must move to the line
  std::optional<Pick> cell{};
};

enum class Sheet { none, help, open, save, problems };

struct LookState {
  bool is_dark = false;
  double scale = 1.0; ///< 1, 1.5 or 2
  Lower lower = Lower::flat;
  Lower lower_alone = Lower::none; ///< in a window too low for both it takes the part's place
  Sheet sheet = Sheet::none;
  int open_into = 0;
  bool what_if_in_front = false;
  int tab_call = 0; ///< counts up when the tab must change
  std::string message;
  std::string save_name;
  bool save_would_replace = false;
};

struct AppState {
  std::array<Seat, 2> seats;
  SpaceState space;
  StripState strip;
  SectionState section;
  std::array<std::optional<Closeup>, 2> closeup;
  TraceState trace;
  Choice choice;
  LookState look;
  std::filesystem::path folder; ///< shown by the list of files
  std::uint64_t revision = 0;   ///< counts up with every change
  bool is_closing = false;

  const Outcome *outcome(int seat) const { return seats[static_cast<std::size_t>(seat)].outcome.get(); }
  /// Of what can be judged; none before.
  const std::vector<KeyNumber> &numbers(int i) const {
    static const std::vector<KeyNumber> kNone;
    return judged(i) ? seat(i).result->numbers : kNone;
  }
  const Seat &seat(int i) const { return seats[static_cast<std::size_t>(i)]; }
  Seat &seat(int i) { return seats[static_cast<std::size_t>(i)]; }
  bool has_both() const { return seats[0].outcome && seats[1].outcome; }
  /// Its charts can be looked at and judged; else nothing.
  const Outcome *judged(int i) const { return seat(i).has(Grain::coarse) ? outcome(i) : nullptr; }
};

} // namespace asperity
