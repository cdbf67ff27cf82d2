// What a feature is asked to be, in words, and what is asked but was never predicted.
#include "wanted.h"

#include "asperity/report/number_text.h"
#include "asperity/report/summary_text.h"

#include <algorithm>
#include <array>

namespace asperity {

std::string_view kind_text(const Feature &feature) {
  constexpr std::array<std::string_view, 3> kKinds = {"wall", "floor", "dome"};
  static_assert(std::variant_size_v<Feature> == kKinds.size());
  return kKinds[feature.index()];
}

std::string_view weight_text(Weight weight) {
  switch (weight) {
  case Weight::note:
    return "note";
  case Weight::flaw:
    return "flaw";
  case Weight::danger:
    return "danger";
  }
  return "note";
}

std::string_view verdict_text(Verdict verdict) {
  switch (verdict) {
  case Verdict::not_asked:
    return "not asked";
  case Verdict::met:
    return "met";
  case Verdict::too_small:
    return "too small";
  case Verdict::too_large:
    return "too large";
  case Verdict::not_measured:
    return "not measured";
  }
  return "not measured";
}

namespace {

/// Checks of a feature are recognised by the first word of what they check: "Ra", "lip", "witness".
bool is_checked(const Outcome &outcome, std::string_view feature, std::string_view first_word) {
  return std::any_of(outcome.checks.begin(), outcome.checks.end(), [&](const WantedCheck &check) {
    return check.feature == feature &&
           std::string_view(check.what).substr(0, first_word.size()) == first_word;
  });
}

} // namespace

std::vector<Unanswered> unanswered_wishes(const Outcome &outcome) {
  std::vector<Unanswered> open;
  for (const Feature &feature : outcome.job.features) {
    const std::string &name = name_of(feature);
    const FinishWanted &finish = finish_of(feature);
    if (finish.ra_um && !is_checked(outcome, name, "Ra"))
      open.push_back({name, "Ra", "at most " + um_text(*finish.ra_um)});
    if (finish.lip_mm && !is_checked(outcome, name, "lip"))
      open.push_back({name, "lip height", "at most " + mm_text(*finish.lip_mm)});
    if (finish.witness_depth_um && !is_checked(outcome, name, "witness"))
      open.push_back({name, "witness depth", "at most " + um_text(*finish.witness_depth_um)});
  }
  return open;
}

std::size_t missed_checks(const Outcome &outcome) {
  return static_cast<std::size_t>(std::count_if(outcome.checks.begin(), outcome.checks.end(),
                                                [](const WantedCheck &c) { return !c.met; }));
}

std::size_t count_of(const Outcome &outcome, Weight weight) {
  return static_cast<std::size_t>(std::count_if(outcome.findings.begin(), outcome.findings.end(),
                                                [weight](const Finding &f) { return f.weight == weight; }));
}

bool is_all_well(const Outcome &outcome) {
  return outcome.status == Status::done && outcome.all_met() && count_of(outcome, Weight::danger) == 0;
}

} // namespace asperity
