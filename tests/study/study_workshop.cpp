// A workshop whose bush has a program for each of two feeds.
#include "study/study_workshop.h"

#include <algorithm>
#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace asperity::test_support {

namespace {

void replace_all(std::string &text, const std::string &old, const std::string &now) {
  for (std::size_t at = 0; (at = text.find(old, at)) != std::string::npos; at += now.size())
    text.replace(at, old.size(), now);
}

} // namespace

void StudyWorkshop::SetUp() {
  Workshop::SetUp();
  write_job(false);
  std::string quick = program();
  replace_all(quick, "X13", "X5.5");
  replace_all(quick, "I-13", "I-5.5");
  replace_all(quick, "X16", "X9");
  write("bush.ngc", quick);
  replace_all(quick, "F1500", "F700");
  write("slow.ngc", quick);
}

void StudyWorkshop::write_job(bool bends) const {
  std::string job = Workshop::job("{ plus = 0.2, minus = 0.2 }", "[chart]\nwall_spacing_mm = 0.5\n");
  replace_all(job, "diameter_mm = 21.0", "diameter_mm = 6.0");
  replace_all(job, "diameter_mm = 20.0", "diameter_mm = 5.0");
  replace_all(job, "side = \"outside\"\n", "side = \"outside\"\nfinish = { witness_depth_um = 6.0 }\n");
  if (!bends)
    job += "[effects]\ncutter_bending = false\nmachine_bending = false\nblank_bending = false\n";
  write("bush.toml", job);
}

std::vector<std::string> StudyWorkshop::study(const std::vector<std::string> &more) {
  std::vector<std::string> all{"study",  "bush.toml",
                               "--vary", "program=bush.ngc,slow.ngc",
                               "--vary", "setup.z_zero_error_mm=0:0.05:0.05",
                               "--vary", "cutter.1.runout_mm=0.0,0.02",
                               "--quiet"};
  if (std::find(more.begin(), more.end(), "--results") == more.end())
    all.insert(all.end(), {"--results", "s.db"});
  all.insert(all.end(), more.begin(), more.end());
  return all;
}

int StudyWorkshop::run_and_kill(const std::vector<std::string> &arguments, double after_s) const {
  const pid_t child = ::fork();
  if (child == 0) {
    std::vector<std::string> all{"asperity"};
    all.insert(all.end(), arguments.begin(), arguments.end());
    std::vector<char *> argv;
    for (std::string &argument : all)
      argv.push_back(argument.data());
    argv.push_back(nullptr);
    const int nowhere = ::open("/dev/null", O_WRONLY);
    if (nowhere < 0 || ::dup2(nowhere, 1) < 0 || ::dup2(nowhere, 2) < 0 || ::chdir(folder().c_str()) != 0)
      ::_exit(99);
    ::execv(ASPERITY_PROGRAM, argv.data());
    ::_exit(98);
  }
  const auto end = std::chrono::steady_clock::now() + std::chrono::duration<double>(after_s);
  int status = 0;
  while (std::chrono::steady_clock::now() < end) {
    if (::waitpid(child, &status, WNOHANG) == child)
      return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  ::kill(child, SIGKILL);
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace asperity::test_support
