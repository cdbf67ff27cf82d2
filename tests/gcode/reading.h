// Reading a program given as text, for the tests of the reader.
#pragma once

#include "asperity/gcode/program.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <string>
#include <string_view>

namespace asperity::gcode {

struct Reading {
  Program program;
  Problems problems;

  const LargeArray<Move> &moves() const { return program.moves; }
  std::string problem_text() const {
    std::string text;
    for (const Problem &problem : problems.all())
      text += text_of(problem) + "\n";
    return text;
  }
  std::size_t warning_count() const { return problems.all().size() - problems.error_count(); }
  /// True if some problem's message contains `part`.
  bool says(std::string_view part) const {
    return std::any_of(problems.all().begin(), problems.all().end(), [part](const Problem &problem) {
      return problem.message.find(part) != std::string::npos;
    });
  }
};

inline Reading read(std::string_view text, const ReadOptions &options = {}) {
  Reading reading;
  reading.program = read_program_text(text, "sheave.nc", options, reading.problems);
  return reading;
}

/// For programs that must read without errors.
inline Reading read_good(std::string_view text, const ReadOptions &options = {}) {
  Reading reading = read(text, options);
  EXPECT_FALSE(reading.problems.has_errors()) << text << "\n" << reading.problem_text();
  return reading;
}

/// Head of a metric program with the spindle turning and a feed set; its moves start at (0, 0, 50).
inline std::string metric(std::string_view lines) {
  return "G21 G90 G17 F600 S12000 M3\n" + std::string(lines) + "\nM2\n";
}

inline ReadOptions strict() {
  ReadOptions options;
  options.strict = true;
  return options;
}

/// A few operations in double precision on lengths of tens of mm.
inline constexpr double kRounding_mm = 1e-12;

inline void expect_at(Vec3 actual, Vec3 wanted, double tolerance_mm = kRounding_mm) {
  EXPECT_NEAR(actual.x, wanted.x, tolerance_mm);
  EXPECT_NEAR(actual.y, wanted.y, tolerance_mm);
  EXPECT_NEAR(actual.z, wanted.z, tolerance_mm);
}

} // namespace asperity::gcode
