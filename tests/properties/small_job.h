// A small boss cut by a short program: whole predictions that run in a moment.
#pragma once

#include "asperity/base/units.h"
#include "asperity/predict/outcome.h"

#include <gtest/gtest.h>

#include <string>

namespace asperity::test {

/// A 20 mm boss, 4 mm high, from a 20.8 mm cylinder; top face at 4 mm from 4.2 mm. Geometry only: nothing
/// bends, nothing accelerates, until a test switches it on.
inline Job boss_job() {
  Job job;
  job.title = "bell-crank bush";
  job.material = *find_material("PETG (printed)");
  Cutter cutter;
  cutter.diameter_mm = 6, cutter.flute_length_mm = 15, cutter.shank_diameter_mm = 6, cutter.stick_out_mm = 22;
  cutter.runout_mm = 0;
  job.cutters = {cutter};
  job.blank.shape = BlankShape::cylinder;
  job.blank.diameter_mm = 20.8;
  job.blank.z_top_mm = 4.2;
  WallFeature wall;
  wall.name = "rim";
  wall.outline = Outline::circle({0, 0}, 20);
  wall.diameter_mm = 20;
  wall.z_top_mm = 4;
  FloorFeature top;
  top.name = "top";
  top.outline = Outline::circle({0, 0}, 20);
  top.z_mm = 4;
  job.features = {wall, top};
  job.resolution = {0.1, 0.2};
  job.effects = {false, false, false, false, false, false, false, false, false, false};
  return job;
}

inline Program program_of(const std::string &text, bool inch = false) {
  Problems problems;
  ReadOptions options;
  options.start_in_inch = inch;
  options.tools = {1};
  Program program = read_program_text(text, "test.ngc", options, problems);
  for (const Problem &problem : problems.all())
    EXPECT_NE(problem.severity, Severity::error) << text_of(problem);
  return program;
}

inline Outcome predicted(const Job &job, const std::string &text, int threads = 1) {
  Outcome outcome = predict(job, program_of(text), {threads, 0}, Progress{});
  EXPECT_EQ(outcome.status, Status::done) << outcome.why;
  return outcome;
}

/// Largest difference of two charts' residuals [mm]; cells only one of them has cut count in full.
inline double largest_difference_mm(const Chart &a, const Chart &b) {
  double most = 0.0;
  std::visit(
      [&](const auto &x) {
        const auto &y = std::get<std::decay_t<decltype(x)>>(b);
        ASSERT_EQ(x.envelope_mm.size(), y.envelope_mm.size());
        for (std::size_t cell = 0; cell < x.envelope_mm.size(); ++cell)
          if (x.blank_mm[cell] == x.blank_mm[cell])
            most = std::max(most, static_cast<double>(std::abs(x.residual_mm(cell) - y.residual_mm(cell))));
      },
      a);
  return most;
}

/// Two laps round the boss (z 2 and 0) and one pass over the top, in the words of a usual program.
inline std::string boss_program() {
  return "G21 G90 G17 G94 G54\nT1 M6\nS18000 M3\nG0 X20 Y0 Z10\nG0 Z4\nG1 X-20 F900\nG0 Z10\nG0 X13 Y0\nG0 "
         "Z5\n"
         "G1 Z2 F300\nG2 X13 Y0 I-13 J0 F900\nG1 Z0 F300\nG2 X13 Y0 I-13 J0 F900\nG0 Z10\nM30\n";
}

} // namespace asperity::test
