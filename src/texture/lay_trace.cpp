// Form off, cutoff chosen, filtered and read.
#include "asperity/texture/feature_roughness.h"

#include "trace_line.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Least-squares straight line off an open profile, the mean off a closed one; worked out over what is cut.
std::vector<double> without_form(const TraceLine &line) {
  double count = 0, sum_x = 0, sum_z = 0;
  const auto over_cut = [&line](const auto &visit) {
    for (std::size_t i = 0; i < line.height_mm.size(); ++i)
      if (line.owner[i] != kNobody)
        visit(static_cast<double>(i), line.height_mm[i]);
  };
  over_cut([&](double x, double z) { count += 1, sum_x += x, sum_z += z; });
  const double middle = count > 0 ? sum_x / count : 0.0, mean = count > 0 ? sum_z / count : 0.0;
  double slope = 0, square = 0;
  if (!line.closed)
    over_cut([&](double x, double z) {
      slope += (x - middle) * (z - mean), square += (x - middle) * (x - middle);
    });
  slope = square > 0 ? slope / square : 0.0;
  std::vector<double> level(line.height_mm.size());
  for (std::size_t i = 0; i < level.size(); ++i)
    level[i] = line.height_mm[i] - mean - slope * (static_cast<double>(i) - middle);
  return level;
}

/// Heights of ridges above the higher of the hollows beside them: the greatest.
double greatest_cusp_mm(const std::vector<double> &heights) {
  double greatest = 0, hollow = HUGE_VAL, peak = -HUGE_VAL;
  bool rising = false;
  for (std::size_t i = 1; i < heights.size(); ++i) {
    const double before = heights[i - 1], now = heights[i];
    if (now > before && !rising) { // a hollow behind: the ridge before it ends here
      if (std::isfinite(hollow))
        greatest = std::max(greatest, peak - std::max(hollow, before));
      hollow = before;
      rising = true;
    } else if (now < before && rising) {
      peak = before;
      rising = false;
    }
  }
  return greatest;
}

MeasuringSettings longer(const MeasuringSettings &a, const MeasuringSettings &b) {
  return a.cutoff_mm >= b.cutoff_mm ? a : b;
}

/// An asked-for cutoff takes the rest of its row from the next longer one in the table.
MeasuringSettings settings_for(double cutoff_mm) {
  MeasuringSettings settings = settings_of(SettingClass::sc5);
  for (const SettingClass c : {SettingClass::sc4, SettingClass::sc3, SettingClass::sc2, SettingClass::sc1})
    if (settings_of(c).cutoff_mm >= cutoff_mm)
      settings = settings_of(c);
  constexpr double kSections = 5;
  settings.cutoff_mm = cutoff_mm;
  settings.evaluation_mm = kSections * cutoff_mm;
  return settings;
}

/// What a first look at 0.8 mm asks for. Below the table's least Ra it asks for nothing else.
MeasuringSettings first_settings(double ra_um, double pitch_mm) {
  constexpr double kLeastRa_um = 0.006; // ISO 4288:1996, lower end of the first row
  MeasuringSettings settings = ra_um > kLeastRa_um ? settings_by_ra(ra_um) : settings_of(SettingClass::sc3);
  return pitch_mm > 0 ? longer(settings, settings_by_rsm(pitch_mm)) : settings;
}

/// The cutoff is the longer of those that Ra, read at 0.8 mm, and the marks' pitch ask for, and grows until
/// the Ra it shows asks for no longer one. [ISO 4288:1996]
StylusReading read_by_tables(const Trace &trace, double pitch_mm, Averaging averaging) {
  const ProfileEnds ends = trace.closed ? ProfileEnds::closed : ProfileEnds::open;
  const auto read = [&](const MeasuringSettings &settings) {
    return read_profile(trace.profile_mm, trace.spacing_mm, ends, settings, averaging);
  };
  StylusReading reading = read(settings_of(SettingClass::sc3));
  MeasuringSettings settings = first_settings(um_from_mm(reading.parameters.ra_mm), pitch_mm);
  while (true) {
    reading = read(settings);
    const MeasuringSettings asked = settings_by_ra(um_from_mm(reading.parameters.ra_mm));
    if (asked.cutoff_mm <= settings.cutoff_mm)
      return reading;
    settings = asked;
  }
}

void split_profile(Trace &trace) {
  const ProfileEnds ends = trace.closed ? ProfileEnds::closed : ProfileEnds::open;
  const Bandwidth band = trace.reading.settings.bandwidth();
  trace.roughness_mm = roughness_profile(trace.profile_mm, trace.spacing_mm, band, ends);
  std::vector<double> primary = trace.profile_mm;
  if (band.short_mm >= trace.spacing_mm)
    primary = GaussianFilter(band.short_mm, trace.spacing_mm).mean_line(primary, ends);
  for (std::size_t i = 0; i < primary.size(); ++i)
    trace.waviness_mm.push_back(primary[i] - trace.roughness_mm[i]);
}

} // namespace

Trace lay_trace(const Feature &feature, const Chart &chart, const TextureSource &source,
                const TraceRequest &request, int threads, std::string &why, const Progress &progress) {
  why.clear();
  const auto *wall = std::get_if<WallFeature>(&feature);
  const TraceLine line =
      wall != nullptr
          ? wall_line(*wall, std::get<WallChart>(chart), source, request, threads, progress, why)
          : floor_line(feature, std::get<FloorChart>(chart), source, request, threads, progress, why);
  Trace trace;
  trace.along = request.along;
  trace.at_mm = request.at_mm;
  if (line.height_mm.empty())
    return trace;
  trace.begin_mm = line.begin_mm;
  trace.spacing_mm = line.spacing_mm;
  trace.closed = line.closed;
  trace.owner = line.owner;
  trace.profile_mm = without_form(line);
  trace.cusp_mm = greatest_cusp_mm(trace.profile_mm);
  const ProfileEnds ends = trace.closed ? ProfileEnds::closed : ProfileEnds::open;
  trace.reading = request.cutoff_mm ? read_profile(trace.profile_mm, trace.spacing_mm, ends,
                                                   settings_for(*request.cutoff_mm), request.averaging)
                                    : read_by_tables(trace, line.pitch_mm, request.averaging);
  split_profile(trace);
  return trace;
}

} // namespace asperity
