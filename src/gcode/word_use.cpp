// Words that nothing on their line uses: an error in the standard, and most often a forgotten G code.
#include "orders.h"

#include <array>
#include <fmt/format.h>
#include <string_view>

namespace asperity::gcode {
namespace {

bool uses_centre_offset(const Orders &orders) { return is_arc(orders.motion) || orders.motion == 870; }

bool uses_radius(const Orders &orders) { return is_arc(orders.motion) || is_cycle(orders.motion); }

bool uses_p(const Orders &orders) {
  const Code single = orders.code(Group::non_modal);
  return single == 40 || single == 100 || orders.code(Group::path_control) == 640 ||
         is_cycle(orders.motion) || is_arc(orders.motion);
}

bool is_used(char letter, const Orders &orders) {
  switch (letter) {
  case 'H':
    return orders.code(Group::length_offset) == 430;
  case 'I':
  case 'J':
  case 'K':
    return uses_centre_offset(orders);
  case 'L':
    return orders.code(Group::non_modal) == 100 || is_cycle(orders.motion);
  case 'P':
    return uses_p(orders);
  case 'Q':
    return orders.code(Group::path_control) == 640 || orders.motion == 830;
  case 'R':
    return uses_radius(orders);
  default:
    return false;
  }
}

std::string_view users_of(char letter) {
  switch (letter) {
  case 'H':
    return "G43 uses H.";
  case 'L':
    return "G10 and the cycles G81 to G89 use L.";
  case 'P':
    return "G4, G10, G64 and the cycles use P.";
  case 'Q':
    return "G83 and G64 use Q.";
  case 'R':
    return "G2, G3 and the cycles G81 to G89 use R.";
  default:
    return "G2, G3 and G87 use I, J and K.";
  }
}

} // namespace

void check_word_use(const Block &block, const Orders &orders, Complaints &complaints) {
  for (const char letter : {'A', 'B', 'C'}) {
    if (block.has(letter))
      complaints.error(block.column(letter),
                       fmt::format("{} is a rotary axis; the machine has X, Y and Z", letter),
                       "Take the word out, or post for three axes.");
  }
  for (const char letter : {'H', 'I', 'J', 'K', 'L', 'P', 'Q', 'R'}) {
    if (block.has(letter) && !is_used(letter, orders))
      complaints.error(block.column(letter), fmt::format("nothing on the line uses the {} word", letter),
                       std::string(users_of(letter)));
  }
}

} // namespace asperity::gcode
