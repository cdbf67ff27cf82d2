// The decision sheet: one HTML file that needs nothing else, for people who have never seen the program.
#pragma once

#include "asperity/compare/comparison.h"
#include "asperity/sheet/digest.h"
#include "asperity/sheet/part_picture.h"

#include <span>
#include <string>
#include <vector>

namespace asperity {

struct SheetInput {
  std::span<const Outcome *const> outcomes; ///< one or more, as compared
  const Comparison &comparison;
  const PartPictures &pictures;
  std::vector<std::vector<InputFile>> files; ///< of each plan
  std::string title;                         ///< empty = what the jobs' titles share
  std::string version, date, command;        ///< as they shall stand at the foot
  int draws = 0;                             ///< 0 = uncertainty not asked for
};

/// UTF-8. Nothing is loaded from anywhere: a content security policy forbids it, and style and script are
/// admitted by their SHA-256. Every number of the table carries data-number (id), data-plan (letter) and
/// data-value (all digits); what is read beside it is that value in the style of its unit. All of the user's
/// own words are escaped.
std::string sheet_html(const SheetInput &input);

} // namespace asperity
