// The bezel job's text, and planning it.
#include "passes/planned.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <unistd.h>

namespace asperity::test {

namespace {

constexpr std::string_view kHead = R"toml(title = "Dial bezel (two)"
[material]
name = "PETG (printed)"
[[cutter]]
number = 1
kind = "flat"
diameter_mm = 6.0
flutes = 2
flute_length_mm = 22
shank_diameter_mm = 6.0
stick_out_mm = 25
[[cutter]]
number = 2
kind = "ball"
diameter_mm = 6.0
flutes = 2
flute_length_mm = 22
shank_diameter_mm = 6.0
stick_out_mm = 25
[[cutter]]
number = 3
kind = "corner_radius"
diameter_mm = 6.0
corner_radius_mm = 1.0
flutes = 2
flute_length_mm = 22
shank_diameter_mm = 6.0
stick_out_mm = 25
[[cutter]]
number = 4
kind = "v"
diameter_mm = 6.0
tip_diameter_mm = 0.2
half_angle_deg = 45
flutes = 2
flute_length_mm = 3
shank_diameter_mm = 6.0
stick_out_mm = 25
[[cutter]]
number = 5
kind = "flat"
diameter_mm = 12.0
flutes = 2
flute_length_mm = 5
shank_diameter_mm = 12.0
stick_out_mm = 25
length_offset_mm = 3.5
[blank]
shape = "cylinder"
diameter_mm = 42.0
bottom_mm = 0.0
top_mm = 10.4
)toml";

constexpr std::string_view kSurfaces = R"toml([[wall]]
name = "rim"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 40.0
side = "outside"
bottom_mm = 0.0
top_mm = 10.0
[[wall]]
name = "bore"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 20.0
side = "inside"
bottom_mm = 0.0
top_mm = 10.0
[[wall]]
name = "window"
outline = "rounded_rectangle"
centre_mm = [0, 0]
width_x_mm = 30.0
width_y_mm = 20.0
corner_radius_mm = 4.0
side = "inside"
bottom_mm = 0.0
top_mm = 10.0
[[wall]]
name = "crank"
outline = "free_form"
start_mm = [-15, -10]
elements = [
  { line_to_mm = [15, -10] },
  { line_to_mm = [15, 0] },
  { arc_to_mm = [7, 0], centre_mm = [11, 3], turn = "right" },
  { line_to_mm = [7, 8] },
  { arc_to_mm = [-15, 8], centre_mm = [-4, 8], turn = "left" },
  { line_to_mm = [-15, -10] },
]
side = "outside"
bottom_mm = 0.0
top_mm = 10.0
[[floor]]
name = "face"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 40.0
z_mm = 10.0
[[floor]]
name = "ring"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 40.0
z_mm = 10.0
[[floor.island]]
outline = "circle"
centre_mm = [3, 0]
diameter_mm = 12.0
[[floor]]
name = "offside"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 40.0
z_mm = 10.0
[[floor.island]]
outline = "circle"
centre_mm = [10, 0]
diameter_mm = 6.0
[[floor]]
name = "pocket"
outline = "rounded_rectangle"
centre_mm = [0, 0]
width_x_mm = 40.0
width_y_mm = 30.0
corner_radius_mm = 4.0
z_mm = 6.0
[[dome]]
name = "cap"
shape = "cap"
centre_mm = [0, 0]
sphere_radius_mm = 40.0
apex_mm = 10.0
rim_radius_mm = 12.0
[setup]
program_zero_mm = [5.0, -3.0, 10.0]
)toml";

std::optional<Job> read_here(std::string_view text, Problems &problems) {
  const auto folder = std::filesystem::temp_directory_path() / fmt::format("asperity_passes_{}", ::getpid());
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "bezel.ngc", std::ios::binary) << "M30\n";
  std::ofstream(folder / "bezel.toml", std::ios::binary) << text;
  auto job = read_job(folder / "bezel.toml", problems);
  std::filesystem::remove_all(folder);
  return job;
}

} // namespace

std::string bezel_text(std::string_view passes) {
  return std::string(kHead) + std::string(kSurfaces) + std::string(passes);
}

Planned planned(std::string_view passes) {
  Problems problems;
  Planned result;
  if (auto job = read_here(bezel_text(passes), problems)) {
    result.job = std::move(*job);
    if (auto plan = plan_passes(result.job, problems))
      result.plan = std::move(*plan);
    if (auto program = job_program(result.job, problems))
      result.program = std::move(program->program);
  }
  for (const Problem &problem : problems.all())
    if (problem.severity == Severity::error)
      ADD_FAILURE() << text_of(problem);
  return result;
}

Problems problems_of_text(std::string_view job_text) {
  Problems problems;
  if (const auto job = read_here(job_text, problems))
    job_program(*job, problems);
  return problems;
}

Problems problems_of(std::string_view passes) { return problems_of_text(bezel_text(passes)); }

namespace {

std::string pass(std::string_view kind, std::string_view surface, int cutter, std::string_view more) {
  return fmt::format(
      "[[pass]]\nkind = \"{}\"\nsurface = \"{}\"\ncutter = {}\nrpm = 18000\nfeed_mm_per_min = 1200\n"
      "plunge_feed_mm_per_min = 300\n{}\n",
      kind, surface, cutter, more);
}

} // namespace

std::string wall_pass(std::string_view surface, std::string_view more) {
  return pass("wall", surface, 1, more);
}
std::string floor_pass(std::string_view surface, std::string_view more) {
  return pass("floor", surface, 1, more);
}
std::string dome_pass(int cutter, std::string_view more) { return pass("dome", "cap", cutter, more); }

LargeArray<Move> feed_moves(const Program &program) {
  LargeArray<Move> moves;
  for (const Move &move : program.moves)
    if (move.kind == MoveKind::feed)
      moves.push_back(move);
  return moves;
}

LargeArray<Move> level_moves(const Program &program, double z_mm) {
  LargeArray<Move> moves;
  for (const Move &move : feed_moves(program))
    if (std::abs(move.curve.begin.z - z_mm) < kText_mm && std::abs(move.curve.end.z - z_mm) < kText_mm)
      moves.push_back(move);
  return moves;
}

} // namespace asperity::test
