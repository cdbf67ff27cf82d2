// Trade names of the findings.
#include "asperity/finding/finding.h"

namespace asperity {

std::string_view name_of(FindingKind kind) {
  switch (kind) {
  case FindingKind::base_lip:
    return "base lip";
  case FindingKind::witness_line:
    return "witness line";
  case FindingKind::level_step:
    return "level step";
  case FindingKind::scallop:
    return "scallop";
  case FindingKind::uncut_skin:
    return "uncut skin";
  case FindingKind::gouge:
    return "gouge";
  case FindingKind::spoilboard_cut:
    return "spoilboard cut";
  case FindingKind::keep_out_touched:
    return "keep-out touched";
  case FindingKind::rapid_in_stock:
    return "rapid in stock";
  case FindingKind::rubbing:
    return "rubbing";
  case FindingKind::overheating:
    return "overheating";
  case FindingKind::blank_may_break:
    return "blank may break";
  case FindingKind::hold_down_may_slip:
    return "hold-down may slip";
  case FindingKind::cutter_overloaded:
    return "cutter overloaded";
  }
  return "";
}

} // namespace asperity
