// What the reader has to say about the line at hand, as errors, warnings, or departures from the standard.
#include "complaints.h"

#include <utility>

namespace asperity::gcode {

void Complaints::error(int column, std::string message, std::string remedy) {
  line_failed_ = true;
  problems_.error(file_, line_, column, std::move(message), std::move(remedy));
}

void Complaints::warning(int column, std::string message, std::string remedy) {
  problems_.warning(file_, line_, column, std::move(message), std::move(remedy));
}

void Complaints::departure(int column, std::string message, std::string remedy) {
  if (strict_)
    error(column, std::move(message), std::move(remedy));
  else
    warning(column, std::move(message), std::move(remedy));
}

bool Complaints::first_time(Once what) {
  const auto at = static_cast<std::size_t>(what);
  const bool first = !said_[at];
  said_[at] = true;
  return first;
}

void Complaints::warning_once(Once what, int column, std::string message, std::string remedy) {
  if (first_time(what))
    warning(column, std::move(message), std::move(remedy));
}

void Complaints::departure_once(Once what, int column, std::string message, std::string remedy) {
  if (strict_ || first_time(what))
    departure(column, std::move(message), std::move(remedy));
}

void Complaints::error_once(Once what, int column, std::string message, std::string remedy) {
  if (first_time(what))
    error(column, std::move(message), std::move(remedy));
}

} // namespace asperity::gcode
