// A folder with a small job in it, and the built program run on it as a user would.
#include "cli/workshop.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <fstream>
#include <sstream>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace asperity::test_support {

namespace fs = std::filesystem;

namespace {

std::string text_in(const fs::path &path) {
  std::ostringstream bytes;
  bytes << std::ifstream(path, std::ios::binary).rdbuf();
  return bytes.str();
}

/// In the child: output into the two files, then the program.
[[noreturn]] void become_program(const fs::path &folder, const fs::path &streams,
                                 std::vector<std::string> arguments) {
  std::vector<char *> argv;
  for (std::string &argument : arguments)
    argv.push_back(argument.data());
  argv.push_back(nullptr);
  const int out = ::open((streams.string() + ".out").c_str(), O_CREAT | O_WRONLY | O_TRUNC, 0600);
  const int err = ::open((streams.string() + ".err").c_str(), O_CREAT | O_WRONLY | O_TRUNC, 0600);
  if (out < 0 || err < 0 || ::dup2(out, 1) < 0 || ::dup2(err, 2) < 0 || ::chdir(folder.c_str()) != 0)
    ::_exit(99);
  ::execv(ASPERITY_PROGRAM, argv.data());
  ::_exit(98);
}

} // namespace

void Workshop::SetUp() {
  std::string pattern = (fs::temp_directory_path() / "asperity_cli_XXXXXX").string();
  ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
  folder_ = pattern;
  write("bush.toml", job());
  write("bush.ngc", program());
}

void Workshop::TearDown() {
  fs::remove_all(folder_);
  fs::remove(folder_.string() + ".out");
  fs::remove(folder_.string() + ".err");
}

void Workshop::write(const std::string &name, const std::string &text) const {
  std::ofstream(folder_ / name, std::ios::binary) << text;
}

std::string Workshop::read(const std::string &name) const { return text_in(folder_ / name); }

std::vector<std::string> Workshop::files() const {
  std::vector<std::string> names;
  for (const auto &entry : fs::recursive_directory_iterator(folder_))
    if (entry.is_regular_file())
      names.push_back(fs::relative(entry.path(), folder_).string());
  std::sort(names.begin(), names.end());
  return names;
}

Ran Workshop::run(const std::vector<std::string> &arguments, double interrupt_after_s) const {
  std::vector<std::string> all{"asperity"};
  all.insert(all.end(), arguments.begin(), arguments.end());
  const pid_t child = ::fork();
  if (child == 0)
    become_program(folder_, folder_, all);
  if (interrupt_after_s > 0.0) {
    std::this_thread::sleep_for(std::chrono::duration<double>(interrupt_after_s));
    ::kill(child, SIGINT);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status), text_in(folder_.string() + ".out"),
          text_in(folder_.string() + ".err")};
}

std::string Workshop::job(const std::string &wanted, const std::string &more) {
  return fmt::format(R"toml(title = "Bell-crank bush"
program = "bush.ngc"

[material]
name = "PETG (printed)"

[machine]
stiffness_xy_N_per_um = 1.0

[[cutter]]
number = 1
kind = "flat"
diameter_mm = 6.0
flutes = 2
flute_length_mm = 22
shank_diameter_mm = 6.0
stick_out_mm = 25

[blank]
shape = "cylinder"
diameter_mm = 21.0
bottom_mm = 0.0
top_mm = 4.0

[[wall]]
name = "outer side"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 20.0
side = "outside"
bottom_mm = 0.0
top_mm = 4.0
diameter_wanted_mm = {}

[setup]
program_zero_mm = [0, 0, 0]

{}
)toml",
                     wanted, more);
}

std::string Workshop::program() {
  return R"(G21 G90 G17 G94 G40 G49 G54
T1 M6
S18000 M3
G0 Z20
G0 X16 Y0
G0 Z5
G1 Z2 F300
G1 X13 Y0 F1500
G2 X13 Y0 I-13 J0
G1 X16 Y0
G1 Z0 F300
G1 X13 Y0 F1500
G2 X13 Y0 I-13 J0
G1 X16 Y0
G0 Z20
M5
M30
)";
}

} // namespace asperity::test_support
