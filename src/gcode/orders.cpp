// What one line asks for, code by code and group by group, once conflicts are sorted out.
#include "orders.h"

#include <cmath>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

constexpr double kWholeWithin = 1e-4; ///< of ten times a code [NISTIR 6556, 3.3.2.1]
constexpr double kHighestCode = 999.0;
constexpr std::size_t kMostMWords = 4; ///< NISTIR 6556, 3.4

/// The code in tenths, or kNoCode for a value that is no code.
Code code_from(double value) {
  const double tenths = std::round(value * 10.0);
  const bool is_code =
      value >= 0.0 && value <= kHighestCode && std::abs(value * 10.0 - tenths) <= kWholeWithin * 10.0;
  return is_code ? static_cast<Code>(tenths) : kNoCode;
}

void add_to_group(Group group, char letter, Code code, int column, Orders &orders, Complaints &complaints) {
  if (!orders.has(group)) {
    orders.set(group, code, column);
    return;
  }
  const Code first = orders.code(group);
  const std::string both = code_name(letter, first) + " and " + code_name(letter, code);
  if (group == Group::coolant && first != 90 && code != 90)
    complaints.departure(column, both + " on one line", "Put the second on a line of its own.");
  else
    complaints.error(column, both + " exclude each other on one line", "Keep one, or use two lines.");
}

void refuse(char letter, Code code, std::string_view meaning, int column, Complaints &complaints) {
  const bool is_compensation = letter == 'G' && code >= 410 && code <= 421;
  complaints.error(column, fmt::format("{} ({}) is not followed", code_name(letter, code), meaning),
                   is_compensation
                       ? "Post the program with the cutter's own path (compensation in the computer)."
                       : "Post the program with plain moves and cycles.");
}

/// False when the rest of the line must not be carried out.
bool sort_g(const CodeWord &word, Orders &orders, Complaints &complaints) {
  const Code code = code_from(word.value);
  const Group group = code == kNoCode ? Group::unknown : group_of_g(code);
  if (group != Group::unknown) {
    add_to_group(group, 'G', code, word.column, orders, complaints);
    return true;
  }
  if (code != kNoCode && is_idle_cancel(code)) {
    complaints.departure(word.column, code_name('G', code) + " has nothing to cancel here", "Take it out.");
    return true;
  }
  if (code != kNoCode && !refused_g(code).empty())
    refuse('G', code, refused_g(code), word.column, complaints);
  else
    complaints.error(word.column, fmt::format("G{:g} is not known", word.value), "Check the number after G.");
  const bool is_compensation = code >= 410 && code <= 421;
  return is_compensation;
}

bool sort_m(const CodeWord &word, Orders &orders, Complaints &complaints) {
  const Code code = code_from(word.value);
  const Group group = code == kNoCode ? Group::unknown : group_of_m(code);
  if (group != Group::unknown) {
    add_to_group(group, 'M', code, word.column, orders, complaints);
    return true;
  }
  if (code != kNoCode && !refused_m(code).empty())
    refuse('M', code, refused_m(code), word.column, complaints);
  else
    complaints.error(word.column, fmt::format("M{:g} is not known", word.value), "Check the number after M.");
  return false;
}

/// A modal arc goes on with centre words alone: a whole circle by silence.
bool continues_arc(const Block &block, Code modal_motion) {
  return is_arc(modal_motion) && (block.has('I') || block.has('J') || block.has('K') || block.has('R'));
}

bool settle_motion(const Block &block, Code modal_motion, Orders &orders, Complaints &complaints) {
  const Code single = orders.code(Group::non_modal);
  const bool axes_taken = single != kNoCode && takes_axis_words(single);
  const bool is_explicit = orders.has(Group::motion);
  orders.motion = is_explicit ? orders.code(Group::motion) : kNoCode;
  if (axes_taken && is_explicit && orders.motion != 800) {
    complaints.error(orders.column(Group::motion),
                     fmt::format("{} and {} both want the axis words", code_name('G', orders.motion),
                                 code_name('G', single)),
                     "Put them on two lines.");
    return false;
  }
  if (axes_taken || is_explicit)
    return true;
  if (block.has_axis_words() || continues_arc(block, modal_motion))
    orders.motion = modal_motion;
  if (block.has_axis_words() && modal_motion == kNoCode) {
    complaints.error(block.first_axis_column(), "axis words before any G0, G1, G2, G3 or cycle",
                     "Say how to move: put G0 or G1 on the line.");
    return false;
  }
  return true;
}

} // namespace

bool sort_orders(const Block &block, Code modal_motion, Orders &orders, Complaints &complaints) {
  orders.clear();
  bool can_go_on = true;
  for (const CodeWord &word : block.g_words)
    can_go_on = sort_g(word, orders, complaints) && can_go_on;
  for (const CodeWord &word : block.m_words)
    can_go_on = sort_m(word, orders, complaints) && can_go_on;
  if (block.m_words.size() > kMostMWords)
    complaints.error(block.m_words[kMostMWords].column, "more than four M words on a line", "Use two lines.");
  return can_go_on && settle_motion(block, modal_motion, orders, complaints);
}

} // namespace asperity::gcode
