// Where on a feature a trace is laid.
#include "trace_place.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

struct Stretch {
  double low_mm = 0, high_mm = 0;
  double middle_mm() const { return 0.5 * (low_mm + high_mm); }
};

/// What the feature spans along s, z, x or y.
Stretch span_of(const Feature &feature, char axis) {
  if (const auto *wall = std::get_if<WallFeature>(&feature))
    return axis == 's' ? Stretch{0.0, wall->outline.length_mm()} : Stretch{wall->z_bottom_mm, wall->z_top_mm};
  const auto *floor = std::get_if<FloorFeature>(&feature);
  const Outline &outline = floor != nullptr ? floor->outline : std::get<DomeFeature>(feature).outline;
  return axis == 'x' ? Stretch{outline.low().x, outline.high().x}
                     : Stretch{outline.low().y, outline.high().y};
}

std::string names_of(const std::vector<Feature> &features) {
  std::string names;
  for (const Feature &feature : features)
    names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", name_of(feature));
  return names;
}

} // namespace

std::optional<std::size_t> find_feature(const std::vector<Feature> &features, const std::string &name,
                                        std::string &fault) {
  const auto found =
      std::find_if(features.begin(), features.end(), [&](const Feature &f) { return name_of(f) == name; });
  if (found != features.end())
    return static_cast<std::size_t>(found - features.begin());
  fault = features.empty() ? std::string("the job has no features: there is nothing to trace.")
                           : fmt::format("the job has no feature \"{}\". Give --feature one of: {}.", name,
                                         names_of(features));
  return std::nullopt;
}

std::optional<TraceRequest> trace_request(const Feature &feature, const TraceWish &wish, std::string &fault) {
  const bool is_wall = std::holds_alternative<WallFeature>(feature);
  const bool fits = is_wall ? wish.along == "s" || wish.along == "z" : wish.along == "x" || wish.along == "y";
  if (!fits) {
    fault = fmt::format("\"{}\" is a {}: give --along {}.", name_of(feature),
                        is_wall                                         ? "wall"
                        : std::holds_alternative<FloorFeature>(feature) ? "floor"
                                                                        : "dome",
                        is_wall ? "s (round it) or z (up it)" : "x or y");
    return std::nullopt;
  }
  const char axis = wish.along.front();
  const char other = axis == 's' ? 'z' : axis == 'z' ? 's' : axis == 'x' ? 'y' : 'x';
  TraceRequest request;
  request.along = wish.along;
  request.at_mm = wish.at_mm.value_or(span_of(feature, other).middle_mm());
  request.length_mm = wish.length_mm;
  request.cutoff_mm = wish.cutoff_mm;
  request.averaging = wish.averaging;
  if (wish.length_mm)
    request.from_mm =
        wish.from_mm.value_or(axis == 's' ? 0.0 : span_of(feature, axis).middle_mm() - 0.5 * *wish.length_mm);
  return request;
}

} // namespace asperity
