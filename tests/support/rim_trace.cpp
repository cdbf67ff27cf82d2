// A hand-made trace on the line sheave's rim.
#include "support/rim_trace.h"

#include "asperity/base/units.h"
#include "support/sheave_outcome.h"

#include <cmath>

namespace asperity::test_support {

namespace {

/// The spindle turns once while the cutter passes one mark of the wall; the axis runs on a circle of
/// rim radius plus cutter radius.
void set_motion(PathPiece &piece, double cutter_radius_mm) {
  constexpr double kTurns_per_s = 300.0;
  const double axis_per_wall = (0.5 * kRimDiameter_mm + cutter_radius_mm) / (0.5 * kRimDiameter_mm);
  piece.spindle_rpm = 60.0 * kTurns_per_s;
  piece.feed_mm_per_s = kMark_mm * axis_per_wall * kTurns_per_s;
}

} // namespace

RimTrace rim_trace(double length_mm) {
  RimTrace rim{rim_outcome(1.0), {}, {}};
  set_motion(rim.outcome.path.pieces[1], 3.0);
  Trace &trace = rim.trace;
  trace.along = rim.request.along = "s";
  trace.at_mm = rim.request.at_mm = 7.0;
  trace.spacing_mm = 0.0025;
  trace.begin_mm = 10.0 + 0.5 * trace.spacing_mm;
  const auto points = static_cast<std::size_t>(std::lround(length_mm / trace.spacing_mm));
  for (std::size_t i = 0; i < points; ++i) {
    const double x = trace.spacing_mm * static_cast<double>(i);
    trace.profile_mm.push_back(mm_from_um(kMarkHeight_um) * std::cos(2.0 * kPi * x / kMark_mm));
    trace.owner.push_back(x < kUncut_mm ? kNobody : 1);
  }
  const MeasuringSettings settings = settings_of(SettingClass::sc3);
  trace.reading = read_profile(trace.profile_mm, trace.spacing_mm, ProfileEnds::open, settings);
  trace.roughness_mm =
      roughness_profile(trace.profile_mm, trace.spacing_mm, settings.bandwidth(), ProfileEnds::open);
  const std::vector<double> primary =
      GaussianFilter(settings.short_mm, trace.spacing_mm).mean_line(trace.profile_mm, ProfileEnds::open);
  for (std::size_t i = 0; i < points; ++i)
    trace.waviness_mm.push_back(primary[i] - trace.roughness_mm[i]);
  trace.cusp_mm = mm_from_um(2.0 * kMarkHeight_um);
  return rim;
}

} // namespace asperity::test_support
