// A study as a table for other programs.
#pragma once

#include "asperity/study/trial.h"

#include <string>

namespace asperity {

/// Lines beginning with '#' say what it is; then a head line and a row a trial, in the order of the
/// combinations, whatever the order they were predicted in. Cells with commas or quotes are quoted
/// (RFC 4180); numbers are the shortest decimals that read back to the same bits; lines end with a line feed.
std::string study_csv_text(const StudyResults &results);

} // namespace asperity
