// One line of a program split into words, with the column of each.
#pragma once

#include "complaints.h"
#include "parameters.h"

#include <array>
#include <string_view>
#include <vector>

namespace asperity::gcode {

struct CodeWord {
  double value = 0.0;
  int column = 0;
};

struct ParameterSetting {
  int index = 0;
  double value = 0.0;
};

/// The words of one line; cleared and filled again for the next, so that reading allocates nothing.
class Block {
public:
  void clear();

  bool has(char letter) const { return column_[slot(letter)] != 0; }
  /// Value of the word with this capital letter; G and M words are in their own lists.
  double value(char letter) const { return value_[slot(letter)]; }
  int column(char letter) const { return column_[slot(letter)]; }
  void set(char letter, double value, int column) {
    value_[slot(letter)] = value;
    column_[slot(letter)] = column;
  }

  bool has_axis_words() const { return has('X') || has('Y') || has('Z'); }
  /// Column of the first of X, Y, Z on the line, 0 without one.
  int first_axis_column() const;

  std::vector<CodeWord> g_words;
  std::vector<CodeWord> m_words;
  std::vector<ParameterSetting> settings;
  std::string_view comment; ///< the last one on the line, without its brackets
  bool is_deletable = false;

private:
  static std::size_t slot(char letter) { return static_cast<std::size_t>(letter - 'A'); }

  std::array<double, 26> value_{};
  std::array<int, 26> column_{};
};

/// Fills `block` from one line without its end-of-line characters; false with `fault` filled when the line is
/// wrong. Parameters are read as they stand before the line; settings take effect only when the caller
/// applies them.
bool read_block(std::string_view text, const ParameterTable &parameters, Block &block, Fault &fault,
                Complaints &complaints);

} // namespace asperity::gcode
