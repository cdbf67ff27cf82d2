// The value part of a word: a number, a parameter, a function or a bracketed expression [NISTIR 6556, 3.3.2].
#include "expression.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

using Value = std::optional<double>;

constexpr int kDeepest = 60; ///< brackets inside brackets: more than any line of 256 characters means to have

/// Fields that must be whole numbers may be this far off [NISTIR 6556, 3.3.2.1].
constexpr double kWholeWithin = 1e-4;

enum class Operator {
  none,
  power,
  times,
  divided,
  modulo,
  plus,
  minus,
  logical_or,
  logical_xor,
  logical_and
};

/// Power first, then the products, then sums and logic together [NISTIR 6556, 3.3.2.3].
int rank_of(Operator op) {
  switch (op) {
  case Operator::none:
    return 0;
  case Operator::power:
    return 3;
  case Operator::times:
  case Operator::divided:
  case Operator::modulo:
    return 2;
  default:
    return 1;
  }
}

class ValueReader {
public:
  ValueReader(Scanner &scanner, const ParameterTable &parameters, Fault &fault)
      : scanner_(scanner), parameters_(parameters), fault_(fault) {}

  Value value();
  std::optional<int> parameter_index();

private:
  Value number();
  Value number_with_blanks(int column);
  Value bracket();
  Value chain(int lowest_rank);
  Operator peek_operator() const;
  void take_operator(Operator op);
  Value combine(Operator op, double left, double right, int column);
  Value function();
  Value arc_tangent(double y);
  Value apply(std::string_view name, double x, int column);
  Value finite(double x, int column);
  Value fail(int column, std::string message, std::string remedy);

  Scanner &scanner_;
  const ParameterTable &parameters_;
  Fault &fault_;
  int depth_ = 0;
};

Value ValueReader::fail(int column, std::string message, std::string remedy) {
  fault_ = {column, std::move(message), std::move(remedy)};
  return {};
}

Value ValueReader::finite(double x, int column) {
  if (!std::isfinite(x))
    return fail(column, "the result is too large", "Check the sizes that go into the expression.");
  return x;
}

Value ValueReader::value() {
  const char c = scanner_.peek();
  if (is_digit(c) || c == '.')
    return number();
  if (c == '[')
    return bracket();
  if (c == '#') {
    scanner_.advance();
    const std::optional<int> index = parameter_index();
    return index ? Value(parameters_.get(*index)) : Value();
  }
  if (c == '+' || c == '-') {
    const int column = scanner_.column();
    scanner_.advance();
    if (scanner_.peek() == '+' || scanner_.peek() == '-')
      return fail(column, "two signs before a number", "Keep one sign.");
    const Value unsigned_value = value();
    return unsigned_value && c == '-' ? Value(-*unsigned_value) : unsigned_value;
  }
  if (is_letter(c))
    return function();
  return fail(scanner_.column(), fmt::format("a number is missing before {}", quoted(c)),
              "Write a number, #parameter or [expression] after the letter.");
}

Value ValueReader::number() {
  const int column = scanner_.column();
  const std::string_view rest = scanner_.rest();
  double x = 0.0;
  const auto [end, code] =
      std::from_chars(rest.data(), rest.data() + rest.size(), x, std::chars_format::fixed);
  Scanner after = scanner_;
  after.skip(static_cast<std::size_t>(end - rest.data()));
  if (code != std::errc() || is_digit(after.peek()) || after.peek() == '.')
    return number_with_blanks(column);
  scanner_ = after;
  return x;
}

/// The rare number with blanks inside, "+0. 12 34"; also where bad numbers are named.
Value ValueReader::number_with_blanks(int column) {
  std::string digits;
  while (is_digit(scanner_.peek()) || scanner_.peek() == '.') {
    digits += scanner_.peek();
    scanner_.advance();
  }
  double x = 0.0;
  const char *last = digits.data() + digits.size();
  const auto [end, code] = std::from_chars(digits.data(), last, x, std::chars_format::fixed);
  if (code == std::errc::result_out_of_range)
    return fail(column, "the number is out of range", "Use a number the machine can have.");
  if (code != std::errc() || end != last)
    return fail(column, fmt::format("'{}' is not a number", digits), "Write digits with at most one point.");
  return x;
}

std::optional<int> ValueReader::parameter_index() {
  const int column = scanner_.column();
  if (++depth_ > kDeepest) {
    fail(column, "parameters nested too deeply", "Split the line, keeping results in #parameters.");
    return {};
  }
  const Value index = value();
  --depth_;
  if (!index)
    return {};
  const double whole = std::round(*index);
  if (std::abs(*index - whole) > kWholeWithin || !ParameterTable::has(whole)) {
    fail(column, fmt::format("there is no parameter #{:g}", *index), "Parameters are #1 to #5399.");
    return {};
  }
  return static_cast<int>(whole);
}

Value ValueReader::bracket() {
  const int column = scanner_.column();
  if (!scanner_.take('['))
    return fail(column, fmt::format("'[' is missing before {}", quoted(scanner_.peek())),
                "Write the function's argument in square brackets.");
  if (++depth_ > kDeepest)
    return fail(column, "brackets nested too deeply", "Split the line, keeping results in #parameters.");
  const Value inside = chain(1);
  --depth_;
  if (inside && !scanner_.take(']'))
    return fail(scanner_.column(),
                fmt::format("an operator or ']' is missing before {}", quoted(scanner_.peek())),
                "Close the bracket opened at column " + std::to_string(column) + ".");
  return inside;
}

