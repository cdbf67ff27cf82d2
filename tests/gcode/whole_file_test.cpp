// Whole files: a million lines, files on disk, and text that is no program at all.
#include "reading.h"

#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <iterator>
#include <random>

namespace asperity::gcode {
namespace {

constexpr int kManyLines = 1'000'000;

/// Where line i of the long program goes: never twice running to the same place.
Vec2 place_of(int i) { return {(i % 2000) * 0.125, (i / 2000) * 0.25}; }

TEST(WholeFile, MillionLinesKeepTheirLinesAndPlaces) {
  std::string text = metric("");
  text.resize(text.size() - 3); // before its M2
  const auto head_lines = static_cast<std::uint32_t>(std::count(text.begin(), text.end(), '\n'));
  text += "G1 Z-1\n";
  for (int i = 1; i <= kManyLines; ++i)
    fmt::format_to(std::back_inserter(text), "X{:.3f} Y{:.3f}\n", place_of(i).x, place_of(i).y);
  const Reading reading = read_good(text + "M2\n");
  ASSERT_EQ(reading.moves().size(), static_cast<std::size_t>(kManyLines) + 1);
  for (int i = 1; i <= kManyLines; i += 9973) {
    const Move &move = reading.moves()[static_cast<std::size_t>(i)];
    ASSERT_EQ(plan(move.curve.end), place_of(i)) << i;
    ASSERT_EQ(move.line, head_lines + 1 + static_cast<std::uint32_t>(i));
  }
  EXPECT_EQ(plan(reading.moves().back().curve.end), place_of(kManyLines));
  // Memory in proportion: no more than one spare move for each one kept.
  EXPECT_LE(reading.moves().capacity(), 2 * reading.moves().size());
}

// A file of short or empty lines must not reserve a move for each.
TEST(WholeFile, EmptyLinesCostNoMoves) {
  const Reading reading = read_good(metric("G0 X1" + std::string(1'000'000, '\n')));
  EXPECT_EQ(reading.moves().size(), 1u);
  EXPECT_LE(reading.moves().capacity(), 130'000u); // one for each 8 characters
}

TEST(WholeFile, FileOnDiskReadsAsItsText) {
  const std::filesystem::path file = std::filesystem::temp_directory_path() / "asperity_gcode_test_bush.nc";
  std::ofstream(file, std::ios::binary) << metric("G0 X1\r\nG1 Y2");
  Problems problems;
  const Program program = read_program(file, {}, problems);
  std::filesystem::remove(file);
  EXPECT_FALSE(problems.has_errors());
  EXPECT_EQ(program.file, file);
  ASSERT_EQ(program.moves.size(), 2u);
  expect_at(program.moves[1].curve.end, {1, 2, 50});
}

/// Every number a move carries is finite, and the path has no gaps within a tool.
void expect_sound(const Program &program) {
  for (const Move &move : program.moves) {
    for (int axis = 0; axis < 3; ++axis) {
      ASSERT_TRUE(std::isfinite(move.curve.begin[axis]));
      ASSERT_TRUE(std::isfinite(move.curve.end[axis]));
      ASSERT_TRUE(std::isfinite(move.curve.centre[axis]));
    }
    ASSERT_TRUE(std::isfinite(move.curve.length_mm()));
    ASSERT_TRUE(std::isfinite(move.feed_mm_per_min));
    ASSERT_GE(move.line, 1u);
    ASSERT_LE(move.line, program.line_count);
  }
}

constexpr const char *kSound =
    "%\nO12 (BUSH)\nG21 G90 G17 G54\n#1=2.5 #2=[#1*sin[30]]\nT1 M6\nG43 H1\nS12000 M3\n"
    "G0 X0 Y0 Z5\nG1 Z-1 F300\nG2 X10 Y0 I5 J0 F600\nG3 X0 Y0 R5.0\nG18 G2 X4 Z-1 I2 K0\n"
    "G17\nG83 X1 Y#2 Z-3 R2 Q0.5\nG91 G81 X3 Y2 Z-0.8 R1.5 L2\nG80 G90\nG92 X0\nG55\n"
    "G10 L2 P2 X3\nG4 P0.5\nG93 G1 X3 F2\nG94 F100\nG64 P0.01\n/G20\nG28 X0\nG53 G0 Z0\n"
    "G92.1\n(MSG,done)\nM30\n%\n";

TEST(WholeFile, MutatedProgramsNeverCrash) {
  std::mt19937 random(1906);
  const std::string_view kBits = "GMXYZIJKRPQFSTLHDNO0123456789.-+[]()#=;%/* \n\r\tasincotqrexpmodxorand";
  for (int round = 0; round < 4000; ++round) {
    std::string text = kSound;
    const std::size_t changes = 1 + random() % 12;
    for (std::size_t i = 0; i < changes; ++i) {
      const std::size_t at = random() % text.size();
      const char bit =
          random() % 20 == 0 ? static_cast<char>(random() % 255 + 1) : kBits[random() % kBits.size()];
      if (random() % 3 == 0)
        text.erase(at, 1 + random() % 5);
      else if (random() % 2 == 0)
        text.insert(at, 1, bit);
      else
        text[at] = bit;
    }
    ReadOptions options;
    options.strict = round % 2 == 0;
    ASSERT_NO_FATAL_FAILURE(expect_sound(read(text, options).program)) << text;
  }
}

TEST(WholeFile, RandomBytesNeverCrash) {
  std::mt19937 random(1658);
  for (int round = 0; round < 3000; ++round) {
    std::string text(random() % 400, ' ');
    for (char &c : text)
      c = static_cast<char>(random() % (round % 2 == 0 ? 256 : 96) + (round % 2 == 0 ? 0 : 32));
    const Reading reading = read(text);
    ASSERT_NO_FATAL_FAILURE(expect_sound(reading.program));
    ASSERT_TRUE(reading.problems.has_errors() || !reading.moves().empty());
  }
}

TEST(WholeFile, DeepNestingIsRefusedNotFollowed) {
  for (const char *open : {"[", "#", "sin["}) {
    std::string line = "G1 X";
    for (int i = 0; i < 100'000; ++i)
      line += open;
    EXPECT_TRUE(read(metric(line)).says("nested too deeply")) << open;
  }
}

TEST(WholeFile, HugeRepeatCountsAreRefused) {
  EXPECT_TRUE(read(metric("G81 X1 Z-1 R1 L1000000000")).says("not a whole number from 1 to 1000"));
  EXPECT_TRUE(read(metric("G83 X1 Z-9 R1 Q0.01 L1000")).says("too many pecks"));
}

TEST(WholeFile, ManyErrorsAreCounted) {
  std::string text;
  for (int i = 0; i < 100'000; ++i)
    text += "G1 X?\n";
  const Reading reading = read(metric(text));
  EXPECT_EQ(reading.problems.error_count(), 100'000u);
  EXPECT_EQ(reading.problems.all().size(), Problems::kMost);
}

} // namespace
} // namespace asperity::gcode
