// Values of a job that can be tried without a new program.
#pragma once

#include "app_state.h"

#include <functional>

namespace asperity {

struct WhatIfKey {
  std::string id;    ///< "cutter.0.runout_mm"
  std::string table; ///< in the job file: "cutter"
  int index = -1;    ///< which of a list of tables, from 0; -1 = a single table
  std::string key;   ///< "runout_mm"
  std::string group, label, unit, meaning;
  double low = 0, high = 0, step = 0;
  bool is_switch = false;
  std::function<double &(Job &)> number; ///< empty for a switch
  std::function<bool &(Job &)> on;       ///< switches only

  double value_of(const Job &job) const;
  void set(Job &job, double value) const;
};

/// In the order in which they are shown, by group.
std::vector<WhatIfKey> what_if_keys(const Job &job);

Job changed(Job job, const Changes &changes);

} // namespace asperity
