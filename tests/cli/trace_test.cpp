// `asperity trace` as a user runs it: what it prints and writes, and how it refuses.
#include "cli/workshop.h"

#include <sstream>

namespace asperity::test_support {

namespace {

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

const std::vector<std::string> kInputs = {"bush.ngc", "bush.toml"};

std::string job_that_wants(const std::string &text, const std::string &finish) {
  std::string job = text;
  const std::string side = "side = \"outside\"\n";
  return job.replace(job.find(side), side.size(), side + finish + '\n');
}

std::vector<std::string> trace_with(std::vector<std::string> more) {
  std::vector<std::string> all{"trace", "bush.toml", "--feature", "outer side"};
  all.insert(all.end(), more.begin(), more.end());
  return all;
}

struct Columns {
  std::size_t comments = 0, rows = 0;
  double first_mm = 0, last_mm = 0;
};

Columns columns_of(const std::string &csv) {
  Columns columns;
  std::istringstream in(csv);
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with('#')) {
      ++columns.comments;
    } else if (!line.starts_with("position_mm")) {
      columns.last_mm = std::stod(line);
      columns.first_mm = columns.rows++ == 0 ? columns.last_mm : columns.first_mm;
    }
  }
  return columns;
}

} // namespace

using TraceCommand = Workshop;
using WrongTrace = Workshop;

TEST_F(TraceCommand, PrintsEveryNumberWithItsUnitAndWritesNothingUnasked) {
  const Ran ran = run(trace_with({"--along", "s"}));
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_TRUE(ran.out.starts_with("Trace on outer side (wall)\n"));
  for (const char *part : {"z = 2.000 mm",
                           "lc ",
                           "ISO 4288:1996",
                           "sections of",
                           "ISO 21920-2:2021",
                           "\n  Ra ",
                           "\n  Rq ",
                           "\n  Rp ",
                           "\n  Rv ",
                           "\n  Rz ",
                           "\n  Rt ",
                           "\n  Rzx ",
                           "\n  Rsk ",
                           "\n  Rku ",
                           "\n  RSm ",
                           "\n  cusp ",
                           " um ",
                           "With the material",
                           "PETG (printed)",
                           "Program lines that made it\n  line 13 (100%)",
                           "table values"})
    EXPECT_TRUE(holds(ran.out, part)) << part << '\n' << ran.out;
  EXPECT_FALSE(holds(ran.out, "\x1b")) << "no colours into a file";
  EXPECT_EQ(files(), kInputs);
}

TEST_F(TraceCommand, HelpNamesEveryOption) {
  EXPECT_TRUE(holds(run({"--help"}).out, "trace"));
  const Ran ran = run({"trace", "--help"});
  EXPECT_EQ(ran.status, 0);
  for (const char *option : {"JOB.toml", "--feature", "--along", "--at", "--from", "--length", "--cutoff",
                             "--averaging", "--out", "--csv", "--picture", "--threads"})
    EXPECT_TRUE(holds(ran.out, option)) << option;
}

TEST_F(TraceCommand, OutHoldsTableAndPicture) {
  const Ran ran = run(trace_with({"--along", "s", "--out", "results"}));
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_EQ(files(), (std::vector<std::string>{"bush.ngc", "bush.toml", "results/outer-side-along-s.csv",
                                               "results/outer-side-along-s.png"}));
  EXPECT_TRUE(holds(ran.out, "results/outer-side-along-s.csv"));
  EXPECT_TRUE(read("results/outer-side-along-s.png").starts_with("\x89PNG\r\n\x1a\n"));
  const Columns columns = columns_of(read("results/outer-side-along-s.csv"));
  EXPECT_GT(columns.comments, 8u);
  EXPECT_NEAR(columns.last_mm - columns.first_mm, 20.0 * 3.14159265358979, 0.006); // the outline less a point
}

