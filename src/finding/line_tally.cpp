// Counts which program lines a finding concerns and keeps the most concerned few.
#include "line_tally.h"

#include <algorithm>

namespace asperity {

void LineTally::add_line(std::uint32_t line, double weight) {
  if (line > 0)
    weight_[line] += weight;
}

void LineTally::add_owner(const TimedPath &path, std::uint32_t owner, double weight) {
  if (owner < path.pieces.size())
    add_line(path.pieces[owner].line, weight);
}

void LineTally::write_to(Finding &finding) const {
  std::vector<std::pair<double, std::uint32_t>> ranked;
  for (const auto &[line, weight] : weight_)
    ranked.emplace_back(-weight, line);
  std::sort(ranked.begin(), ranked.end());
  ranked.resize(std::min(ranked.size(), kMost));
  finding.lines.clear();
  for (const auto &[weight, line] : ranked)
    finding.lines.push_back(line);
  std::sort(finding.lines.begin(), finding.lines.end());
  finding.line_count = weight_.size();
}

} // namespace asperity
