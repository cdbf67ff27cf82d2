// [machine]: how it moves and how it yields.
#include "job_sections.h"
#include "ranges.h"

namespace asperity {

namespace {

constexpr Range kAcceleration{0.1, 1e5};
constexpr Range kFeed{1, 2e5};
constexpr Range kStiffness{0.001, 10000};
constexpr Range kBacklash_mm{0, 2};

constexpr std::string_view kRouterProfile = "controller documentation, belt router with extrusion frame";
constexpr std::string_view kGantry =
    "from memory, plate or extrusion gantry with screws 0.5 to 2; measure yours";
constexpr std::string_view kNoBacklash = "taken as none; measure yours";

const NumberKey<Machine> kMachineKeys[] = {
    {"acceleration_x_mm_per_s2", axis<Machine, &Machine::acceleration_mm_per_s2, 0>, kAcceleration,
     Need::noted, kRouterProfile},
    {"acceleration_y_mm_per_s2", axis<Machine, &Machine::acceleration_mm_per_s2, 1>, kAcceleration,
     Need::noted, kRouterProfile},
    {"acceleration_z_mm_per_s2", axis<Machine, &Machine::acceleration_mm_per_s2, 2>, kAcceleration,
     Need::noted, "from memory, screw-driven Z 100 to 500"},
    {"max_feed_x_mm_per_min", axis<Machine, &Machine::max_feed_mm_per_min, 0>, kFeed, Need::noted,
     kRouterProfile},
    {"max_feed_y_mm_per_min", axis<Machine, &Machine::max_feed_mm_per_min, 1>, kFeed, Need::noted,
     kRouterProfile},
    {"max_feed_z_mm_per_min", axis<Machine, &Machine::max_feed_mm_per_min, 2>, kFeed, Need::noted,
     "from memory"},
    {"rapid_mm_per_min", field<Machine, &Machine::rapid_mm_per_min>, kFeed, Need::noted, kRouterProfile},
    {"corner_deviation_mm",
     field<Machine, &Machine::corner_deviation_mm>,
     {0, 5},
     Need::noted,
     "controller documentation, 0.01 to 0.02"},
    {"blend_tolerance_mm",
     field<Machine, &Machine::blend_tolerance_mm>,
     {0, 10},
     Need::noted,
     "taken as corners not rounded"},
    {"stiffness_xy_N_per_um", field<Machine, &Machine::stiffness_xy_N_per_um>, kStiffness, Need::noted,
     kGantry},
    {"stiffness_z_N_per_um", field<Machine, &Machine::stiffness_z_N_per_um>, kStiffness, Need::noted,
     "from memory, several times the sideways stiffness; measure yours"},
    {"backlash_x_mm", axis<Machine, &Machine::backlash_mm, 0>, kBacklash_mm, Need::noted, kNoBacklash},
    {"backlash_y_mm", axis<Machine, &Machine::backlash_mm, 1>, kBacklash_mm, Need::noted, kNoBacklash},
    {"backlash_z_mm", axis<Machine, &Machine::backlash_mm, 2>, kBacklash_mm, Need::noted, kNoBacklash},
    {"spindle_max_rpm",
     field<Machine, &Machine::spindle_max_rpm>,
     {1, 200000},
     Need::noted,
     "from memory, common router spindle"},
    {"tram_deg", field<Machine, &Machine::tram_deg>, {-5, 5}, Need::noted, "taken as square; measure yours"},
};

} // namespace

Machine read_machine(KeyReader &reader) {
  Machine machine;
  reader.numbers<Machine>(machine, kMachineKeys);
  return machine;
}

} // namespace asperity
