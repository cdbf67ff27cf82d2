// [[pass]] and [between_passes]: what all passes share, and which surface each one cuts.
#include "read_pass.h"

#include "nearest_word.h"
#include "ranges.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

constexpr Range kFeed_mm_per_min{0, 60000, true};
constexpr Range kRpm{0, 200000, true};
/// Shorter chords than this only make a program long.
constexpr Range kChord_mm{0.01, 10};

const Choice<PassKind> kKinds[] = {{"wall", PassKind::wall},
                                   {"outline", PassKind::outline},
                                   {"floor", PassKind::floor},
                                   {"dome", PassKind::dome}};
const Choice<CutDirection> kDirections[] = {{"climb", CutDirection::climb},
                                            {"conventional", CutDirection::conventional},
                                            {"both", CutDirection::both}};

template <class T> constexpr std::string_view kKindOf = "";
template <> constexpr std::string_view kKindOf<WallFeature> = "wall";
template <> constexpr std::string_view kKindOf<FloorFeature> = "floor";
template <> constexpr std::string_view kKindOf<DomeFeature> = "dome";

void read_cutter_of(KeyReader &reader, const Job &job, PlannedPass &pass) {
  const auto number = reader.whole_number("cutter", {1, 99999}, Need::required);
  if (!number)
    return;
  pass.cutter = *number;
  if (!job.cutters.empty() && !job.cutter(*number))
    reader.error("cutter", fmt::format("names {}, but no [[cutter]] has that number", *number),
                 "Give the number of one of the job's cutters.");
}

void read_speeds(KeyReader &reader, const Job &job, PlannedPass &pass) {
  const auto rpm = reader.number("rpm", kRpm, Need::required);
  pass.rpm = rpm.value_or(0.0);
  if (rpm && *rpm > job.machine.spindle_max_rpm)
    reader.error("rpm",
                 fmt::format("is {}: the machine's spindle_max_rpm is {}", *rpm, job.machine.spindle_max_rpm),
                 "Choose a lower speed; the machine's limit rules.");
  pass.feed_mm_per_min = reader.number("feed_mm_per_min", kFeed_mm_per_min, Need::required).value_or(0.0);
  pass.plunge_feed_mm_per_min =
      reader.number("plunge_feed_mm_per_min", kFeed_mm_per_min, Need::required).value_or(0.0);
  const double most = std::max(job.machine.max_feed_mm_per_min.x, job.machine.max_feed_mm_per_min.y);
  if (pass.feed_mm_per_min > most)
    reader.warning("feed_mm_per_min", fmt::format("is above what the machine's axes can do, {}", most),
                   "The machine will run slower; lower the feed so that the program says what happens.");
}

void read_direction(KeyReader &reader, PlannedPass &pass) {
  if (const auto direction = reader.choice<CutDirection>("direction", kDirections, Need::optional))
    pass.direction = *direction;
  else if (!reader.has("direction"))
    reader.note_default("direction", "\"climb\"", "common practice, no published source");
}

template <class T> const T *find_surface(KeyReader &reader, const Job &job, PlannedPass &pass) {
  const auto name = reader.text("surface", Need::required);
  if (!name)
    return nullptr;
  std::vector<std::string_view> names;
  for (std::size_t i = 0; i < job.features.size(); ++i) {
    const T *feature = std::get_if<T>(&job.features[i]);
    if (!feature)
      continue;
    if (feature->name == *name) {
      pass.feature = i;
      return feature;
    }
    names.push_back(feature->name);
  }
  const std::string_view near = nearest_word(*name, names);
  reader.error("surface", fmt::format("cannot be \"{}\": the job has no {} of that name", *name, kKindOf<T>),
               !near.empty()   ? fmt::format("Did you mean \"{}\"?", near)
               : names.empty() ? fmt::format("Add a [[{}]] of that name.", kKindOf<T>)
                               : fmt::format("Choose one of: {}.", listed(names)));
  return nullptr;
}

/// The keys of one kind; the others are then reported as strangers with the nearest known key.
void read_kind(KeyReader &reader, const Job &job, PlannedPass &pass) {
  if (pass.kind == PassKind::wall)
    read_wall_pass(reader, find_surface<WallFeature>(reader, job, pass), pass);
  else if (pass.kind == PassKind::outline)
    read_outline_pass(reader, pass);
  else if (pass.kind == PassKind::floor)
    read_floor_pass(reader, find_surface<FloorFeature>(reader, job, pass), job.blank, pass);
  else
    read_dome_pass(reader, find_surface<DomeFeature>(reader, job, pass), pass);
}

PlannedPass read_pass(KeyReader &reader, const Job &job) {
  PlannedPass pass;
  pass.line = reader.place().line;
  pass.column = reader.place().column;
  pass.name = reader.text("name", Need::optional).value_or(reader.section());
  const auto kind = reader.choice<PassKind>("kind", kKinds, Need::required);
  read_cutter_of(reader, job, pass);
  read_speeds(reader, job, pass);
  read_direction(reader, pass);
  pass.chord_mm = reader.number("chord_mm", kChord_mm, Need::optional).value_or(0.0);
  if (!kind)
    return pass;
  pass.kind = *kind;
  read_kind(reader, job, pass);
  reader.finish();
  return pass;
}

} // namespace

std::vector<PlannedPass> read_passes(KeyReader &root, const Job &job) {
  std::vector<PlannedPass> passes;
  for (KeyReader &reader : root.tables("pass"))
    passes.push_back(read_pass(reader, job));
  return passes;
}

BetweenPasses read_between_passes(KeyReader &root, const Job &job) {
  BetweenPasses between;
  auto reader = root.table("between_passes", Need::optional);
  if (!reader)
    return between;
  if (root.lacks("pass"))
    root.error("between_passes", "is given without any pass", "Add [[pass]] sections, or remove it.");
  between.safe_mm = reader->number("safe_mm", kCoordinate_mm, Need::optional);
  between.near_mm = reader->number("near_mm", kCoordinate_mm, Need::optional);
  between.park_mm = reader->point2("park_mm", Need::optional);
  between.spindle_start_s =
      reader->number("spindle_start_s", {0, 120}, Need::optional).value_or(between.spindle_start_s);
  between.decimals = reader->whole_number("decimals", {3, 8}, Need::optional).value_or(between.decimals);
  if (between.near_mm && *between.near_mm <= job.blank.z_top_mm)
    reader->error("near_mm", fmt::format("is not above the blank, whose top is at {} mm", job.blank.z_top_mm),
                  "Rapids go down to near_mm: put it a few mm above the blank.");
  if (between.safe_mm && between.near_mm && *between.safe_mm < *between.near_mm)
    reader->error("safe_mm", "is below near_mm", "Rapids across the table need the greater height.");
  reader->finish();
  return between;
}

} // namespace asperity