TEST_F(TraceCommand, NamedFilesAreWrittenAndTheStretchIsTheOneAskedFor) {
  const Ran ran = run(trace_with({"--along", "s", "--at", "3", "--from", "10", "--length", "6", "--csv",
                                  "t.csv", "--picture", "t.png"}));
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_EQ(files(), (std::vector<std::string>{"bush.ngc", "bush.toml", "t.csv", "t.png"}));
  constexpr double kPoint_mm = 0.0051; // the first and last point stand half a spacing inside
  const Columns columns = columns_of(read("t.csv"));
  EXPECT_NEAR(columns.first_mm, 10.0, kPoint_mm);
  EXPECT_NEAR(columns.last_mm, 16.0, kPoint_mm);
  EXPECT_TRUE(holds(read("t.csv"), "z = 3.000 mm"));
}

TEST_F(TraceCommand, AWantedRaDecidesTheStatus) {
  write("bush.toml", job_that_wants(job(), "finish = { ra_um = 1.0 }")); // printed PETG adds more by itself
  const Ran missed = run(trace_with({"--along", "s"}));
  EXPECT_EQ(missed.status, 1) << missed.err;
  EXPECT_TRUE(holds(missed.out, "Wanted: Ra at most 1 um, against the band's upper end: NOT MET"))
      << missed.out;
  write("bush.toml", job_that_wants(job(), "finish = { ra_um = 50.0 }"));
  const Ran met = run(trace_with({"--along", "s"}));
  EXPECT_EQ(met.status, 0) << met.err;
  EXPECT_TRUE(holds(met.out, "upper end: met"));
}

TEST_F(TraceCommand, AskedCutoffAndAveragingAreSaid) {
  const Ran ran = run(trace_with({"--along", "s", "--cutoff", "0.25", "--averaging", "iso4287"}));
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_TRUE(holds(ran.out, "lc 0.25 mm, as asked"));
  EXPECT_TRUE(holds(ran.out, "ISO 4287:1997"));
}

TEST_F(TraceCommand, MoreLengthThanTheFeatureHoldsIsReadAsFarAsItGoesAndSaid) {
  const Ran up = run(trace_with({"--along", "z", "--length", "50"}));
  EXPECT_EQ(up.status, 0) << up.err;
  EXPECT_TRUE(holds(up.out, "50 mm were asked for and the feature holds 4 mm")) << up.out;
  EXPECT_TRUE(holds(up.out, "too short for 5 sections")) << up.out;
  const Ran round = run(trace_with({"--along", "s", "--length", "500"}));
  EXPECT_EQ(round.status, 0) << round.err;
  EXPECT_TRUE(holds(round.out, "all round, 62.832 mm")) << round.out;
}

TEST_F(TraceCommand, TheTableDoesNotDependOnTheNumberOfThreads) {
  EXPECT_EQ(run(trace_with({"--along", "s", "--threads", "1", "--csv", "one.csv"})).status, 0);
  EXPECT_EQ(run(trace_with({"--along", "s", "--threads", "3", "--csv", "three.csv"})).status, 0);
  EXPECT_EQ(read("one.csv"), read("three.csv"));
}

TEST_F(TraceCommand, FloorsAreTracedAcross) {
  const std::string floor = "[[floor]]\nname = \"top\"\noutline = \"circle\"\ncentre_mm = [0, 0]\n"
                            "diameter_mm = 20.0\nz_mm = 3.9\n";
  write("bush.toml", job("{ plus = 0.2, minus = 0.2 }", floor));
  const Ran uncut = run({"trace", "bush.toml", "--feature", "top", "--along", "x"});
  EXPECT_EQ(uncut.status, 2);
  EXPECT_TRUE(holds(uncut.err, "no pass cuts the surface along this trace")) << uncut.err;
  std::string text = program();
  write("bush.ngc",
        text.insert(text.find("G0 X16"), "G0 X-16 Y0\nG0 Z5\nG1 Z3.9 F600\nG1 X16 F1200\nG0 Z20\n"));
  const Ran cut = run({"trace", "bush.toml", "--feature", "top", "--along", "x"});
  EXPECT_EQ(cut.status, 0) << cut.err;
  EXPECT_TRUE(holds(cut.out, "along x at y = 0.000 mm, from x = -9.9")) << cut.out;
  EXPECT_TRUE(holds(cut.out, "line 8 (100%)")) << cut.out;
  const Ran wrong = run({"trace", "bush.toml", "--feature", "top", "--along", "z"});
  EXPECT_EQ(wrong.status, 2);
  EXPECT_TRUE(holds(wrong.err, "\"top\" is a floor: give --along x or y")) << wrong.err;
}

