// Numbers for JSON: what is not finite becomes null.
#pragma once

#include "asperity/base/vec.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <vector>

namespace asperity {

inline nlohmann::json number(double value) {
  return std::isfinite(value) ? nlohmann::json(value) : nlohmann::json();
}

/// Rounded to whole parts of one unit (1000: three decimals), which keeps long profiles short.
inline nlohmann::json numbers(const std::vector<double> &values, double parts) {
  nlohmann::json out = nlohmann::json::array();
  for (double value : values)
    out.push_back(number(std::round(value * parts) / parts));
  return out;
}

inline nlohmann::json place(Vec3 p) { return nlohmann::json::array({number(p.x), number(p.y), number(p.z)}); }

} // namespace asperity
