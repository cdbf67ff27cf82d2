// A small job in a folder of its own.
#include "small_outcome.h"

#include "background.h"

#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <sstream>

namespace asperity::test_support {

namespace fs = std::filesystem;

namespace {

fs::path new_folder() {
  std::string pattern = (fs::temp_directory_path() / "asperity_viewer_XXXXXX").string();
  EXPECT_NE(::mkdtemp(pattern.data()), nullptr);
  return pattern;
}

std::shared_ptr<const RunResult> bush(const Changes &changes) {
  const fs::path folder = new_folder();
  struct Bare : Bench {
    using Bench::job_text;
    using Bench::program_text;
    void TestBody() override {}
  };
  std::ofstream(folder / "bush.toml") << Bare::job_text();
  std::ofstream(folder / "bush.ngc") << Bare::program_text();
  Repredictor kept;
  auto result =
      std::make_shared<const RunResult>(read_and_predict(folder / "bush.toml", changes, 0, Progress{}, kept));
  fs::remove_all(folder);
  EXPECT_TRUE(result->outcome && result->outcome->status == Status::done);
  return result;
}

void seat(AppState &state, int i, const std::shared_ptr<const RunResult> &result) {
  apply(state, OpenFile{i, "/workshop/bush.toml"});
  apply(state, RunStarted{i});
  apply(state, RunEnded{i, result});
}

} // namespace

void Bench::SetUp() {
  folder_ = new_folder();
  write("bush.toml", job_text());
  write("bush.ngc", program_text());
}

void Bench::TearDown() { fs::remove_all(folder_); }

void Bench::write(const std::string &name, const std::string &text) const {
  std::ofstream(folder_ / name, std::ios::binary) << text;
}

std::string Bench::read(const std::string &name) const {
  std::ostringstream bytes;
  bytes << std::ifstream(folder_ / name, std::ios::binary).rdbuf();
  return bytes.str();
}

std::string Bench::job_text() {
  return R"toml(# The bush of a bell-crank.
title = "Bell-crank bush"
program = "bush.ngc"

[material]
name = "PETG (printed)"

[machine]
stiffness_xy_N_per_um = 0.5 # read at the nose

[[cutter]]
number = 1
name = "6 mm flat"
kind = "flat"
diameter_mm = 6.0
flutes = 2
flute_length_mm = 15
shank_diameter_mm = 6.0
stick_out_mm = 22   # tip to holder
material = "carbide"
runout_mm = 0.02

[blank]
shape = "cylinder"
diameter_mm = 20.8
bottom_mm = 0.0
top_mm = 4.0

[[wall]]
name = "side"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 20.0
side = "outside"
bottom_mm = 0.0
top_mm = 4.0
diameter_wanted_mm = { plus = 0.05, minus = 0.05 }
finish = { witness_depth_um = 0.5 }

[[floor]]
name = "top"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 20.0
z_mm = 4.0

[chart]
wall_spacing_mm = 0.1
floor_spacing_mm = 0.2
)toml";
}

std::string Bench::program_text(double feed_mm_per_min) {
  return fmt::format("G21 G90 G17 G94 G54\nT1 M6\nS18000 M3\nG0 X13 Y0 Z10\nG0 Z5\nG1 Z2 F300\n"
                     "G2 X13 Y0 I-13 J0 F{0}\nG1 Z0 F300\nG2 X13 Y0 I-13 J0 F{0}\nG0 Z10\nM30\n",
                     feed_mm_per_min);
}

std::shared_ptr<const RunResult> bush_result() {
  static const std::shared_ptr<const RunResult> result = bush({});
  return result;
}

std::shared_ptr<const RunResult> bush_with_large_cutter() {
  static const std::shared_ptr<const RunResult> result = bush({{"cutter.1.diameter_error_mm", "0.1"}});
  return result;
}

AppState state_with_bush(bool with_other) {
  AppState state;
  seat(state, 0, bush_result());
  if (with_other)
    seat(state, 1, bush_with_large_cutter());
  return state;
}

} // namespace asperity::test_support
