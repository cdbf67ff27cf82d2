// What every kind of feature has in common.
#include "asperity/job/feature.h"

namespace asperity {

const std::string &name_of(const Feature &feature) {
  return std::visit([](const auto &each) -> const std::string & { return each.name; }, feature);
}

const FinishWanted &finish_of(const Feature &feature) {
  return std::visit([](const auto &each) -> const FinishWanted & { return each.finish; }, feature);
}

const Outline &outline_of(const Feature &feature) {
  return std::visit([](const auto &each) -> const Outline & { return each.outline; }, feature);
}

} // namespace asperity
