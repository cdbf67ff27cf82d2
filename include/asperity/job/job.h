// One job: part, blank, cutters, machine, hold-down, set-up, program, and what is wanted of it.
#pragma once

#include "asperity/base/problem.h"
#include "asperity/job/blank.h"
#include "asperity/job/cutter.h"
#include "asperity/job/feature.h"
#include "asperity/job/holding.h"
#include "asperity/job/machine.h"
#include "asperity/job/material.h"
#include "asperity/job/pass.h"
#include "asperity/job/uncertainty.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace asperity {

/// Program zero and its errors. Tool position in the part frame = program position + program_zero + errors.
struct Setup {
  Vec3 program_zero_mm{0.0};  ///< where program (0,0,0) of G54 lies in the part frame
  double z_zero_error_mm = 0; ///< positive: the cutter runs higher than believed
  Vec2 xy_zero_error_mm{0.0};
  bool program_unit_inch = false; ///< unit in force before the first G20/G21
  bool block_delete = false;      ///< skip lines that begin with /
};

/// Every effect can be switched off so that another can be seen alone.
struct Effects {
  bool zero_error = true;
  bool diameter_error = true;
  bool runout = true;
  bool backlash = true;
  bool acceleration = true; ///< off: programmed feed everywhere
  bool blending = true;     ///< G64 rounds corners
  bool cutter_bending = true;
  bool machine_bending = true;
  bool blank_bending = true;
  bool edge_force = true;
};

struct Resolution {
  std::optional<double> wall_spacing_mm; ///< along and up the wall; nothing = automatic
  std::optional<double> floor_spacing_mm;
};

struct Job {
  std::filesystem::path file;
  std::string title;
  std::filesystem::path program;   ///< absolute or relative to the job file, resolved; empty with passes
  std::vector<PlannedPass> passes; ///< planned instead of a program
  BetweenPasses between_passes;
  Material material;
  Machine machine;
  std::vector<Cutter> cutters;
  Blank blank;
  std::vector<Feature> features;
  HoldDown holding;
  Setup setup;
  Effects effects;
  Resolution resolution;
  Uncertainty uncertainty;
  std::vector<std::filesystem::path> included; ///< files whose values were taken in
  /// Keys the user left to their defaults, as "machine.stiffness_xy_N_per_um = 0.5 (source)": shown in the
  /// output.
  std::vector<std::string> defaults_used;

  const Cutter *cutter(int number) const;
};

/// Reads and checks a TOML job. All problems are collected; nothing is returned if any is an error.
std::optional<Job> read_job(const std::filesystem::path &file, Problems &problems);

} // namespace asperity
