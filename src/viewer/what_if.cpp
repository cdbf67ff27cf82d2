// Values of a job that can be tried, with what each means in the shop.
#include "what_if.h"

#include <utility>

namespace asperity {

namespace {

WhatIfKey number_key(std::string table, std::string key, std::string group, std::string label,
                     std::string unit, double low, double high, double step,
                     std::function<double &(Job &)> number, std::string meaning) {
  WhatIfKey k;
  k.id = table + '.' + key;
  k.table = std::move(table);
  k.key = std::move(key);
  k.group = std::move(group);
  k.label = std::move(label);
  k.unit = std::move(unit);
  k.meaning = std::move(meaning);
  k.low = low;
  k.high = high;
  k.step = step;
  k.number = std::move(number);
  return k;
}

void add_setup(std::vector<WhatIfKey> &keys) {
  const auto add = [&keys](const char *key, const char *label, auto number, const char *meaning) {
    keys.push_back(number_key("setup", key, "Zero", label, "mm", -5, 5, 0.01, number, meaning));
  };
  add(
      "z_zero_error_mm", "Z zero error", [](Job &j) -> double & { return j.setup.z_zero_error_mm; },
      "How much higher the cutter runs than believed. It moves floors, and leaves a lip at the base when "
      "positive.");
  add(
      "x_zero_error_mm", "X zero error", [](Job &j) -> double & { return j.setup.xy_zero_error_mm.x; },
      "How far the whole path lies off along x.");
  add(
      "y_zero_error_mm", "Y zero error", [](Job &j) -> double & { return j.setup.xy_zero_error_mm.y; },
      "How far the whole path lies off along y.");
}

void add_cutter(std::vector<WhatIfKey> &keys, const Job &job, std::size_t index) {
  const std::string group = "Cutter T" + std::to_string(job.cutters[index].number);
  const auto add = [&](const char *key, const char *label, double low, double high, double step,
                       double Cutter::*field, const char *meaning) {
    WhatIfKey k = number_key(
        "cutter", key, group, label, "mm", low, high, step,
        [index, field](Job &j) -> double & { return j.cutters[index].*field; }, meaning);
    k.index = static_cast<int>(index);
    k.id = "cutter." + std::to_string(index) + '.' + key;
    keys.push_back(std::move(k));
  };
  add("runout_mm", "Runout", 0, 1, 0.005, &Cutter::runout_mm,
      "Total indicator reading of the teeth. The highest tooth makes the surface, half of it outside the "
      "nominal radius.");
  add("diameter_error_mm", "Diameter error", -2, 2, 0.01, &Cutter::diameter_error_mm,
      "Real minus nominal diameter: a worn or reground cutter is negative and leaves the part larger.");
  add("stick_out_mm", "Stick-out", job.cutters[index].flute_length_mm, 300, 1, &Cutter::stick_out_mm,
      "From tip to holder face. Bending grows with its cube.");
}

void add_machine(std::vector<WhatIfKey> &keys) {
  const auto add = [&keys](const char *key, const char *label, const char *unit, double low, double high,
                           double step, auto number, const char *meaning) {
    keys.push_back(number_key("machine", key, "Machine", label, unit, low, high, step, number, meaning));
  };
  add(
      "stiffness_xy_N_per_um", "Stiffness x, y", "N/µm", 0.001, 1000, 0.1,
      [](Job &j) -> double & { return j.machine.stiffness_xy_N_per_um; },
      "Pull at the spindle nose over what a dial gauge reads.");
  add(
      "stiffness_z_N_per_um", "Stiffness z", "N/µm", 0.001, 1000, 0.1,
      [](Job &j) -> double & { return j.machine.stiffness_z_N_per_um; }, "The same along the spindle.");
  add(
      "corner_deviation_mm", "Corner deviation", "mm", 0.001, 1, 0.01,
      [](Job &j) -> double & { return j.machine.corner_deviation_mm; },
      "Sets the speed through a corner: an arc that passes this far from it.");
  add(
      "backlash_x_mm", "Backlash x", "mm", 0, 1, 0.01,
      [](Job &j) -> double & { return j.machine.backlash_mm.x; }, "Lost motion when x turns round.");
  add(
      "backlash_y_mm", "Backlash y", "mm", 0, 1, 0.01,
      [](Job &j) -> double & { return j.machine.backlash_mm.y; }, "Lost motion when y turns round.");
  add(
      "acceleration_x_mm_per_s2", "Acceleration x", "mm/s²", 1, 50000, 50,
      [](Job &j) -> double & { return j.machine.acceleration_mm_per_s2.x; },
      "How fast x gains speed: low values let the feed fall at corners and reversals.");
  add(
      "acceleration_y_mm_per_s2", "Acceleration y", "mm/s²", 1, 50000, 50,
      [](Job &j) -> double & { return j.machine.acceleration_mm_per_s2.y; }, "How fast y gains speed.");
  add(
      "tram_deg", "Tram", "deg", -5, 5, 0.01, [](Job &j) -> double & { return j.machine.tram_deg; },
      "Spindle out of square to the table.");
}

void add_blank(std::vector<WhatIfKey> &keys, const Job &job) {
  if (job.blank.layer_height_mm > 0.0)
    keys.push_back(number_key(
        "blank", "layer_height_mm", "Blank", "Layer height", "mm", 0.02, 5, 0.05,
        [](Job &j) -> double & { return j.blank.layer_height_mm; },
        "Of the print: it sets the roughness of skin that no pass reaches."));
  if (job.blank.shape == BlankShape::cylinder)
    keys.push_back(number_key(
        "blank", "diameter_mm", "Blank", "Diameter", "mm", 0.1, 5000, 0.1,
        [](Job &j) -> double & { return j.blank.diameter_mm; },
        "Of the blank as it lies on the board, measured."));
}

void add_effects(std::vector<WhatIfKey> &keys) {
  constexpr std::pair<const char *, bool Effects::*> kSwitches[] = {
      {"zero_error", &Effects::zero_error},
      {"diameter_error", &Effects::diameter_error},
      {"runout", &Effects::runout},
      {"backlash", &Effects::backlash},
      {"acceleration", &Effects::acceleration},
      {"blending", &Effects::blending},
      {"cutter_bending", &Effects::cutter_bending},
      {"machine_bending", &Effects::machine_bending},
      {"blank_bending", &Effects::blank_bending},
      {"edge_force", &Effects::edge_force}};
  for (const auto &[key, field] : kSwitches) {
    WhatIfKey k;
    k.id = std::string("effects.") + key;
    k.table = "effects";
    k.key = key;
    k.group = "Taken into account";
    k.label = key;
    for (char &c : k.label)
      c = c == '_' ? ' ' : c;
    k.label.front() = static_cast<char>(k.label.front() - 'a' + 'A');
    k.meaning = "Switch it off to see what is left without it: that is what it does.";
    k.high = k.step = 1;
    k.is_switch = true;
    k.on = [f = field](Job &j) -> bool & { return j.effects.*f; };
    keys.push_back(std::move(k));
  }
}

} // namespace

double WhatIfKey::value_of(const Job &job) const {
  // The accessors only hand out the place; nothing is written through it here.
  Job &place = const_cast<Job &>(job);
  return is_switch ? (on(place) ? 1.0 : 0.0) : number(place);
}

void WhatIfKey::set(Job &job, double value) const {
  if (is_switch)
    on(job) = value != 0.0;
  else
    number(job) = value;
}

std::vector<WhatIfKey> what_if_keys(const Job &job) {
  std::vector<WhatIfKey> keys;
  add_setup(keys);
  for (std::size_t i = 0; i < job.cutters.size(); ++i)
    add_cutter(keys, job, i);
  add_machine(keys);
  add_blank(keys, job);
  add_effects(keys);
  return keys;
}

Job changed(Job job, const Changes &changes) {
  for (const WhatIfKey &key : what_if_keys(job))
    if (const auto found = changes.find(key.id); found != changes.end())
      key.set(job, found->second);
  return job;
}

} // namespace asperity
