// Passes round a wall or an outline: levels, allowance and finish, entry, start place.
#include "ranges.h"
#include "read_pass.h"

#include <fmt/format.h>

namespace asperity {

namespace {

constexpr Range kStretch_mm{0.5, kMostLength_mm};
constexpr Range kLead_deg{0, 180, true};
constexpr Range kTurn_deg{-360, 360};
constexpr Range kOvercut_mm{0, 50};

const Choice<LastLevel> kLastLevels[] = {{"equal", LastLevel::equal}, {"rest", LastLevel::rest}};
const Choice<Side> kPassSides[] = {{"outside", Side::outside}, {"inside", Side::inside}};
const Choice<EntryKind> kEntries[] = {{"plunge", EntryKind::plunge},
                                      {"ramp", EntryKind::ramp},
                                      {"zigzag", EntryKind::zigzag},
                                      {"helix", EntryKind::helix},
                                      {"arc", EntryKind::arc}};

void read_entry(KeyReader &reader, PlannedPass &pass) {
  LevelEntry &entry = pass.entry;
  const auto kind = reader.choice<EntryKind>("entry", kEntries, Need::required);
  if (kind)
    entry.kind = *kind;
  else
    for (const char *key : {"ramp_deg", "zigzag_mm", "lead_radius_mm", "lead_deg", "approach_mm"})
      reader.know(key);
  if (!kind)
    return;
  if (*kind == EntryKind::helix && pass.direction == CutDirection::both)
    reader.error("direction", "cannot be \"both\": a helix goes round one way only",
                 "Choose \"climb\" or \"conventional\".");
  const std::string word = fmt::format("entry = \"{}\"", kEntries[static_cast<int>(*kind)].word);
  if (reader.belongs("zigzag_mm", *kind == EntryKind::zigzag, word))
    entry.zigzag_mm = reader.number("zigzag_mm", kStretch_mm, Need::optional).value_or(0.0);
  const bool has_slope = *kind == EntryKind::ramp || (*kind == EntryKind::zigzag && reader.has("zigzag_mm"));
  if (reader.belongs("ramp_deg", has_slope,
                     *kind == EntryKind::zigzag ? "a zigzag of whole laps: stepdown_mm sets its slope"
                                                : word))
    entry.ramp_deg = reader.number("ramp_deg", kRamp_deg, Need::required).value_or(0.0);
  const bool is_arc = *kind == EntryKind::arc;
  if (reader.belongs("lead_radius_mm", is_arc, word))
    entry.lead_radius_mm = reader.number("lead_radius_mm", kLength_mm, Need::required).value_or(0.0);
  if (reader.belongs("lead_deg", is_arc, word))
    entry.lead_deg = reader.number("lead_deg", kLead_deg, Need::optional).value_or(entry.lead_deg);
  if (reader.belongs("approach_mm", !is_arc, word))
    entry.approach_mm = reader.number("approach_mm", kLengthOrNone_mm, Need::optional);
}

void read_start(KeyReader &reader, PlannedPass &pass) {
  const auto deg = reader.number("start_deg", kTurn_deg, Need::optional);
  pass.start.deg = deg.value_or(0.0);
  pass.start.along_mm = reader.number("start_mm", kLengthOrNone_mm, Need::optional);
  if (reader.has("start_deg") && reader.has("start_mm"))
    reader.error("start_mm", "is given beside start_deg",
                 "Give the start as an angle or as a length, not both.");
  pass.start.step_deg = reader.number("start_step_deg", kTurn_deg, Need::optional);
  const bool is_lap = pass.entry.kind == EntryKind::helix ||
                      (pass.entry.kind == EntryKind::zigzag && pass.entry.zigzag_mm == 0.0);
  if (is_lap && reader.has("start_step_deg"))
    reader.error("start_step_deg", "does not belong to an entry that sinks over whole laps",
                 "Remove 'start_step_deg': there is one start only.");
}

void read_finish_pass(KeyReader &reader, PlannedPass &pass) {
  auto section = reader.table("finish", Need::optional);
  if (!section)
    return;
  FinishPass finish;
  finish.feed_mm_per_min =
      section->number("feed_mm_per_min", {0, 60000, true}, Need::optional).value_or(pass.feed_mm_per_min);
  finish.stepdown_mm = section->number("stepdown_mm", kStep_mm, Need::optional).value_or(0.0);
  section->finish();
  pass.finish = finish;
  if (pass.allowance_mm <= 0.0)
    reader.error("finish", "has nothing to cut: allowance_mm is 0",
                 "Give allowance_mm, what the levels leave for the finish; or remove it.");
}

/// What is common to walls and outlines; heights are already known.
void read_levels(KeyReader &reader, PlannedPass &pass) {
  const double overcut_mm = reader.number("overcut_mm", kOvercut_mm, Need::optional).value_or(0.0);
  pass.z_bottom_mm -= overcut_mm;
  if (!reader.has("overcut_mm"))
    reader.note_default("overcut_mm", "0", "the last level ends at the wall's bottom");
  pass.stepdown_mm = reader.number("stepdown_mm", kStep_mm, Need::required).value_or(0.0);
  read_last_level(reader, pass);
  pass.allowance_mm = reader.number("allowance_mm", {0, 100}, Need::optional).value_or(0.0);
  read_finish_pass(reader, pass);
  pass.spring_laps = reader.whole_number("spring_laps", {0, 20}, Need::optional).value_or(0);
  pass.overlap_mm = reader.number("overlap_mm", {0, 1000}, Need::optional).value_or(0.0);
  pass.ramp_feed_mm_per_min =
      reader.number("ramp_feed_mm_per_min", {0, 60000, true}, Need::optional).value_or(pass.feed_mm_per_min);
  read_entry(reader, pass);
  read_start(reader, pass);
}

} // namespace

void read_last_level(KeyReader &reader, PlannedPass &pass) {
  if (const auto rule = reader.choice<LastLevel>("last_level", kLastLevels, Need::optional))
    pass.last_level = *rule;
}

void read_wall_pass(KeyReader &reader, const WallFeature *wall, PlannedPass &pass) {
  if (wall) {
    pass.outline = wall->outline;
    pass.centre = wall->centre;
    pass.side = wall->side;
    pass.z_bottom_mm = wall->z_bottom_mm;
    pass.z_top_mm = wall->z_top_mm;
  }
  if (const auto top_mm = reader.number("top_mm", kCoordinate_mm, Need::optional)) {
    pass.z_top_mm = *top_mm;
    if (wall && *top_mm <= wall->z_bottom_mm)
      reader.error("top_mm", fmt::format("is not above the wall's bottom, {} mm", wall->z_bottom_mm),
                   "Levels begin below top_mm and end at the wall's bottom.");
  }
  read_levels(reader, pass);
}

void read_outline_pass(KeyReader &reader, PlannedPass &pass) {
  if (const auto given = read_outline(reader)) {
    pass.outline = given->outline;
    pass.centre = given->centre;
  }
  if (const auto side = reader.choice<Side>("side", kPassSides, Need::required))
    pass.side = *side;
  const auto bottom_mm = reader.number("bottom_mm", kCoordinate_mm, Need::required);
  const auto top_mm = reader.number("top_mm", kCoordinate_mm, Need::required);
  if (bottom_mm && top_mm) {
    pass.z_bottom_mm = *bottom_mm;
    pass.z_top_mm = *top_mm;
    check_heights(reader, *bottom_mm, *top_mm);
  }
  read_levels(reader, pass);
}

} // namespace asperity
