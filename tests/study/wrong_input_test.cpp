// Wrong inputs of `asperity study`: each has its message, status 2, and leaves no file.
#include "study/study_workshop.h"

namespace asperity::test_support {

namespace {

using WrongStudy = StudyWorkshop;
using Arguments = std::vector<std::string>;

struct Case {
  Arguments arguments;
  const char *message;
};

} // namespace

TEST_F(WrongStudy, EveryMistakeHasItsMessage) {
  const Arguments inputs = files();
  const std::string z = "setup.z_zero_error_mm=0,0.1";
  for (const Case &c : {
           Case{{"study"}, "no job file is given"},
           Case{{"study", "bush.toml"}, "nothing is varied"},
           Case{{"study", "none.toml", "--vary", z}, "cannot open the file"},
           Case{{"study", "bush.toml", "--vary", "setup.z_zero_error_mm"}, "there is no ="},
           Case{{"study", "bush.toml", "--vary", "setup.z_zero_error_mm="}, "a value is missing"},
           Case{{"study", "bush.toml", "--vary", "setup.z_zero_error_mm=0,0"}, "twice"},
           Case{{"study", "bush.toml", "--vary", "setup.z_zero_error_mm=0:1:0"}, "never comes"},
           Case{{"study", "bush.toml", "--vary", z, "--vary", z}, "varied twice"},
           Case{{"study", "bush.toml", "--vary", "setup.z_zero_eror_mm=0,0.1"}, "z_zero_eror_mm"},
           Case{{"study", "bush.toml", "--vary", "cutter.2.runout_mm=0,0.1"}, "cutter has 1 item"},
           Case{{"study", "bush.toml", "--vary", "setup.z_zero_error_mm=high,low"}, "number"},
           Case{{"study", "bush.toml", "--vary", "cutter.1.diameter_mm=-1,-2"}, "diameter_mm"},
           Case{{"study", "bush.toml", "--vary", "program=a.ngc,b.ngc"}, "a.ngc"},
           Case{{"study", "bush.toml", "--vary", "a.x=1:999:1", "--vary", "b.y=1:999:1"}, "more than 100000"},
           Case{{"study", "bush.toml", "--vary", z, "--part", "3/2"}, "no part of a study"},
           Case{{"study", "bush.toml", "--vary", z, "--threads", "-1"}, "--threads"},
           Case{{"study", "bush.toml", "--vary", z, "--results", "no/s.db"},
                "check that the folder is there"},
           Case{{"study", "bush.toml", "--vary", z, "--results", "."}, "is a folder"},
           Case{{"study", "bush.toml", "--vary", z, "--results", "bush.ngc"}, "not a study's file"},
           Case{{"study", "bush.toml", "--vary", z, "--csv", "no/s.csv"}, "there is no folder no"},
           Case{{"study", "bush.toml", "--vary", z, "--out", "bush.ngc"}, "is a file"},
           Case{{"study", "bush.toml", "--sweep", z}, "--sweep"},
           Case{{"study", "show"}, "results"},
           Case{{"study", "show", "none.db"}, "there is no file none.db"},
           Case{{"study", "show", "bush.toml"}, "not a study's file"},
           Case{{"study", "best", "none.db"}, "there is no file none.db"},
           Case{{"study", "merge", "all.db"}, "parts"},
           Case{{"study", "merge", "bush.toml", "none.db"}, "is there already"},
           Case{{"study", "merge", "all.db", "none.db"}, "there is no file none.db"},
       }) {
    const Ran ran = run(c.arguments);
    EXPECT_EQ(ran.status, 2) << c.message << ran.out;
    EXPECT_TRUE(holds(ran.err, c.message)) << c.message << "\n" << ran.err;
    EXPECT_EQ(files(), inputs) << c.message;
  }
}

TEST_F(WrongStudy, ChangedInputsDoNotGoOnInTheOldFile) {
  ASSERT_LE(run(study()).status, 1);
  const std::string before = read("s.db");
  write("slow.ngc", read("slow.ngc") + "(a note)\n");
  const Ran program = run(study());
  EXPECT_EQ(program.status, 2);
  EXPECT_TRUE(holds(program.err, "changed since: slow.ngc. Give --results another name")) << program.err;
  write("bush.toml", read("bush.toml") + "# a note\n");
  EXPECT_TRUE(holds(run(study()).err, "the job file, slow.ngc"));
  EXPECT_TRUE(holds(run(study({"--vary", "machine.tram_deg=0,1"})).err, "the varied values"));
  EXPECT_EQ(read("s.db"), before);
}

TEST_F(WrongStudy, UnknownNumbersAreRefusedAndTheResultsKept) {
  const Ran ran = run(study({"--up", "rim/depth"}));
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "no result is called rim/depth: choose from time_s")) << ran.err;
  EXPECT_TRUE(holds(ran.err, "all results are kept in s.db"));
  const Ran limit = run({"study", "best", "s.db", "--at-most", "rim/depth=3"});
  EXPECT_EQ(limit.status, 2);
  EXPECT_TRUE(holds(limit.err, "no result is called rim/depth")) << limit.err;
  EXPECT_TRUE(
      holds(run({"study", "best", "s.db", "--at-most", "time_s"}).err, "not a result, = and a number"));
  const Ran there = run({"study", "best", "s.db", "--write-job", "bush.toml", "--nearest"});
  EXPECT_EQ(there.status, 2);
  EXPECT_TRUE(holds(there.err, "is there already")) << there.err;
}

} // namespace asperity::test_support
