// The figures of a whole cut that a summary quotes.
#include "cut_figures.h"

#include <algorithm>
#include <cmath>

namespace asperity {

std::vector<ToolTime> time_per_tool(const TimedPath &path) {
  std::vector<ToolTime> times;
  for (const PathPiece &piece : path.pieces) {
    auto found =
        std::find_if(times.begin(), times.end(), [&](const ToolTime &t) { return t.tool == piece.tool; });
    if (found == times.end())
      found = times.insert(times.end(), ToolTime{.tool = piece.tool});
    found->total_s += piece.duration_s;
    if (piece.kind == MoveKind::feed)
      found->cutting_s += piece.duration_s;
  }
  return times;
}

namespace {

Peak peak_at(double value, const CutSample &sample, const TimedPath &path) {
  Peak peak{.value = value, .time_s = sample.time_s, .place_mm = sample.position_mm};
  if (sample.piece < path.pieces.size()) {
    peak.line = path.pieces[sample.piece].line;
    peak.tool = path.pieces[sample.piece].tool;
  }
  return peak;
}

void keep_largest(std::optional<Peak> &peak, double value, const CutSample &sample, const TimedPath &path) {
  if (std::isfinite(value) && (!peak || std::abs(value) > std::abs(peak->value)))
    peak = peak_at(value, sample, path);
}

} // namespace

CutPeaks cut_peaks(const CutRecord &cut, const TimedPath &path) {
  CutPeaks peaks;
  for (std::size_t i = 0; i < cut.samples.size(); ++i) {
    const CutSample &sample = cut.samples[i];
    if (!sample.in_contact)
      continue;
    keep_largest(peaks.force_N, static_cast<double>(sample.peak_force_N), sample, path);
    keep_largest(peaks.power_W, static_cast<double>(sample.power_W), sample, path);
    keep_largest(peaks.chip_temperature_C, static_cast<double>(sample.chip_temperature_C), sample, path);
    keep_largest(peaks.tip_bend_mm, static_cast<double>(sample.tip_bend_mm), sample, path);
    if (i + 1 < cut.samples.size())
      peaks.in_contact_s += std::max(0.0, cut.samples[i + 1].time_s - sample.time_s);
  }
  return peaks;
}

} // namespace asperity
