// The bush's job and program as text, read as a user's files are.
#include "tolerance/bush_job.h"

#include "asperity/passes/job_program.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <unistd.h>

namespace asperity::test_support {

namespace {

constexpr const char *kJob = R"toml(program = "bush.ngc"
[material]
name = "PETG (printed)"
[machine]
stiffness_xy_N_per_um = 0.3
[[cutter]]
number = 1
kind = "flat"
diameter_mm = 6.0
flutes = 2
flute_length_mm = 22
shank_diameter_mm = 6.0
stick_out_mm = 25
runout_mm = 0.02
[blank]
shape = "cylinder"
diameter_mm = 21.0
bottom_mm = 0.0
top_mm = 5.0
[[wall]]
name = "side"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 20.0
side = "outside"
bottom_mm = 0.0
top_mm = 4.0
diameter_wanted_mm = { plus = 0.05, minus = 0.05 }
[chart]
wall_spacing_mm = 0.2
)toml";

constexpr const char *kProgram =
    "G21 G90 G17 G94 G40 G49 G54\nT1 M6\nS18000 M3\nG0 Z20\nG0 X16 Y0\nG0 Z5\n"
    "G1 Z2 F300\nG1 X13 F600\nG2 X13 Y0 I-13 J0 F1200\nG1 X16\n"
    "G1 Z0 F300\nG1 X13 F600\nG2 X13 Y0 I-13 J0 F1200\nG1 X16\nG0 Z20\nM5\nM30\n";

} // namespace

BushJob bush_job() {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / ("asperity_bush_" + std::to_string(::getpid()));
  fs::create_directories(folder);
  std::ofstream(folder / "bush.toml") << kJob;
  std::ofstream(folder / "bush.ngc") << kProgram;
  Problems problems;
  BushJob bush;
  if (auto job = read_job(folder / "bush.toml", problems)) {
    if (auto program = job_program(*job, problems))
      bush = {std::move(*job), std::move(program->program)};
  }
  for (const Problem &each : problems.all())
    ADD_FAILURE() << text_of(each);
  fs::remove_all(folder);
  bush.job.uncertainty = {};
  return bush;
}

} // namespace asperity::test_support
