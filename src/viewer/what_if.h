// Values of a job that can be tried in place.
#pragma once

#include "app_state.h"

#include "asperity/job/job_change.h"

namespace asperity {

enum class KeyKind { number, toggle, word };

struct WhatIfKey {
  std::string id; ///< JobChange::key: "cutter.1.runout_mm"
  std::string group, label, unit, meaning;
  KeyKind kind = KeyKind::number;
  std::string own; ///< as the job has it, TOML text
  double low = 0, high = 0;
  std::vector<std::string> words; ///< what a word may be
};

/// In the order in which they are shown, by group. What is being tried may call for more: a ramp has an
/// angle.
std::vector<WhatIfKey> what_if_keys(const Job &job, const Changes &changes = {});

/// The value as the key allows it, TOML text: numbers brought into their range. Empty if it is none.
std::string allowed(const WhatIfKey &key, const std::string &value);

/// TOML text as shown: without quotes.
std::string shown(const std::string &value);

std::vector<JobChange> job_changes(const Changes &changes);

} // namespace asperity
