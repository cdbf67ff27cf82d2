// Filter, drop the ends, split into sections, evaluate.
#include "asperity/surface/stylus_reading.h"

#include <cmath>

namespace asperity {

StylusReading read_profile(std::span<const double> heights_mm, double spacing_mm, ProfileEnds ends,
                           const MeasuringSettings &settings, Averaging averaging) {
  StylusReading reading;
  reading.settings = settings;
  const double length_mm = static_cast<double>(heights_mm.size()) * spacing_mm;
  reading.fit = evaluation_fit(length_mm, ends, settings);
  reading.spacing_coarse = spacing_mm > settings.point_spacing_mm;

  const std::vector<double> rough = roughness_profile(heights_mm, spacing_mm, settings.bandwidth(), ends);
  std::span<const double> settled = rough;
  if (reading.fit.sections > 0) {
    const auto dropped = static_cast<std::size_t>(std::floor(reading.fit.dropped_mm / spacing_mm));
    settled = settled.subspan(dropped, settled.size() - 2 * dropped);
  }
  reading.parameters =
      profile_parameters(settled, spacing_mm, {settings.cutoff_mm, reading.fit.wanted_sections, averaging});
  return reading;
}

} // namespace asperity
