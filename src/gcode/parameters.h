// The numbered parameters #1 to #5399 of a program.
#pragma once

#include <cmath>
#include <cstddef>
#include <vector>

namespace asperity::gcode {

/// Lengths among them (origins, homes, shifts) are held in the program's own unit and turned over by G20 and
/// G21.
class ParameterTable {
public:
  static constexpr int kCells = 5400; ///< index 0 unused [NISTIR 6556, 3.2]
  static constexpr int kHomeOfG28 = 5161;
  static constexpr int kHomeOfG30 = 5181;
  static constexpr int kShiftOfG92 = 5211;
  static constexpr int kSystemInForce = 5220;

  ParameterTable() : cells_(kCells, 0.0) { cells_[kSystemInForce] = 1.0; }

  static bool has(double index) { return index >= 1.0 && index < kCells && index == std::floor(index); }
  /// First cell of the origin of system 1..9.
  static int origin_of(int system) { return 5221 + 20 * (system - 1); }

  double get(int index) const { return cells_[static_cast<std::size_t>(index)]; }
  void set(int index, double value) { cells_[static_cast<std::size_t>(index)] = value; }
  /// Multiplies every cell that holds a length.
  void scale_lengths(double factor);

private:
  std::vector<double> cells_;
};

} // namespace asperity::gcode
