// Ranges of numbers that a job file may hold: wide enough for any small machine, narrow enough to catch a
// slip.
#pragma once

#include "key_reader.h"

namespace asperity {

inline constexpr double kMostLength_mm = 10000;
inline constexpr Range kCoordinate_mm{-kMostLength_mm, kMostLength_mm};
inline constexpr Range kLength_mm{0, kMostLength_mm, true};
inline constexpr Range kLengthOrNone_mm{0, kMostLength_mm};
inline constexpr Range kCutterLength_mm{0, 500, true};
inline constexpr Range kCutterLengthOrNone_mm{0, 500};
/// Errors and tolerances: more than this is no error but another size.
inline constexpr Range kSmallError_mm{-20, 20};
inline constexpr Range kTolerance_mm{-100, 100};
/// Steps of planned passes; finer ones only make programs without end.
inline constexpr Range kStep_mm{0.005, kMostLength_mm};
inline constexpr Range kRamp_deg{0.05, 45};
inline constexpr Range kLayer_mm{0, 5};

} // namespace asperity
