// How many times the strength exceeds the load at the worst moment of the cut.
#pragma once

#include "asperity/predict/outcome.h"

#include <optional>

namespace asperity {

/// Break stress over bending stress at the grip, tooth pulses and a square corner counted; nothing where
/// grip, section or break stress is not known, or nothing loads the blank.
std::optional<double> break_margin(const Job &job, const CutRecord &cut);

/// Holding force over side force; nothing where clamping force or friction is not known.
std::optional<double> slip_margin(const Job &job, const CutRecord &cut);

} // namespace asperity
