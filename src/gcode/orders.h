// What one line asks for, code by code and group by group, once conflicts are sorted out.
#pragma once

#include "block.h"
#include "codes.h"
#include "complaints.h"

#include <array>

namespace asperity::gcode {

/// The code of each group on a line, with its column.
class Orders {
public:
  void clear() { code_.fill(kNoCode); }

  bool has(Group group) const { return code(group) != kNoCode; }
  Code code(Group group) const { return code_[static_cast<std::size_t>(group)]; }
  /// Column of the code's word; meaningful with has().
  int column(Group group) const { return column_[static_cast<std::size_t>(group)]; }
  void set(Group group, Code code, int column) {
    code_[static_cast<std::size_t>(group)] = code;
    column_[static_cast<std::size_t>(group)] = column;
  }

  /// The motion that this line carries out, explicit or still in force; kNoCode when it moves nothing.
  Code motion = kNoCode;

private:
  static constexpr auto kGroups = static_cast<std::size_t>(Group::count);
  std::array<Code, kGroups> code_{};
  std::array<int, kGroups> column_{};
};

/// Sorts the line's codes into groups and settles which motion it makes; `modal_motion` is the one in force.
/// False when the line cannot be carried out; the complaints say why.
bool sort_orders(const Block &block, Code modal_motion, Orders &orders, Complaints &complaints);

/// Complains about words that nothing on the line uses.
void check_word_use(const Block &block, const Orders &orders, Complaints &complaints);

} // namespace asperity::gcode
