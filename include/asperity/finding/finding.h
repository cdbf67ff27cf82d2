// A flaw or risk with its place, size, cause and cure.
#pragma once

#include "asperity/base/vec.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace asperity {

enum class FindingKind {
  base_lip,
  witness_line,
  level_step,
  scallop,
  uncut_skin,
  gouge,
  spoilboard_cut,
  keep_out_touched,
  rapid_in_stock,
  rubbing,
  overheating,
  blank_may_break,
  hold_down_may_slip,
  cutter_overloaded
};

enum class Weight { note, flaw, danger };

/// A named number of a finding, e.g. {"height", 0.6, "mm"}; the first is the one the finding is ranked by.
struct Quantity {
  std::string name;
  double value = 0;
  std::string unit;
};

struct Finding {
  FindingKind kind = FindingKind::base_lip;
  Weight weight = Weight::note;
  int feature = -1;   ///< index into Job::features; -1 = none
  Vec3 place_mm{0.0}; ///< part frame
  std::string where;  ///< in words: "at 0 deg round the wall, z 0.0 to 14.0 mm"
  std::vector<Quantity> size;
  std::string cause;
  std::string remedy;
  std::vector<std::uint32_t> lines; ///< program lines concerned, rising, few
  std::size_t line_count = 0;       ///< how many there are in all
  std::string rests_on; ///< uncalibrated or default values this number rests on; empty = pure geometry
};

/// Trade name of a kind: "base lip", "witness line", ...
std::string_view name_of(FindingKind kind);

} // namespace asperity
