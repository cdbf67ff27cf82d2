// Runs every finder in order and ranks what they found.
#include "asperity/finding/find_all.h"

#include "found.h"
#include "wall_reference.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <array>
#include <optional>
#include <tuple>

namespace asperity {

namespace {

/// Dangers first, then the largest excess, then by feature and place.
bool ranks_before(const Found &a, const Found &b) {
  if (a.finding.weight != b.finding.weight)
    return a.finding.weight > b.finding.weight;
  if (a.excess != b.excess)
    return a.excess > b.excess;
  const auto place = [](const Finding &f) {
    return std::make_tuple(f.feature, f.place_mm.x, f.place_mm.y, f.place_mm.z);
  };
  return place(a.finding) < place(b.finding);
}

} // namespace

std::vector<Finding> find_all(const Evidence &evidence) {
  constexpr std::array kFinders{
      find_keep_outs_touched, find_rapids_in_stock, find_spoilboard_cuts, find_break_risk, find_slip_risk,
      find_cutter_overload,   find_base_lips,       find_gouges,          find_uncut_skin, find_witness_lines,
      find_level_steps,       find_scallops,        find_overheating,     find_rubbing};
  std::optional<WallReferences> made;
  Evidence shared = evidence;
  if (!shared.references)
    shared.references = &made.emplace(evidence.charts, evidence.threads);
  std::array<FoundList, kFinders.size()> found_by;
  for_each_band(kFinders.size(), 1, evidence.threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      found_by[i] = kFinders[i](shared);
  });
  FoundList all;
  for (FoundList &found : found_by)
    all.insert(all.end(), std::make_move_iterator(found.begin()), std::make_move_iterator(found.end()));
  std::stable_sort(all.begin(), all.end(), ranks_before);
  std::vector<Finding> findings;
  for (Found &found : all)
    findings.push_back(std::move(found.finding));
  return findings;
}

} // namespace asperity
