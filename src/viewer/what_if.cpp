// Values of a job that can be tried, with what each means in the shop.
#include "what_if.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace asperity {

namespace {

struct Row {
  const char *key, *label, *unit;
  double low, high, own;
  const char *meaning;
};

void add_rows(std::vector<WhatIfKey> &keys, const std::string &table, const std::string &group,
              std::initializer_list<Row> rows) {
  for (const Row &row : rows)
    keys.push_back({.id = table + '.' + row.key,
                    .group = group,
                    .label = row.label,
                    .unit = row.unit,
                    .meaning = row.meaning,
                    .own = toml_text(row.own),
                    .low = row.low,
                    .high = row.high,
                    .words = {}});
}

void add_setup(std::vector<WhatIfKey> &keys, const Setup &setup) {
  add_rows(
      keys, "setup", "Zero",
      {{"z_zero_error_mm", "Z zero error", "mm", -5, 5, setup.z_zero_error_mm,
        "How much higher the cutter runs than believed. It moves floors, and leaves a lip at the base when "
        "positive."},
       {"x_zero_error_mm", "X zero error", "mm", -5, 5, setup.xy_zero_error_mm.x,
        "How far the whole path lies off along x."},
       {"y_zero_error_mm", "Y zero error", "mm", -5, 5, setup.xy_zero_error_mm.y,
        "How far the whole path lies off along y."}});
}

void add_cutter(std::vector<WhatIfKey> &keys, const Cutter &cutter, std::size_t place) {
  add_rows(
      keys, "cutter." + std::to_string(place), "Cutter T" + std::to_string(cutter.number),
      {{"runout_mm", "Runout", "mm", 0, 1, cutter.runout_mm,
        "Total indicator reading of the teeth. The highest tooth makes the surface, half of it outside the "
        "nominal radius."},
       {"diameter_error_mm", "Diameter error", "mm", -2, 2, cutter.diameter_error_mm,
        "Real minus nominal diameter: a worn or reground cutter is negative and leaves the part larger."},
       {"stick_out_mm", "Stick-out", "mm", cutter.flute_length_mm, 300, cutter.stick_out_mm,
        "From tip to holder face. Bending grows with its cube."}});
}

void add_machine(std::vector<WhatIfKey> &keys, const Machine &m) {
  add_rows(keys, "machine", "Machine",
           {{"stiffness_xy_N_per_um", "Stiffness x, y", "N/µm", 0.001, 1000, m.stiffness_xy_N_per_um,
             "Pull at the spindle nose over what a dial gauge reads."},
            {"stiffness_z_N_per_um", "Stiffness z", "N/µm", 0.001, 1000, m.stiffness_z_N_per_um,
             "The same along the spindle."},
            {"corner_deviation_mm", "Corner deviation", "mm", 0.001, 1, m.corner_deviation_mm,
             "Sets the speed through a corner: an arc that passes this far from it."},
            {"backlash_x_mm", "Backlash x", "mm", 0, 1, m.backlash_mm.x, "Lost motion when x turns round."},
            {"backlash_y_mm", "Backlash y", "mm", 0, 1, m.backlash_mm.y, "Lost motion when y turns round."},
            {"acceleration_x_mm_per_s2", "Acceleration x", "mm/s²", 1, 50000, m.acceleration_mm_per_s2.x,
             "How fast x gains speed: low values let the feed fall at corners and reversals."},
            {"acceleration_y_mm_per_s2", "Acceleration y", "mm/s²", 1, 50000, m.acceleration_mm_per_s2.y,
             "How fast y gains speed."},
            {"tram_deg", "Tram", "deg", -5, 5, m.tram_deg, "Spindle out of square to the table."}});
}

void add_blank(std::vector<WhatIfKey> &keys, const Blank &blank) {
  if (blank.layer_height_mm > 0.0)
    add_rows(keys, "blank", "Blank",
             {{"layer_height_mm", "Layer height", "mm", 0.02, 5, blank.layer_height_mm,
               "Of the print: it sets the roughness of skin that no pass reaches."}});
  if (blank.shape == BlankShape::cylinder)
    add_rows(keys, "blank", "Blank",
             {{"diameter_mm", "Diameter", "mm", 0.1, 5000, blank.diameter_mm,
               "Of the blank as it lies on the board, measured."}});
}

void add_effects(std::vector<WhatIfKey> &keys, const Effects &effects) {
  const std::pair<const char *, bool> kSwitches[] = {{"zero_error", effects.zero_error},
                                                     {"diameter_error", effects.diameter_error},
                                                     {"runout", effects.runout},
                                                     {"backlash", effects.backlash},
                                                     {"acceleration", effects.acceleration},
                                                     {"blending", effects.blending},
                                                     {"cutter_bending", effects.cutter_bending},
                                                     {"machine_bending", effects.machine_bending},
                                                     {"blank_bending", effects.blank_bending},
                                                     {"edge_force", effects.edge_force}};
  for (const auto &[key, is_on] : kSwitches) {
    std::string label = key;
    std::replace(label.begin(), label.end(), '_', ' ');
    label.front() = static_cast<char>(label.front() - 'a' + 'A');
    keys.push_back({.id = std::string("effects.") + key,
                    .group = "Taken into account",
                    .label = std::move(label),
                    .unit = {},
                    .meaning = "Switch it off to see what is left without it: that is what it does.",
                    .kind = KeyKind::toggle,
                    .own = is_on ? "true" : "false",
                    .words = {}});
  }
}

const char *const kEntryWords[] = {"plunge", "ramp", "zigzag", "helix", "arc"};

/// As the job has it, or as it is being tried.
EntryKind entry_tried(const PlannedPass &pass, const std::string &id, const Changes &changes) {
  const auto change = changes.find(id);
  if (change == changes.end())
    return pass.entry.kind;
  const auto word = std::find(std::begin(kEntryWords), std::end(kEntryWords), shown(change->second));
  return static_cast<EntryKind>(word - std::begin(kEntryWords));
}

void add_entry(std::vector<WhatIfKey> &keys, const PlannedPass &pass, const std::string &table,
               const std::string &group, const Changes &changes) {
  const std::string id = table + ".entry";
  keys.push_back({.id = id,
                  .group = group,
                  .label = "Entry",
                  .unit = {},
                  .meaning =
                      "How a level is entered. A plunge stands beside the wall and leaves an upright line; a "
                      "ramp spreads it over its length.",
                  .kind = KeyKind::word,
                  .own = toml_text(std::string_view(kEntryWords[static_cast<int>(pass.entry.kind)])),
                  .words = {std::begin(kEntryWords), std::end(kEntryWords)}});
  const EntryKind entry = entry_tried(pass, id, changes);
  const bool has_slope =
      entry == EntryKind::ramp || (entry == EntryKind::zigzag && pass.entry.zigzag_mm > 0.0);
  if (has_slope)
    add_rows(keys, table, group,
             {{"ramp_deg", "Ramp angle", "deg", 0.01, 45, pass.entry.ramp_deg,
               "How steeply the cutter goes down while it moves along the wall."}});
  if (entry == EntryKind::arc)
    add_rows(keys, table, group,
             {{"lead_radius_mm", "Lead-in radius", "mm", 0.01, 1000, pass.entry.lead_radius_mm,
               "Of the arc on which the cutter comes to the wall."}});
}

void add_pass(std::vector<WhatIfKey> &keys, const PlannedPass &pass, std::size_t place,
              const Changes &changes) {
  const std::string table = "pass." + std::to_string(place), group = "Pass " + pass.name;
  const bool is_wall = pass.kind == PassKind::wall || pass.kind == PassKind::outline;
  if (pass.stepdown_mm > 0.0)
    add_rows(keys, table, group,
             {{"stepdown_mm", "Stepdown", "mm", 0.001, 1000, pass.stepdown_mm,
               "Distance between levels: more bends the cutter more, less takes longer."}});
  if (!is_wall && pass.stepover_mm > 0.0)
    add_rows(keys, table, group,
             {{"stepover_mm", "Stepover", "mm", 0.001, 1000, pass.stepover_mm,
               "Sideways distance between neighbouring lines of the pass."}});
  if (is_wall)
    add_entry(keys, pass, table, group, changes);
  keys.push_back(
      {.id = table + ".direction",
       .group = group,
       .label = "Direction",
       .unit = {},
       .meaning = "Climb: the tooth enters the chip where it is thick. Conventional: where it is thin.",
       .kind = KeyKind::word,
       .own = toml_text(std::string_view(pass.direction == CutDirection::climb          ? "climb"
                                         : pass.direction == CutDirection::conventional ? "conventional"
                                                                                        : "both")),
       .words = {"climb", "conventional", "both"}});
  add_rows(
      keys, table, group,
      {{"feed_mm_per_min", "Feed", "mm/min", 1, 60000, pass.feed_mm_per_min, "Along the path while cutting."},
       {"plunge_feed_mm_per_min", "Plunge feed", "mm/min", 1, 60000, pass.plunge_feed_mm_per_min,
        "Straight down."},
       {"rpm", "Spindle speed", "rpm", 1, 100000, pass.rpm, "Turns of the spindle in a minute."}});
}

} // namespace

