// Teeth from the job; marks kept by rounded feed and radius.
#include "marking_cutter.h"

#include "asperity/base/units.h"

#include <cmath>

namespace asperity {

namespace {

constexpr double kPerOctave = 8192;

long rounded(double value) { return std::lround(std::log2(value) * kPerOctave); }
double restored(long rounded_value) { return std::exp2(static_cast<double>(rounded_value) / kPerOctave); }

} // namespace

MarkingCutter marking_cutter(const Job &job, std::uint16_t tool) {
  const Cutter *found = job.cutter(tool);
  const Cutter &cutter = found != nullptr ? *found : job.cutters.front();
  MarkingCutter marking;
  marking.flutes = cutter.flutes;
  marking.helix_rad = rad_from_deg(cutter.helix_deg);
  marking.eccentricity_mm = job.effects.runout ? cutter.runout_mm / 2.0 : 0.0;
  marking.nominal = cutter.profile();
  return marking;
}

const MarkingCutter &MarkStore::cutter(std::uint16_t tool) {
  const auto found = cutters_.find(tool);
  return found != cutters_.end() ? found->second
                                 : cutters_.emplace(tool, marking_cutter(job_, tool)).first->second;
}

const ToothMarks &MarkStore::marks(const MarkKind &kind) {
  const Key key{kind.tool, rounded(kind.radius_mm), rounded(kind.feed_per_tooth_mm), kind.wall_per_mm,
                kind.is_climb};
  if (last_ != nullptr && key == last_key_)
    return *last_;
  auto found = marks_.find(key);
  if (found == marks_.end()) {
    const MarkingCutter &cutter = this->cutter(kind.tool);
    ToothPass pass;
    pass.radius_mm = restored(std::get<1>(key));
    pass.flutes = cutter.flutes;
    pass.feed_per_tooth_mm = restored(std::get<2>(key));
    pass.eccentricity_mm = cutter.eccentricity_mm;
    pass.helix_rad = cutter.helix_rad;
    pass.is_climb = kind.is_climb;
    // On a round wall the rise along the wall is (1 + R / wall radius) R / 2 (place / path radius)^2: the
    // wall's own curvature is seen shrunk by the same path radius. [derived: tooth corner in polar
    // coordinates]
    const double advance = pass.flutes * pass.feed_per_tooth_mm / (2.0 * kPi);
    const double shrink = pass.radius_mm / (pass.radius_mm + (pass.is_climb ? -advance : advance));
    pass.wall_per_mm = kind.wall_per_mm * shrink * shrink;
    found = marks_.emplace(key, ToothMarks(pass)).first;
  }
  last_key_ = key;
  last_ = &found->second;
  return found->second;
}

} // namespace asperity
