// A check of numbers on the command line that "nan" and "inf" do not pass.
#pragma once

#include <CLI/CLI.hpp>

namespace asperity {

CLI::Validator number_between(double low, double high);

} // namespace asperity
