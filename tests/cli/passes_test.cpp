// `asperity passes`: the program written, the summary, and what happens when a plan cannot be.
#include "cli/workshop.h"

namespace asperity::test_support {

namespace {

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

constexpr const char *kPass = R"toml([[pass]]
name = "outer side"
kind = "wall"
surface = "outer side"
cutter = 1
rpm = 18000
feed_mm_per_min = 1500
plunge_feed_mm_per_min = 300
stepdown_mm = 2.0
entry = "plunge"
)toml";

} // namespace

class PassesCommand : public Workshop {
protected:
  void SetUp() override {
    Workshop::SetUp();
    std::string text = job("{ plus = 0.2, minus = 0.2 }", kPass);
    text.erase(text.find("program = "), text.find("\n\n[material]") - text.find("program = "));
    write("planned.toml", text);
  }
};

TEST_F(PassesCommand, WritesAProgramThatTheControllerOfTheJobReads) {
  const Ran ran = run({"passes", "planned.toml", "-o", "bush-planned.ngc"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  for (const char *words :
       {"outer side", "levels", "mm of feed moves", "Written", "bush-planned.ngc", "eye protection"})
    EXPECT_TRUE(holds(ran.out, words)) << words << '\n' << ran.out;
  EXPECT_TRUE(holds(read("bush-planned.ngc"), "M30"));
  // The same job with the written program.
  std::string text = job();
  text.replace(text.find("bush.ngc"), 8, "bush-planned.ngc");
  write("again.toml", text);
  EXPECT_EQ(run({"check", "again.toml"}).status, 0);
  EXPECT_EQ(run({"check", "planned.toml"}).status, 0);
}

TEST_F(PassesCommand, WithoutAFileItOnlySumsUp) {
  const auto before = files();
  const Ran ran = run({"passes", "planned.toml"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_FALSE(holds(ran.out, "Written"));
  EXPECT_EQ(files(), before);
}

TEST_F(PassesCommand, HelpNamesItsOption) {
  const Ran ran = run({"passes", "--help"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_TRUE(holds(ran.out, "--output"));
}

TEST_F(PassesCommand, AJobWithAProgramHasNothingToPlan) {
  const Ran ran = run({"passes", "bush.toml", "-o", "x.ngc"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "brings its own program")) << ran.err;
  EXPECT_FALSE(std::filesystem::exists(folder() / "x.ngc"));
}

TEST_F(PassesCommand, APassThatCannotBeIsToldAtItsPlaceAndNothingIsWritten) {
  std::string text = read("planned.toml");
  text.replace(text.find("entry = \"plunge\""), 16,
               "entry = \"arc\"\nlead_radius_mm = 0.5\n"
               "overlap_mm = 1\nallowance_mm = 90");
  write("planned.toml", text + "finish = { feed_mm_per_min = -1 }\n");
  const Ran ran = run({"passes", "planned.toml", "-o", "x.ngc"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "planned.toml:")) << ran.err;
  EXPECT_FALSE(std::filesystem::exists(folder() / "x.ngc"));
}

TEST_F(PassesCommand, APlaceThatCannotBeWrittenIsTold) {
  const Ran ran = run({"passes", "planned.toml", "-o", "nowhere/x.ngc"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "nowhere")) << ran.err;
  EXPECT_EQ(ran.out, "");
}

} // namespace asperity::test_support
