// A small job of a clock's dial bezel with given passes, planned and read back.
#pragma once

#include "asperity/passes/job_program.h"
#include "asperity/passes/plan_passes.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace asperity::test {

/// A wall "rim" (40 mm, outside, z 0 to 10), "bore" (20 mm, inside), "window" (30 x 20 mm, corners 4 mm,
/// inside), "crank" (lines and arcs, outside); floors "face" (40 mm, z 10), "ring" (as face, island 12 mm),
/// "offside" (island 6 mm, 10 mm beside the middle), "pocket" (40 x 30 mm, corners 4 mm, z 6); dome "cap"
/// (sphere 40 mm, apex 14, rim 12 mm). Cutters: 1 flat 6 mm, 2 ball 6 mm, 3 corner 1 mm 6 mm, 4 v, 5 flat 12
/// mm. Blank 42 mm, top 10.4; no bolt.
std::string bezel_text(std::string_view passes);

/// The passes read, planned and read back; problems fail the test.
struct Planned {
  Job job;
  PassPlan plan;
  Program program;
};
Planned planned(std::string_view passes);

/// Problems of a job with these passes, when it is read and, if that goes well, planned.
Problems problems_of(std::string_view passes);
Problems problems_of_text(std::string_view job_text);

/// A wall pass with cutter 1 at 18000 rpm, feed 1200, plunge 300; `more` holds the rest of its keys.
std::string wall_pass(std::string_view surface, std::string_view more);
std::string floor_pass(std::string_view surface, std::string_view more);
std::string dome_pass(int cutter, std::string_view more);

/// Feed moves that stay on one height near z.
LargeArray<Move> level_moves(const Program &program, double z_mm);
/// Feed moves, whatever they do.
LargeArray<Move> feed_moves(const Program &program);

constexpr double kText_mm = 2e-6; // six decimals in the text, both ends

} // namespace asperity::test
