// A controller program as the machine would run it: moves in program coordinates, each with its line.
#pragma once

#include "asperity/base/large_array.h"
#include "asperity/base/problem.h"
#include "asperity/shape/curve.h"

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace asperity {

enum class MoveKind : std::uint8_t { rapid, feed, dwell };
enum class PathControl : std::uint8_t { exact_path, exact_stop, blend };
enum class SpindleTurn : std::uint8_t { off, clockwise, counter_clockwise };

/// One move of the cutter tip's control point. Positions: mm, in the G54 frame (program zero of the first
/// offset), tool length offset taken out, so that Z is the tip's height.
struct Move {
  Curve curve;                ///< dwell: begin == end
  double feed_mm_per_min = 0; ///< rapid: 0. Inverse-time and per-rev feeds already turned into mm/min
  double dwell_s = 0;
  double spindle_rpm = 0;
  double blend_tolerance_mm = -1; ///< with PathControl::blend; negative = no P given
  std::uint32_t line = 0;         ///< from 1
  std::uint16_t tool = 0;
  MoveKind kind = MoveKind::rapid;
  PathControl control = PathControl::exact_path;
  SpindleTurn turn = SpindleTurn::off;
  bool in_canned_cycle = false;
};

struct Program {
  std::filesystem::path file;
  LargeArray<Move> moves;
  std::vector<std::string> messages; ///< (MSG, ...) comments
  std::size_t line_count = 0;
};

/// Where it came from and what it says beside its moves.
Program without_moves(const Program &program);

struct ReadOptions {
  bool start_in_inch = false;
  bool block_delete = false;
  /// Hold the program to NISTIR 6556 to the letter. Otherwise what real files do against it (radii of an arc
  /// that differ by rounding, a missing M2, program numbers, long line numbers, ...) is taken with a warning.
  bool strict = false;
  /// Tool length offsets by H number [mm]. Empty: all taken as 0, with a warning.
  std::map<int, double> length_offset_mm;
  /// Tools that exist; empty = any.
  std::vector<int> tools;
  /// Where the tip stands at the start and where G28/G30 go, unless the program's parameters #5161.., #5181..
  /// say otherwise (G54 frame).
  Vec3 home_mm{0.0, 0.0, 50.0};
};

/// The first move starts at ReadOptions::home_mm (at the place that a G92 before any move gives). The G54
/// frame is that of the first move: moving G54 later moves the path in it. Moves of no length are left out.
/// On errors the moves read so far are returned all the same.
Program read_program(const std::filesystem::path &file, const ReadOptions &options, Problems &problems);
/// The same for text at hand; `file` is used in problems only.
Program read_program_text(std::string_view text, const std::filesystem::path &file,
                          const ReadOptions &options, Problems &problems);

} // namespace asperity
