// Cutters and hold-downs that cannot be.
#include "wrong_job.h"

namespace asperity {

std::vector<WrongJob> wrong_cutters() {
  return {
      {"NoCutter",
       "[[cutter]]\nnumber = 1\nkind = \"flat\"\ndiameter_mm = 6.0\nflutes = 2\nflute_length_mm = 20.0\n"
       "shank_diameter_mm = 6.0\nstick_out_mm = 25.0\n",
       "", "title", "cutter is missing", "[[cutter]]"},
      {"UnknownKind", "kind = \"flat\"", "kind = \"bal\"", "kind", "cannot be \"bal\"",
       "Did you mean \"ball\"?"},
      {"KindMissing", "kind = \"flat\"\n", "", "[[cutter]]", "kind is missing", "Add 'kind'"},
      {"NumberMissing", "number = 1\n", "", "[[cutter]]", "number is missing", "Add 'number'"},
      {"CornerOnAFlatCutter", "kind = \"flat\"", "kind = \"flat\"\ncorner_radius_mm = 0.5",
       "corner_radius_mm", "does not belong to kind = \"flat\"", "Remove 'corner_radius_mm'"},
      {"CornerLargerThanRadius", "kind = \"flat\"", "kind = \"corner_radius\"\ncorner_radius_mm = 3.5",
       "corner_radius_mm = 3.5", "larger than the cutter's radius 3 mm", "half of diameter_mm"},
      {"CornerMissing", "kind = \"flat\"", "kind = \"corner_radius\"", "[[cutter]]",
       "corner_radius_mm is missing", "Add 'corner_radius_mm'"},
      {"CornerLargerThanTip", "kind = \"flat\"",
       "kind = \"tapered\"\ntip_diameter_mm = 1.0\ncorner_radius_mm = 0.6\nhalf_angle_deg = 10.0",
       "corner_radius_mm = 0.6", "larger than the tip's radius 0.5 mm", "half of tip_diameter_mm"},
      {"TipLargerThanDiameter", "kind = \"flat\"",
       "kind = \"v\"\ntip_diameter_mm = 7.0\nhalf_angle_deg = 30.0", "tip_diameter_mm",
       "is not smaller than diameter_mm", "largest diameter"},
      {"RightHalfAngle", "kind = \"flat\"", "kind = \"v\"\ntip_diameter_mm = 0.2\nhalf_angle_deg = 90.0",
       "half_angle_deg", "at most 89.5", "unit"},
      {"ZeroHalfAngle", "kind = \"flat\"", "kind = \"v\"\ntip_diameter_mm = 0.2\nhalf_angle_deg = 0.0",
       "half_angle_deg", "at least 0.05", "unit"},
      {"FlankLongerThanStickOut", "kind = \"flat\"",
       "kind = \"v\"\ntip_diameter_mm = 0.0\nhalf_angle_deg = 2.0", "stick_out_mm", "less than the 85.9",
       "half_angle_deg"}, // 3 mm / tan 2 deg
      {"SteepHelix", "flutes = 2", "flutes = 2\nhelix_deg = 75.0", "helix_deg", "at most 60", "unit"},
      {"RunoutInMicrometres", "flutes = 2", "flutes = 2\nrunout_mm = 20.0", "runout_mm", "at most 1", "unit"},
      {"AnotherCutterAltogether", "flutes = 2", "flutes = 2\ndiameter_error_mm = -1.6", "diameter_error_mm",
       "a quarter of the diameter", "real minus nominal"},
      {"CoreThickerThanTheCutter", "flutes = 2", "flutes = 2\nflute_core_ratio = 1.2", "flute_core_ratio",
       "at most 1", "Check"},
      {"UnknownToolMaterial", "flutes = 2", "flutes = 2\nmaterial = \"hs\"", "material = \"hs\"",
       "cannot be \"hs\"", "Did you mean \"hss\"?"},
      {"SameNumberTwice", "[blank]",
       "[[cutter]]\nnumber = 1  # again\nkind = \"ball\"\ndiameter_mm = 3.0\nflutes = 2\nflute_length_mm = "
       "9.0\n"
       "shank_diameter_mm = 3.0\nstick_out_mm = 15.0\n[blank]",
       "number = 1  # again", "used by two cutters", "its own number"},
  };
}

std::vector<WrongJob> wrong_holdings() {
  return {
      {"CutIntoNoSpoilboard", "spoilboard_top_mm = 0.0", "spoilboard_cut_allowed_mm = 0.5",
       "spoilboard_cut_allowed_mm", "without a spoilboard", "Add spoilboard_top_mm"},
      {"NegativeClampForce", "spoilboard_top_mm = 0.0", "clamp_force_N = -1.0", "clamp_force_N", "at least 0",
       "unit"},
      {"BoltWithoutAPlace", "[setup]", "[[hold_down.bolt]]\nhead_diameter_mm = 8.0\ntop_mm = 15.0\n[setup]",
       "[[hold_down.bolt]]", "centre_mm is missing", "Add 'centre_mm'"},
      {"TorqueWithoutAThread", "[setup]",
       "[[hold_down.bolt]]\ncentre_mm = [0, 0]\nhead_diameter_mm = 8.0\ntop_mm = 15.0\ntorque_N_m = "
       "1.0\n[setup]",
       "[[hold_down.bolt]]", "thread_diameter_mm is missing", "Add 'thread_diameter_mm'"},
      {"ForceGivenTwice", "spoilboard_top_mm = 0.0",
       "clamp_force_N = 500.0\n[[hold_down.clamp]]\ncentre_mm = [0, 0]\nsize_x_mm = 8.0\nsize_y_mm = 8.0\n"
       "top_mm = 15.0\nforce_N = 100.0\n",
       "clamp_force_N", "beside the forces of single bolts or clamps", "not both"},
      {"BoltHeadInClampWords", "[setup]",
       "[[hold_down.bolt]]\ncentre_mm = [0, 0]\nhead_diameter_mm = 8.0\ntop_mm = 15.0\nsize_x_mm = "
       "8.0\n[setup]",
       "size_x_mm", "is not a known key", "Known here"},
  };
}

} // namespace asperity
