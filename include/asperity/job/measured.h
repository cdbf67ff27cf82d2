// What was measured after a cut and at the machine, each with its uncertainty.
#pragma once

#include "asperity/base/problem.h"
#include "asperity/job/job.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace asperity {

enum class ReadingKind {
  part,      ///< a number of the cut part, as the prediction names it
  pull,      ///< spindle nose pulled sideways by a spring scale: how far it moves [um]
  indicator, ///< runout of a cutter, total indicator reading [mm]
  gauge      ///< diameter of a cutter [mm]
};

struct Reading {
  ReadingKind kind = ReadingKind::part;
  std::string number;  ///< part: "rim/diameter_mm"
  int cutter = 0;      ///< indicator and gauge
  double force_N = 0;  ///< pull
  double value = 0;    ///< in the unit of its kind or number
  double expanded = 0; ///< expanded uncertainty, coverage factor 2, same unit
  int line = 0;        ///< in the file

  std::string what() const; ///< in words
};

/// A value to be fitted: "stiffness_share", "cutter 1 runout_share".
struct FitWanted {
  std::string key; ///< without the cutter
  int cutter = 0;  ///< 0 = not of a cutter
};

struct Measured {
  std::filesystem::path file;
  std::vector<FitWanted> fit;
  std::vector<Reading> readings;
};

/// `job`: its surfaces and cutters are what readings may be of. All problems are collected.
std::optional<Measured> read_measured(const std::filesystem::path &file, const Job &job, Problems &problems);

} // namespace asperity
