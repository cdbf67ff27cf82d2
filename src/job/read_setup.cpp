// [setup], [effects] and [chart]: where zero is, what is taken into account, how finely.
#include "job_sections.h"
#include "ranges.h"

#include <fmt/format.h>

namespace asperity {

namespace {

constexpr Range kSpacing_mm{0.0005, 50};

const NumberKey<Setup> kSetupKeys[] = {
    {"z_zero_error_mm", field<Setup, &Setup::z_zero_error_mm>, kSmallError_mm, Need::noted, "taken as none"},
    {"x_zero_error_mm", plan_axis<Setup, &Setup::xy_zero_error_mm, 0>, kSmallError_mm, Need::noted,
     "taken as none"},
    {"y_zero_error_mm", plan_axis<Setup, &Setup::xy_zero_error_mm, 1>, kSmallError_mm, Need::noted,
     "taken as none"},
};

struct EffectKey {
  std::string_view name;
  bool Effects::*on;
};

const EffectKey kEffectKeys[] = {
    {"zero_error", &Effects::zero_error},
    {"diameter_error", &Effects::diameter_error},
    {"runout", &Effects::runout},
    {"backlash", &Effects::backlash},
    {"acceleration", &Effects::acceleration},
    {"blending", &Effects::blending},
    {"cutter_bending", &Effects::cutter_bending},
    {"machine_bending", &Effects::machine_bending},
    {"blank_bending", &Effects::blank_bending},
    {"edge_force", &Effects::edge_force},
};

enum class ProgramUnit { mm, inch };
const Choice<ProgramUnit> kUnits[] = {{"mm", ProgramUnit::mm}, {"inch", ProgramUnit::inch}};

} // namespace

Setup read_setup(KeyReader &reader) {
  Setup setup;
  if (const auto zero = reader.point3("program_zero_mm", Need::optional))
    setup.program_zero_mm = *zero;
  else if (!reader.has("program_zero_mm"))
    reader.note_default("program_zero_mm", "[0, 0, 0]", "program zero taken as part zero");
  reader.numbers<Setup>(setup, kSetupKeys);

  if (const auto unit = reader.choice<ProgramUnit>("program_unit", kUnits, Need::optional))
    setup.program_unit_inch = *unit == ProgramUnit::inch;
  else if (!reader.has("program_unit"))
    reader.note_default("program_unit", "\"mm\"", "until the program says G20 or G21");
  if (const auto skip = reader.flag("block_delete"))
    setup.block_delete = *skip;
  else if (!reader.has("block_delete"))
    reader.note_default("block_delete", "false", "lines that begin with / are run");
  return setup;
}

Effects read_effects(KeyReader &reader) {
  Effects effects;
  for (const EffectKey &key : kEffectKeys)
    effects.*key.on = reader.flag(key.name).value_or(effects.*key.on);
  return effects;
}

Resolution read_chart(KeyReader &reader) {
  Resolution resolution;
  resolution.wall_spacing_mm = reader.number("wall_spacing_mm", kSpacing_mm, Need::optional);
  resolution.floor_spacing_mm = reader.number("floor_spacing_mm", kSpacing_mm, Need::optional);
  return resolution;
}

} // namespace asperity
