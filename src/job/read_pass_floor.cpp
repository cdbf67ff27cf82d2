// Passes over a floor or a dome: pattern, stepover, edges and islands.
#include "ranges.h"
#include "read_pass.h"

#include <fmt/format.h>

namespace asperity {

namespace {

constexpr Range kAngle_deg{-360, 360};

const Choice<Pattern> kFloorPatterns[] = {{"parallel", Pattern::parallel},
                                          {"outline_parallel", Pattern::outline_parallel},
                                          {"spiral", Pattern::spiral}};
const Choice<Pattern> kDomePatterns[] = {
    {"levels", Pattern::levels}, {"parallel", Pattern::parallel}, {"spiral", Pattern::spiral}};
const Choice<RingOrder> kOrders[] = {{"inwards", RingOrder::inwards}, {"outwards", RingOrder::outwards}};
const Choice<EntryKind> kFloorEntries[] = {{"plunge", EntryKind::plunge}, {"ramp", EntryKind::ramp}};
const Choice<FloorEdge> kEdges[] = {{"open", FloorEdge::open}, {"wall", FloorEdge::wall}};

/// angle_deg for parallel lines, order and start_deg for everything that goes round.
void read_lay(KeyReader &reader, bool is_parallel, PlannedPass &pass) {
  const std::string_view word = is_parallel ? "pattern = \"parallel\"" : "a pattern that goes round";
  if (reader.belongs("angle_deg", is_parallel, word))
    pass.angle_deg = reader.number("angle_deg", kAngle_deg, Need::optional).value_or(0.0);
  if (reader.belongs("order", !is_parallel, word))
    if (const auto order = reader.choice<RingOrder>("order", kOrders, Need::optional))
      pass.order = *order;
  if (reader.belongs("start_deg", !is_parallel, word))
    pass.start.deg = reader.number("start_deg", kAngle_deg, Need::optional).value_or(0.0);
}

void read_floor_entry(KeyReader &reader, PlannedPass &pass) {
  if (const auto entry = reader.choice<EntryKind>("entry", kFloorEntries, Need::optional))
    pass.entry.kind = *entry;
  const bool is_ramp = pass.entry.kind == EntryKind::ramp;
  if (reader.belongs("ramp_deg", is_ramp, "entry = \"plunge\""))
    pass.entry.ramp_deg = reader.number("ramp_deg", kRamp_deg, Need::required).value_or(0.0);
  if (reader.belongs("ramp_feed_mm_per_min", is_ramp, "entry = \"plunge\""))
    pass.ramp_feed_mm_per_min = reader.number("ramp_feed_mm_per_min", {0, 60000, true}, Need::optional)
                                    .value_or(pass.feed_mm_per_min);
}

void read_floor_edges(KeyReader &reader, const FloorFeature *floor, PlannedPass &pass) {
  if (const auto edge = reader.choice<FloorEdge>("edge", kEdges, Need::required))
    pass.edge = *edge;
  const bool is_open = pass.edge == FloorEdge::open;
  if (reader.belongs("past_edge_mm", is_open, "edge = \"wall\""))
    pass.past_edge_mm = reader.number("past_edge_mm", {-100, 100}, Need::optional).value_or(0.0);
  if (reader.belongs("approach_mm", is_open, "edge = \"wall\""))
    pass.entry.approach_mm = reader.number("approach_mm", kLengthOrNone_mm, Need::optional);
  if (reader.belongs("island_gap_mm", !floor || !floor->islands.empty(), "a floor without islands"))
    pass.island_gap_mm = reader.number("island_gap_mm", {-50, 100}, Need::optional).value_or(0.0);
}

} // namespace

void read_floor_pass(KeyReader &reader, const FloorFeature *floor, const Blank &blank, PlannedPass &pass) {
  const auto pattern = reader.choice<Pattern>("pattern", kFloorPatterns, Need::required);
  pass.pattern = pattern.value_or(Pattern::parallel);
  pass.stepover_mm = reader.number("stepover_mm", kStep_mm, Need::required).value_or(0.0);
  read_lay(reader, pass.pattern == Pattern::parallel, pass);
  read_floor_edges(reader, floor, pass);
  read_floor_entry(reader, pass);

  // Levels, from the blank's top unless told otherwise.
  pass.allowance_mm = reader.number("allowance_mm", {0, 100}, Need::optional).value_or(0.0);
  pass.z_bottom_mm = (floor ? floor->z_mm : 0.0) + pass.allowance_mm;
  pass.z_top_mm = reader.number("top_mm", kCoordinate_mm, Need::optional).value_or(blank.z_top_mm);
  pass.stepdown_mm = reader.number("stepdown_mm", kStep_mm, Need::optional).value_or(0.0);
  read_last_level(reader, pass);
  if (floor && pass.z_top_mm < pass.z_bottom_mm)
    reader.error(reader.has("top_mm") ? "top_mm" : "surface",
                 fmt::format("leaves nothing to cut: the pass would begin at {} mm and end at {} mm",
                             pass.z_top_mm, pass.z_bottom_mm),
                 "Levels begin below top_mm (left out: the blank's top) and end at the floor.");
}

void read_dome_pass(KeyReader &reader, const DomeFeature *dome, PlannedPass &pass) {
  const auto pattern = reader.choice<Pattern>("pattern", kDomePatterns, Need::required);
  pass.pattern = pattern.value_or(Pattern::parallel);
  const bool is_levels = pass.pattern == Pattern::levels;
  if (reader.belongs("stepdown_mm", is_levels || !pattern, "this pattern: it has a stepover_mm"))
    pass.stepdown_mm =
        reader.number("stepdown_mm", kStep_mm, pattern ? Need::required : Need::optional).value_or(0.0);
  if (reader.belongs("stepover_mm", !is_levels, "pattern = \"levels\": it has a stepdown_mm"))
    pass.stepover_mm = reader.number("stepover_mm", kStep_mm, Need::required).value_or(0.0);
  read_lay(reader, pass.pattern == Pattern::parallel, pass);
  pass.chord_error_mm =
      reader.number("chord_error_mm", {1e-5, 1}, Need::optional).value_or(pass.chord_error_mm);
  pass.lowest_mm = reader.number("lowest_mm", kCoordinate_mm, Need::optional);
  if (dome && dome->surface && is_levels)
    reader.error("pattern", "cannot be \"levels\" over a mesh: only a cap has level rings in closed form",
                 "Choose \"parallel\" or \"spiral\"; the cutter is then dropped on the mesh.");
}

} // namespace asperity
