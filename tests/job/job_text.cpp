// A small correct job and the means to change and read it.
#include "job_text.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

#include <unistd.h>

namespace asperity {

const std::string_view kSmallJob = R"toml(title = "Line sheave"
program = "sheave.ngc"

[material]
name = "PETG (printed)"

[machine]
stiffness_xy_N_per_um = 0.4

[[cutter]]
number = 1
kind = "flat"
diameter_mm = 6.0
flutes = 2
flute_length_mm = 20.0
shank_diameter_mm = 6.0
stick_out_mm = 25.0

[blank]
shape = "cylinder"
diameter_mm = 63.0
bottom_mm = 0.0
top_mm = 12.0

[[wall]]
name = "rim"
outline = "circle"
centre_mm = [0.0, 0.0]
diameter_mm = 62.0
side = "outside"
bottom_mm = 1.0
top_mm = 11.0
diameter_wanted_mm = { nominal = 62.0, plus = 0.05, minus = 0.05 }
finish = { ra_um = 3.2 }

[hold_down]
spoilboard_top_mm = 0.0

[setup]
program_zero_mm = [0.0, 0.0, 12.0]

[effects]
runout = false

[chart]
wall_spacing_mm = 0.05
)toml";

TestFolder::TestFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "asperity_job_XXXXXX").string();
  path_ = mkdtemp(name.data());
}

TestFolder::~TestFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::filesystem::path TestFolder::write(const std::string &name, std::string_view bytes) const {
  std::ofstream(path_ / name, std::ios::binary)
      .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  return path_ / name;
}

std::optional<Job> read_text(std::string_view text, Problems &problems) {
  const TestFolder folder;
  folder.write("sheave.ngc", "M2\n");
  return read_job(folder.write("sheave.toml", text), problems);
}

std::string replaced(std::string_view text, std::string_view find, std::string_view by) {
  std::string result(text);
  if (find.empty())
    return result + std::string(by);
  const auto at = result.find(find);
  if (at == std::string::npos)
    ADD_FAILURE() << "the job has no '" << find << "'";
  else
    result.replace(at, find.size(), by);
  return result;
}

TextPlace place_of(std::string_view text, std::string_view word) {
  const auto at = text.find(word);
  if (at == std::string_view::npos) {
    ADD_FAILURE() << "the job has no '" << word << "'";
    return {};
  }
  const std::string_view before = text.substr(0, at);
  const auto line = std::count(before.begin(), before.end(), '\n');
  const auto line_begin = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
  return {static_cast<int>(line) + 1, static_cast<int>(at - line_begin) + 1};
}

} // namespace asperity
