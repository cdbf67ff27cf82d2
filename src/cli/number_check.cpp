// A check of numbers on the command line.
#include "number_check.h"

#include <fmt/format.h>

#include <charconv>
#include <string>

namespace asperity {

CLI::Validator number_between(double low, double high) {
  return {[low, high](const std::string &text) {
            double value = 0.0;
            const char *end = text.data() + text.size();
            const auto [at, error] = std::from_chars(text.data(), end, value);
            const bool is_good = error == std::errc() && at == end && value >= low && value <= high;
            return is_good ? std::string()
                           : fmt::format("\"{}\" is no number from {:g} to {:g}", text, low, high);
          },
          fmt::format("{:g} to {:g}", low, high)};
}

} // namespace asperity
