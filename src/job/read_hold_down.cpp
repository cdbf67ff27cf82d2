// [hold_down]: bolts, clamps and the spoilboard.
#include "bolt_preload.h"
#include "job_sections.h"
#include "ranges.h"

#include <fmt/format.h>

namespace asperity {

namespace {

constexpr Range kForce_N{0, 1e6};

KeepOut read_keep_out(KeyReader &reader, bool is_round) {
  KeepOut keep_out;
  keep_out.is_round = is_round;
  const std::string fallback = reader.section();
  const auto name = reader.text("name", Need::optional);
  keep_out.name = name.value_or(fallback.substr(fallback.find('.') + 1));
  keep_out.centre = reader.point2("centre_mm", Need::required).value_or(Vec2{0.0});
  keep_out.z_top_mm = reader.number("top_mm", kCoordinate_mm, Need::required).value_or(0.0);
  if (is_round) {
    keep_out.diameter_mm = reader.number("head_diameter_mm", kLength_mm, Need::required).value_or(0.0);
  } else {
    keep_out.size_mm.x = reader.number("size_x_mm", kLength_mm, Need::required).value_or(0.0);
    keep_out.size_mm.y = reader.number("size_y_mm", kLength_mm, Need::required).value_or(0.0);
  }
  return keep_out;
}

/// A bolt's force from its torque, when torque and thread are given.
std::optional<double> read_bolt_force(KeyReader &reader, double nut_factor) {
  const auto torque_N_m = reader.number("torque_N_m", {0, 1000}, Need::optional);
  const Need need = reader.has("torque_N_m") ? Need::required : Need::optional;
  const auto thread_mm = reader.number("thread_diameter_mm", {1, 100}, need);
  if (!torque_N_m || !thread_mm)
    return std::nullopt;
  return bolt_force_N(*torque_N_m, *thread_mm, nut_factor);
}

double read_nut_factor(KeyReader &reader, const std::vector<KeyReader> &bolts) {
  const auto given = reader.number("nut_factor", {0.05, 1}, Need::optional);
  bool has_torque = false;
  for (const KeyReader &bolt : bolts)
    has_torque = has_torque || bolt.has("torque_N_m");
  if (!given && has_torque && !reader.has("nut_factor"))
    reader.note_default("nut_factor", text_of_number(kNutFactor), "from memory, dry steel thread");
  return given.value_or(kNutFactor);
}

} // namespace

HoldDown read_hold_down(KeyReader &reader) {
  HoldDown holding;
  holding.spoilboard_top_z_mm = reader.number("spoilboard_top_mm", kCoordinate_mm, Need::optional);
  const auto cut_allowed_mm = reader.number("spoilboard_cut_allowed_mm", {0, 100}, Need::optional);
  holding.spoilboard_cut_allowed_mm = cut_allowed_mm.value_or(0.0);
  if (holding.spoilboard_top_z_mm && !reader.has("spoilboard_cut_allowed_mm"))
    reader.note_default("spoilboard_cut_allowed_mm", "0", "the spoilboard is not to be cut");
  if (cut_allowed_mm && !reader.has("spoilboard_top_mm"))
    reader.error("spoilboard_cut_allowed_mm", "is given without a spoilboard", "Add spoilboard_top_mm.");
  holding.grip_z_mm = reader.number("grip_mm", kCoordinate_mm, Need::optional);

  // The clamping force is given as a whole, or bolt by bolt and clamp by clamp.
  std::vector<KeyReader> bolts = reader.tables("bolt");
  const double nut_factor = read_nut_factor(reader, bolts);
  std::optional<double> summed_N;
  const auto add = [&summed_N](std::optional<double> force_N) {
    if (force_N)
      summed_N = summed_N.value_or(0.0) + *force_N;
  };
  for (KeyReader &bolt : bolts) {
    holding.keep_outs.push_back(read_keep_out(bolt, true));
    add(read_bolt_force(bolt, nut_factor));
    bolt.finish();
  }
  for (KeyReader &clamp : reader.tables("clamp")) {
    holding.keep_outs.push_back(read_keep_out(clamp, false));
    add(clamp.number("force_N", kForce_N, Need::optional));
    clamp.finish();
  }
  holding.clamp_force_N = reader.number("clamp_force_N", kForce_N, Need::optional);
  if (holding.clamp_force_N && summed_N)
    reader.error("clamp_force_N", "is given beside the forces of single bolts or clamps",
                 "Give the whole force, or each bolt's torque and each clamp's force, not both.");
  if (!holding.clamp_force_N)
    holding.clamp_force_N = summed_N;
  return holding;
}

} // namespace asperity