std::vector<WhatIfKey> what_if_keys(const Job &job, const Changes &changes) {
  std::vector<WhatIfKey> keys;
  for (std::size_t i = 0; i < job.passes.size(); ++i)
    add_pass(keys, job.passes[i], i + 1, changes);
  add_setup(keys, job.setup);
  for (std::size_t i = 0; i < job.cutters.size(); ++i)
    add_cutter(keys, job.cutters[i], i + 1);
  add_machine(keys, job.machine);
  add_blank(keys, job.blank);
  add_effects(keys, job.effects);
  return keys;
}

std::string allowed(const WhatIfKey &key, const std::string &value) {
  if (key.kind == KeyKind::toggle)
    return value == "true" || value == "false" ? value : std::string{};
  if (key.kind == KeyKind::word) {
    const bool is_known = std::find(key.words.begin(), key.words.end(), shown(value)) != key.words.end();
    return is_known ? toml_text(std::string_view(shown(value))) : std::string{};
  }
  char *end = nullptr;
  const double number = std::strtod(value.c_str(), &end);
  if (end == value.c_str() || *end != 0 || !std::isfinite(number))
    return {};
  return toml_text(std::clamp(number, key.low, key.high));
}

std::string shown(const std::string &value) {
  const bool is_quoted = value.size() >= 2 && value.front() == '"' && value.back() == '"';
  return is_quoted ? value.substr(1, value.size() - 2) : value;
}

std::vector<JobChange> job_changes(const Changes &changes) {
  std::vector<JobChange> list;
  for (const auto &[key, value] : changes)
    list.push_back({key, value});
  return list;
}

} // namespace asperity
