// A trace together with what it was laid on: what every output of it says.
#pragma once

#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"
#include "asperity/texture/feature_roughness.h"

#include <cstdint>
#include <string>
#include <vector>

namespace asperity {

struct TraceView {
  const Job &job;
  const Feature &feature;
  const TimedPath &path;
  const TraceRequest &request; ///< that the trace was laid by
  const Trace &trace;

  std::size_t points() const { return trace.profile_mm.size(); }
  /// Along the trace [mm]; goes on past the outline's end where a trace runs over it.
  double place_mm(std::size_t point) const {
    return trace.begin_mm + trace.spacing_mm * static_cast<double>(point);
  }
  double length_mm() const { return trace.spacing_mm * static_cast<double>(points()); }
  /// Outer edges of the first and the last point.
  double low_mm() const { return trace.begin_mm - 0.5 * trace.spacing_mm; }
  double high_mm() const { return low_mm() + length_mm(); }
  bool is_cut(std::size_t point) const { return line(point) != 0; }
  /// Program line that made the point; 0 = not cut.
  std::uint32_t line(std::size_t point) const;
};

/// Where the sections begin and the last one ends [mm along the trace]; the whole trace when it is shorter
/// than one.
std::vector<double> section_bounds_mm(const TraceView &view);

/// Share of the trace's points that a program line made, the largest first; line 0 = not cut.
struct LineShare {
  std::uint32_t line = 0;
  double share = 0;
};
std::vector<LineShare> line_shares(const TraceView &view);
/// "line 13 (64%), line 17 (30%)"; where they are more than `most`, runs of lines close together:
/// "391 of lines 2613 to 3060 (97%), line 12 (3%) and 2 more". What is not cut is left out.
std::string line_share_text(const TraceView &view, std::size_t most);

/// Rsk and Rku mean nothing where no roughness is left.
inline bool has_shape(const TraceView &view) {
  constexpr double kLeast_mm = 1e-7; // a tenth of a nanometre: rounding of the stored heights
  return view.trace.reading.parameters.rq_mm > kLeast_mm;
}

/// Distance of the tooth marks along the trace at a point, by the feed a turn (a tooth when runout is off);
/// across the feed or without a cutter RSm. 0 = unknown.
double mark_distance_mm(const TraceView &view, std::size_t point);

/// "along s (round the wall) at z = 7.000 mm, all round, 194.779 mm".
std::string trace_place_text(const TraceView &view);
/// "the longer of what ISO 4288:1996 gives ..." or "as asked".
std::string cutoff_choice_text(const TraceView &view);
/// "5 sections of 0.8 mm = 4 mm".
std::string evaluation_text(const TraceView &view);
/// What to say beside the numbers: too short, too coarse, partly not cut, cut down.
std::vector<std::string> trace_warnings(const TraceView &view);

/// The geometric Ra with what the material adds by itself.
RaBand trace_ra_band(const TraceView &view);
/// The feature wants no Ra, or the band's upper end does not exceed it.
bool is_ra_met(const TraceView &view);

/// Three digits: "0.0482 um", "1.23 um", "14.6 um".
std::string fine_um_text(double um);

} // namespace asperity
