// Where on a feature a trace is laid when the user leaves it open, and whether its direction fits.
#pragma once

#include "asperity/texture/feature_roughness.h"

#include <optional>
#include <string>
#include <vector>

namespace asperity {

/// As on the command line; what is left open is chosen.
struct TraceWish {
  std::string feature, along;
  std::optional<double> at_mm, from_mm, length_mm, cutoff_mm;
  Averaging averaging = Averaging::iso_21920;
};

/// Index of the feature of that name (small and capital letters count); nothing with `fault` set.
std::optional<std::size_t> find_feature(const std::vector<Feature> &features, const std::string &name,
                                        std::string &fault);

/// The middle of the feature is taken where no place is given; a length without a begin lies about the middle
/// (round a wall: from s = 0). Nothing with `fault` set where the direction does not fit the feature.
std::optional<TraceRequest> trace_request(const Feature &feature, const TraceWish &wish, std::string &fault);

} // namespace asperity
