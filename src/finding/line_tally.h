// Counts which program lines a finding concerns and keeps the most concerned few.
#pragma once

#include "asperity/finding/finding.h"
#include "asperity/motion/timed_path.h"

#include <map>

namespace asperity {

class LineTally {
public:
  static constexpr std::size_t kMost = 6;

  void add_line(std::uint32_t line, double weight = 1.0);
  /// Line of TimedPath::pieces[owner]; an owner outside the path counts for nothing.
  void add_owner(const TimedPath &path, std::uint32_t owner, double weight = 1.0);
  void write_to(Finding &finding) const;
  bool empty() const { return weight_.empty(); }

private:
  std::map<std::uint32_t, double> weight_;
};

} // namespace asperity
