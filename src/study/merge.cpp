// Parts of one study put together.
#include "asperity/study/merge.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <bit>
#include <cstdint>
#include <map>
#include <unistd.h>

namespace asperity {

namespace fs = std::filesystem;

namespace {

bool same_bits(double a, double b) {
  return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b) || (a != a && b != b);
}

bool is_same_number(const KeyNumber &a, const KeyNumber &b) {
  return a.id == b.id && same_bits(a.value, b.value) && same_bits(a.wanted, b.wanted) && a.better == b.better;
}

bool is_same_check(const TrialCheck &a, const TrialCheck &b) {
  return a.feature == b.feature && a.what == b.what && a.wanted == b.wanted && a.met == b.met &&
         same_bits(a.predicted, b.predicted);
}

struct Gathered {
  StudyHead head;
  fs::path first; ///< the part that the head is from
  std::map<std::size_t, Trial> trials;
  std::map<std::size_t, fs::path> source;
};

std::string add_trial_to(Gathered &all, Trial &&trial, const fs::path &part, Merged &merged) {
  const std::size_t combination = trial.combination;
  const auto there = all.trials.find(combination);
  if (there != all.trials.end() && there->second.status != TrialStatus::too_large &&
      trial.status != TrialStatus::too_large) {
    ++merged.repeated;
    if (is_same_result(there->second, trial))
      return {};
    return fmt::format("combination {} has one result in {} and another in {}: find out which file is right "
                       "and leave the other out.",
                       combination + 1, all.source[combination].string(), part.string());
  }
  if (there == all.trials.end() || there->second.status == TrialStatus::too_large) {
    all.source[combination] = part;
    all.trials.insert_or_assign(combination, std::move(trial));
  }
  return {};
}

std::string add_part(Gathered &all, const fs::path &part, Merged &merged) {
  std::string fault;
  const auto file = StudyFile::open(part, StudyFile::Purpose::to_read, fault);
  if (!file)
    return fault;
  StudyResults results = file->read(fault);
  if (!fault.empty())
    return fault;
  if (all.first.empty()) {
    all.first = part;
    all.head = results.head;
  }
  const auto changed = differences(all.head.identity, results.head.identity);
  if (!changed.empty())
    return fmt::format("{} and {} are different studies; not the same: {}. Merge parts of one study only.",
                       all.first.string(), part.string(), fmt::join(changed, ", "));
  for (Trial &trial : results.trials)
    if (fault = add_trial_to(all, std::move(trial), part, merged); !fault.empty())
      return fault;
  return {};
}

std::string write_new(const fs::path &path, const Gathered &all) {
  std::string fault;
  const auto file = StudyFile::open(path, StudyFile::Purpose::to_write, fault);
  if (!file)
    return fault;
  fault = file->begin(all.head);
  std::vector<Trial> trials;
  for (const auto &[combination, trial] : all.trials)
    trials.push_back(trial);
  return fault.empty() ? file->add_all(trials) : fault;
}

} // namespace

bool is_same_result(const Trial &a, const Trial &b) {
  return a.status == b.status && a.why == b.why && a.dangers == b.dangers && a.flaws == b.flaws &&
         std::equal(a.numbers.begin(), a.numbers.end(), b.numbers.begin(), b.numbers.end(), is_same_number) &&
         std::equal(a.checks.begin(), a.checks.end(), b.checks.begin(), b.checks.end(), is_same_check);
}

std::string merge_parts(const fs::path &out, std::span<const fs::path> parts, Merged &merged) {
  std::error_code ignored;
  if (fs::exists(out, ignored))
    return fmt::format("{} is there already: give a new name, or remove it first.", out.string());
  Gathered all;
  for (const fs::path &part : parts)
    if (std::string fault = add_part(all, part, merged); !fault.empty())
      return fault;
  // Under a name of its own until it is whole; a file of that name is left from a stopped merge.
  const fs::path unfinished = out.string() + fmt::format(".{}.part", ::getpid());
  fs::remove(unfinished, ignored);
  std::string fault = write_new(unfinished, all);
  std::error_code error;
  if (fault.empty())
    fs::rename(unfinished, out, error);
  if (error)
    fault = fmt::format("cannot write {}: {}.", out.string(), error.message());
  if (!fault.empty())
    fs::remove(unfinished, ignored);
  merged.combinations = all.trials.size();
  merged.missing = all.head.grid.size() - all.trials.size();
  return fault;
}

} // namespace asperity
