// A folder of its own for a test, and hand-made trials.
#include "study/folder.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <limits>
#include <sstream>

namespace asperity::test_support {

namespace fs = std::filesystem;

void StudyFolder::SetUp() {
  std::string pattern = (fs::temp_directory_path() / "asperity_study_XXXXXX").string();
  ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
  folder_ = pattern;
}

void StudyFolder::TearDown() { fs::remove_all(folder_); }

void StudyFolder::write(const std::string &name, const std::string &text) const {
  std::ofstream(folder_ / name, std::ios::binary) << text;
}

std::string StudyFolder::read(const std::string &name) const {
  std::ostringstream bytes;
  bytes << std::ifstream(folder_ / name, std::ios::binary).rdbuf();
  return bytes.str();
}

StudyGrid small_grid() {
  return {
      {{"program", {"\"plunge.ngc\"", "\"zigzag.ngc\""}}, {"cutter.1.runout_mm", {"0.0", "0.01", "0.02"}}}};
}

StudyHead small_head() {
  StudyHead head;
  head.grid = small_grid();
  head.identity = {"1.2.3", "abc", {{"plunge.ngc", "11"}, {"zigzag.ngc", "22"}}, "grid", false};
  head.job_text = "title = \"Line sheave\"\nprogram = \"plunge.ngc\" # beside\n\n[[cutter]]\nnumber = 1\n";
  head.job_file = "/workshop/sheave.toml";
  return head;
}

Trial trial_with(std::size_t combination, double time_s, double depth_um) {
  constexpr double kWanted_um = 4.0;
  Trial trial;
  trial.combination = combination;
  trial.numbers = {
      {"time_s", "", "time on the machine", "s", time_s, Better::lower, 0},
      {"rim/diameter_mm", "rim", "diameter", "mm", 62.0 + 1e-4 * depth_um, Better::nearer_wanted, 62.0},
      {"rim/witness_depth_um", "rim", "deepest witness line", "um", depth_um, Better::lower, 0}};
  const bool is_met = depth_um <= kWanted_um;
  trial.checks = {{"rim", "witness depth", "at most 4 um", depth_um, "um", is_met, kWanted_um,
                   std::max(0.0, depth_um / kWanted_um - 1.0)}};
  return trial;
}

} // namespace asperity::test_support
