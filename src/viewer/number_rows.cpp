// The key numbers of one or two jobs in one table.
#include "number_rows.h"

#include "asperity/report/number_text.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

std::string value_text(const KeyNumber &number) {
  if (number.unit == "um" && std::abs(number.value) < 1.0)
    return roughness_text(number.value);
  if (number.unit.empty())
    return fixed_text(number.value, number.value == std::floor(number.value) ? 0 : 2);
  return quantity_text(number.value, number.unit);
}

NumberRow row_of(const KeyNumber &number, std::size_t seat) {
  NumberRow row{number.feature, number.what, {}};
  row.value[seat] = value_text(number);
  return row;
}

int better_of(const KeyNumber &a, const KeyNumber &b) {
  if (merit(a) == merit(b) || value_text(a) == value_text(b))
    return -1;
  return merit(a) > merit(b) ? 0 : 1;
}

} // namespace

std::string roughness_text(double um) { return fixed_text(um, um < 1.0 ? 3 : 2) + " um"; }

std::vector<NumberRow> number_rows(const std::vector<KeyNumber> &of_a, const std::vector<KeyNumber> &of_b) {
  std::vector<NumberRow> rows;
  for (const KeyNumber &number : of_a) {
    rows.push_back(row_of(number, 0));
    if (const KeyNumber *other = find_number(of_b, number.id)) {
      rows.back().value[1] = value_text(*other);
      rows.back().better = better_of(number, *other);
    }
  }
  for (const KeyNumber &number : of_b) {
    if (find_number(of_a, number.id))
      continue;
    // Beside what belongs to the same feature.
    const auto last = std::find_if(rows.rbegin(), rows.rend(),
                                   [&](const NumberRow &row) { return row.feature == number.feature; });
    rows.insert(last == rows.rend() ? rows.end() : last.base(), row_of(number, 1));
  }
  return rows;
}

} // namespace asperity