Value ValueReader::chain(int lowest_rank) {
  Value left = value();
  while (left) {
    const Operator op = peek_operator();
    if (op == Operator::none || rank_of(op) < lowest_rank)
      break;
    const int column = scanner_.column();
    take_operator(op);
    const Value right = chain(rank_of(op) + 1);
    left = right ? combine(op, *left, *right, column) : Value();
  }
  return left;
}

Operator ValueReader::peek_operator() const {
  Scanner ahead = scanner_;
  switch (ahead.peek()) {
  case '+':
    return Operator::plus;
  case '-':
    return Operator::minus;
  case '/':
    return Operator::divided;
  case '*':
    return ahead.take("**") ? Operator::power : Operator::times;
  case 'm':
    return ahead.take("mod") ? Operator::modulo : Operator::none;
  case 'o':
    return ahead.take("or") ? Operator::logical_or : Operator::none;
  case 'x':
    return ahead.take("xor") ? Operator::logical_xor : Operator::none;
  case 'a':
    return ahead.take("and") ? Operator::logical_and : Operator::none;
  default:
    return Operator::none;
  }
}

void ValueReader::take_operator(Operator op) {
  const bool has_two = op == Operator::power || op == Operator::logical_or;
  const bool has_three = op == Operator::modulo || op == Operator::logical_xor || op == Operator::logical_and;
  for (int i = 0; i < (has_three ? 3 : has_two ? 2 : 1); ++i)
    scanner_.advance();
}

Value ValueReader::combine(Operator op, double left, double right, int column) {
  switch (op) {
  case Operator::power:
    if (left < 0.0 && right != std::floor(right))
      return fail(column, "a negative number to a broken power",
                  "Raise a positive number, or use a whole power.");
    return finite(std::pow(left, right), column);
  case Operator::times:
    return finite(left * right, column);
  case Operator::divided:
    return right == 0.0 ? fail(column, "division by zero", "Check the divisor.")
                        : finite(left / right, column);
  case Operator::modulo: {
    if (right == 0.0)
      return fail(column, "MOD by zero", "Check the divisor.");
    const double rest = std::fmod(left, right);
    return rest < 0.0 ? rest + std::abs(right) : rest;
  }
  case Operator::plus:
    return finite(left + right, column);
  case Operator::minus:
    return finite(left - right, column);
  case Operator::logical_or:
    return left != 0.0 || right != 0.0 ? 1.0 : 0.0;
  case Operator::logical_xor:
    return (left != 0.0) != (right != 0.0) ? 1.0 : 0.0;
  case Operator::logical_and:
    return left != 0.0 && right != 0.0 ? 1.0 : 0.0;
  case Operator::none:
    break;
  }
  return left;
}

Value ValueReader::function() {
  constexpr std::array<std::string_view, 13> kNames = {"abs", "acos", "asin",  "atan", "cos",  "exp", "fix",
                                                       "fup", "ln",   "round", "sin",  "sqrt", "tan"};
  const int column = scanner_.column();
  const char first = scanner_.peek();
  const std::string name = scanner_.take_letters();
  if (std::find(kNames.begin(), kNames.end(), name) == kNames.end())
    return fail(column,
                fmt::format("unknown word '{}' starting with '{}' where a number should be", name, first),
                "Functions are ABS ACOS ASIN ATAN COS EXP FIX FUP LN ROUND SIN SQRT TAN.");
  const Value x = bracket();
  if (!x)
    return {};
  return name == "atan" ? arc_tangent(*x) : apply(name, *x, column);
}

/// ATAN[y]/[x]: the one function of two arguments.
Value ValueReader::arc_tangent(double y) {
  if (!scanner_.take('/'))
    return fail(scanner_.column(), "ATAN has only one argument", "Write ATAN[y]/[x].");
  const Value x = bracket();
  return x ? Value(deg_from_rad(std::atan2(y, *x))) : Value();
}

Value ValueReader::apply(std::string_view name, double x, int column) {
  const bool is_inverse = name == "acos" || name == "asin";
  if (is_inverse && std::abs(x) > 1.0)
    return fail(column, fmt::format("no angle has a sine or cosine of {:g}", x),
                "Its size may be at most 1.");
  if (name == "sqrt" && x < 0.0)
    return fail(column, fmt::format("square root of {:g}", x), "Check the sign.");
  if (name == "ln" && x <= 0.0)
    return fail(column, fmt::format("logarithm of {:g}", x), "It needs a number above zero.");
  if (name == "abs")
    return std::abs(x);
  if (name == "acos")
    return deg_from_rad(std::acos(x));
  if (name == "asin")
    return deg_from_rad(std::asin(x));
  if (name == "cos")
    return std::cos(rad_from_deg(x));
  if (name == "exp")
    return finite(std::exp(x), column);
  if (name == "fix")
    return std::floor(x);
  if (name == "fup")
    return std::ceil(x);
  if (name == "ln")
    return std::log(x);
  if (name == "round")
    return std::round(x);
  if (name == "sin")
    return std::sin(rad_from_deg(x));
  return name == "sqrt" ? std::sqrt(x) : std::tan(rad_from_deg(x));
}

} // namespace

std::optional<double> read_value(Scanner &scanner, const ParameterTable &parameters, Fault &fault) {
  return ValueReader(scanner, parameters, fault).value();
}

std::optional<int> read_parameter_index(Scanner &scanner, const ParameterTable &parameters, Fault &fault) {
  return ValueReader(scanner, parameters, fault).parameter_index();
}

} // namespace asperity::gcode
