// The cautions themselves.
#include "asperity/report/cautions.h"

#include <array>

namespace asperity {

std::span<const std::string_view> cautions() {
  static constexpr std::array<std::string_view, 6> kCautions = {
      "This is a prediction from a model. Whoever runs the machine decides, and answers for it.",
      "Wear eye protection; keep hands, sleeves and hair away from the turning cutter.",
      "Check that the work is held down and that the cutter clears every bolt and clamp.",
      "Run the program once above the work, spindle off, before the first cut.",
      "Where the controller's or the tool maker's limits are lower than a number shown here, theirs rule.",
      "Plastics give off dust and, when hot, fumes: extract both, and stop if chips melt or smell.",
  };
  return kCautions;
}

} // namespace asperity
