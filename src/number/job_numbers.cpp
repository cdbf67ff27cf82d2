// Numbers of the whole job: time, how much is met and found, forces, margins, heat.
#include "job_numbers.h"

#include "margins.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

double count_of_weight(const Outcome &outcome, Weight weight) {
  return static_cast<double>(std::count_if(outcome.findings.begin(), outcome.findings.end(),
                                           [&](const Finding &f) { return f.weight == weight; }));
}

/// Largest size of one figure over all moments in contact; nothing without contact.
template <typename Figure> std::optional<double> peak(const CutRecord &cut, Figure figure) {
  std::optional<double> most;
  for (const CutSample &sample : cut.samples)
    if (sample.in_contact) {
      const double value = std::abs(static_cast<double>(figure(sample)));
      if (std::isfinite(value))
        most = std::max(most.value_or(value), value);
    }
  return most;
}

void put_counts(std::vector<KeyNumber> &numbers, const Outcome &outcome) {
  const auto missed = std::count_if(outcome.checks.begin(), outcome.checks.end(),
                                    [](const WantedCheck &check) { return !check.met; });
  if (!outcome.checks.empty())
    put(numbers,
        {"checks_missed", "", "wanted, but not met", "", static_cast<double>(missed), Better::lower, 0});
  put(numbers,
      {"dangers", "", "dangers found", "", count_of_weight(outcome, Weight::danger), Better::lower, 0});
  put(numbers, {"flaws", "", "flaws found", "", count_of_weight(outcome, Weight::flaw), Better::lower, 0});
  put(numbers, {"notes", "", "notes found", "", count_of_weight(outcome, Weight::note), Better::neither, 0});
}

void put_peaks(std::vector<KeyNumber> &numbers, const CutRecord &cut) {
  if (const auto force = peak(cut, [](const CutSample &s) { return s.peak_force_N; }))
    put(numbers, {"peak_side_force_N", "", "peak side force", "N", *force, Better::lower, 0});
  if (const auto power = peak(cut, [](const CutSample &s) { return s.power_W; }))
    put(numbers, {"peak_power_W", "", "peak cutting power", "W", *power, Better::lower, 0});
  if (const auto bend = peak(cut, [](const CutSample &s) { return s.tip_bend_mm; }))
    put(numbers, {"peak_tip_bend_um", "", "furthest bending of the cutter's tip", "um", um_from_mm(*bend),
                  Better::lower, 0});
  if (const auto heat = peak(cut, [](const CutSample &s) { return s.chip_temperature_C; }))
    put(numbers, {"peak_chip_temperature_C", "", "hottest chip", "degC", *heat, Better::lower, 0});
}

} // namespace

void put(std::vector<KeyNumber> &numbers, KeyNumber number) {
  if (std::isfinite(number.value))
    numbers.push_back(std::move(number));
}

void put_job_numbers(std::vector<KeyNumber> &numbers, const Outcome &outcome) {
  put(numbers, {"time_s", "", "time on the machine", "s", outcome.path.duration_s, Better::lower, 0});
  put_counts(numbers, outcome);
  put_peaks(numbers, outcome.cut);
  if (const auto margin = break_margin(outcome.job, outcome.cut))
    put(numbers,
        {"break_margin", "", "margin of the blank against breaking", "", *margin, Better::higher, 0});
  if (const auto margin = slip_margin(outcome.job, outcome.cut))
    put(numbers,
        {"slip_margin", "", "margin of the hold-down against slipping", "", *margin, Better::higher, 0});
}

} // namespace asperity
