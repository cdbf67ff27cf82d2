// Sizes, roughness and times of one or two jobs, in words.
#include "number_rows.h"

#include "asperity/report/number_text.h"

#include <algorithm>
#include <fmt/format.h>

namespace asperity {

namespace {

void put(std::vector<NumberRow> &rows, std::size_t seat, std::string what, std::string word,
         std::string value) {
  const auto same =
      std::find_if(rows.begin(), rows.end(), [&](const NumberRow &row) { return row.what == what; });
  if (same != rows.end()) {
    same->value[seat] = std::move(value);
    return;
  }
  NumberRow row{std::move(what), std::move(word), {}};
  row.value[seat] = std::move(value);
  rows.push_back(std::move(row));
}

void put_feature(std::vector<NumberRow> &rows, std::size_t seat, const Outcome &outcome, std::size_t i) {
  const std::string name = name_of(outcome.job.features[i]);
  for (const SizeMeasure &size : outcome.features[i].sizes) {
    if (size.verdict == Verdict::not_measured)
      continue;
    put(rows, seat, fmt::format("{}: {}", name, size.what), "", mm_text(size.mean_mm));
    if (size.roundness_mm > 0.0)
      put(rows, seat, name + ": roundness", "roundness", um_text(um_from_mm(size.roundness_mm)));
    if (size.taper_mm != 0.0)
      put(rows, seat, name + ": taper", "taper", um_text(um_from_mm(size.taper_mm)));
  }
  if (i >= outcome.roughness.size() || !outcome.roughness[i].measured)
    return;
  const FeatureRoughness &r = outcome.roughness[i];
  put(rows, seat, name + ": Ra, geometry alone", "Ra", roughness_text(r.ra_um));
  put(rows, seat, name + ": Ra with material", "Ra",
      fmt::format("{} to {} um", fixed_text(r.ra_band.low_um, 1), fixed_text(r.ra_band.high_um, 1)));
  put(rows, seat, name + ": Rz, geometry alone", "Rz", roughness_text(r.rz_um));
}

} // namespace

std::string roughness_text(double um) { return fixed_text(um, um < 1.0 ? 3 : 2) + " um"; }

std::vector<NumberRow> number_rows(const Outcome *a, const Outcome *b) {
  std::vector<NumberRow> rows;
  const std::array<const Outcome *, 2> both{a, b};
  for (std::size_t seat = 0; seat < 2; ++seat)
    if (both[seat])
      put(rows, seat, "time on the machine", "", duration_text(both[seat]->path.duration_s));
  for (std::size_t seat = 0; seat < 2; ++seat)
    for (std::size_t i = 0; both[seat] && i < both[seat]->features.size(); ++i)
      put_feature(rows, seat, *both[seat], i);
  return rows;
}

} // namespace asperity
