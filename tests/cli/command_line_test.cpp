// The program as the shell sees it: help, wrong options, wrong files, with exit status and message.
#include "cli/workshop.h"

#include <unistd.h>

namespace asperity::test_support {

namespace {

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

using CommandLine = Workshop;
using WrongInput = Workshop;

TEST_F(CommandLine, HelpNamesCommandsOptionsAndExitStatus) {
  const Ran general = run({"--help"});
  EXPECT_EQ(general.status, 0);
  EXPECT_TRUE(holds(general.out, "predict"));
  EXPECT_TRUE(holds(general.out, "check"));
  EXPECT_TRUE(holds(general.out, "130"));
  const Ran predict = run({"predict", "--help"});
  EXPECT_EQ(predict.status, 0);
  for (const char *option : {"JOB.toml", "--out", "--json", "--threads", "--quiet"})
    EXPECT_TRUE(holds(predict.out, option)) << option;
  EXPECT_EQ(run({"check", "--help"}).status, 0);
}

TEST_F(CommandLine, VersionIsTheProjectsOwn) {
  const Ran ran = run({"--version"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_EQ(ran.out, "asperity " ASPERITY_VERSION "\n");
}

TEST_F(CommandLine, WrongUseIsStatusTwoWithAWordOnTheErrorStream) {
  for (const std::vector<std::string> &arguments : {std::vector<std::string>{},
                                                    {"polish"},
                                                    {"predict"},
                                                    {"predict", "bush.toml", "--thread", "2"},
                                                    {"predict", "bush.toml", "--threads", "-1"},
                                                    {"predict", "bush.toml", "--threads", "many"},
                                                    {"check", "bush.toml", "extra"}}) {
    const Ran ran = run(arguments);
    EXPECT_EQ(ran.status, 2);
    EXPECT_FALSE(ran.err.empty());
  }
}

TEST_F(CommandLine, CheckSaysThatAGoodJobCanBeRead) {
  const Ran ran = run({"check", "bush.toml"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_TRUE(holds(ran.out, "bush.toml: job and program can be read; 17 lines"));
}

TEST_F(WrongInput, AMissingJobIsNamedWithARemedy) {
  for (const char *command : {"check", "predict"}) {
    const Ran ran = run({command, "bosh.toml"});
    EXPECT_EQ(ran.status, 2);
    EXPECT_TRUE(holds(ran.err, "bosh.toml: error: ")) << ran.err;
    EXPECT_TRUE(holds(ran.err, "\n  ")) << "a remedy is indented below";
    EXPECT_EQ(ran.out, "");
  }
}

TEST_F(WrongInput, AFolderIsNoJob) {
  const Ran ran = run({"check", "."});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "folder"));
}

TEST_F(WrongInput, EveryWrongKeyIsShownWithItsLine) {
  std::string text = job();
  text.replace(text.find("flutes = 2"), 10, "flutes = 0");
  text.replace(text.find("shape = \"cylinder\""), 18, "shape = \"cylindre\"");
  write("bush.toml", text);
  const Ran ran = run({"check", "bush.toml"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "bush.toml:14:")) << ran.err;
  EXPECT_TRUE(holds(ran.err, "bush.toml:20:")) << ran.err;
}

TEST_F(WrongInput, BrokenTomlIsShownWithItsPlace) {
  write("bush.toml", "title = \"Bell-crank bush\"\nprogram = \n");
  const Ran ran = run({"predict", "bush.toml"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "bush.toml:2:")) << ran.err;
}

TEST_F(WrongInput, AWrongProgramLineIsShownWithItsPlace) {
  std::string text = program();
  text.replace(text.find("G2 X13 Y0"), 9, "G2 X14 Y0"); // line 9: radii of begin and end differ
  write("bush.ngc", text.insert(text.find("M5"), "G1 X\n"));
  for (const char *command : {"check", "predict"}) {
    const Ran ran = run({command, "bush.toml"});
    EXPECT_EQ(ran.status, 2);
    EXPECT_TRUE(holds(ran.err, "bush.ngc:16:")) << ran.err;
    EXPECT_TRUE(holds(ran.err, "bush.ngc:9:")) << ran.err;
  }
}

TEST_F(WrongInput, AMissingProgramIsNamed) {
  std::filesystem::remove(folder() / "bush.ngc");
  const Ran ran = run({"predict", "bush.toml"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "bush.ngc")) << ran.err;
}

TEST_F(WrongInput, WordsOfAFileCannotSteerTheTerminal) {
  write("bush.ngc", "G1 X\x1b[2J\n");
  EXPECT_FALSE(holds(run({"check", "bush.toml"}).err, "\x1b"));
}

TEST_F(WrongInput, PlacesThatCannotBeWrittenAreToldBeforeTheWork) {
  write("occupied", "");
  const Ran file = run({"predict", "bush.toml", "--out", "occupied"});
  EXPECT_EQ(file.status, 2);
  EXPECT_TRUE(holds(file.err, "occupied is a file")) << file.err;
  const Ran below_file = run({"predict", "bush.toml", "--out", "occupied/below"});
  EXPECT_EQ(below_file.status, 2);
  const Ran nowhere = run({"predict", "bush.toml", "--json", "nowhere/p.json"});
  EXPECT_EQ(nowhere.status, 2);
  EXPECT_TRUE(holds(nowhere.err, "there is no folder nowhere")) << nowhere.err;
  const Ran folder_for_file = run({"predict", "bush.toml", "--json", "."});
  EXPECT_EQ(folder_for_file.status, 2);
  for (const Ran &ran : {file, below_file, nowhere, folder_for_file})
    EXPECT_EQ(ran.out, "") << "nothing may be predicted first";
}

TEST_F(WrongInput, AFolderWithoutTheRightToWriteIsTold) {
  if (::geteuid() == 0)
    GTEST_SKIP() << "root may write everywhere";
  std::filesystem::permissions(folder(),
                               std::filesystem::perms::owner_read | std::filesystem::perms::owner_exec);
  EXPECT_EQ(run({"predict", "bush.toml", "--out", "results"}).status, 2);
  std::filesystem::permissions(folder(), std::filesystem::perms::owner_all);
}

} // namespace asperity::test_support