TEST_F(WrongTrace, AnUnknownFeatureIsAnsweredWithTheNamesThereAre) {
  const Ran ran = run({"trace", "bush.toml", "--feature", "outside", "--along", "s"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "no feature \"outside\"")) << ran.err;
  EXPECT_TRUE(holds(ran.err, "\"outer side\"")) << ran.err;
  EXPECT_EQ(ran.out, "");
}

TEST_F(WrongTrace, ADirectionThatDoesNotFitIsAnsweredWithThoseThatDo) {
  const Ran ran = run(trace_with({"--along", "x"}));
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "\"outer side\" is a wall: give --along s (round it) or z (up it)")) << ran.err;
}

TEST_F(WrongTrace, ATraceBesideTheFeatureSaysWhereTheFeatureIs) {
  const Ran above = run(trace_with({"--along", "s", "--at", "9", "--out", "results"}));
  EXPECT_EQ(above.status, 2);
  EXPECT_TRUE(holds(above.err, "off the wall, which reaches from 0.000 to 4.000 mm")) << above.err;
  const Ran beyond = run(trace_with({"--along", "z", "--from", "100", "--length", "2"}));
  EXPECT_EQ(beyond.status, 2);
  EXPECT_TRUE(holds(beyond.err, "nothing of the surface lies between")) << beyond.err;
  EXPECT_EQ(above.out + beyond.out, "");
  EXPECT_EQ(files(), kInputs);
}

TEST_F(WrongTrace, NumbersThatMakeNoSenseAreRefusedBeforeTheWork) {
  for (const std::vector<std::string> &more : {std::vector<std::string>{"--cutoff", "0"},
                                               {"--cutoff", "-0.8"},
                                               {"--cutoff", "nan"},
                                               {"--cutoff", "inf"},
                                               {"--cutoff", "0.8mm"},
                                               {"--cutoff", "1e9"},
                                               {"--length", "0"},
                                               {"--length", "nan"},
                                               {"--at", "nan"},
                                               {"--at", "1e300"},
                                               {"--from", "1"},
                                               {"--averaging", "mean"},
                                               {"--along", "s"},
                                               {"--threads", "-1"}}) {
    std::vector<std::string> arguments = trace_with({"--along", "s"});
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Ran ran = run(arguments);
    EXPECT_EQ(ran.status, 2) << more[0] << ' ' << more.back();
    EXPECT_TRUE(holds(ran.err, more[0])) << ran.err;
    EXPECT_EQ(ran.out, "");
  }
  EXPECT_EQ(run(trace_with({"--along", "q"})).status, 2);
  EXPECT_EQ(run(trace_with({})).status, 2) << "a direction is needed";
  EXPECT_EQ(run({"trace", "bush.toml", "--along", "s"}).status, 2) << "a feature is needed";
}

TEST_F(WrongTrace, PlacesThatCannotBeWrittenAreToldBeforeTheWork) {
  const Ran csv = run(trace_with({"--along", "s", "--csv", "nowhere/t.csv"}));
  EXPECT_EQ(csv.status, 2);
  EXPECT_TRUE(holds(csv.err, "give --csv another name")) << csv.err;
  const Ran picture = run(trace_with({"--along", "s", "--picture", "."}));
  EXPECT_EQ(picture.status, 2);
  EXPECT_TRUE(holds(picture.err, "give --picture a file name")) << picture.err;
  EXPECT_EQ(csv.out + picture.out, "");
}

TEST_F(WrongTrace, AWrongJobIsShownAsEverywhere) {
  const Ran ran = run({"trace", "bosh.toml", "--feature", "outer side", "--along", "s"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "bosh.toml: error: ")) << ran.err;
}

} // namespace asperity::test_support
