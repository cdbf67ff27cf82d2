// A hand-made outcome of a line sheave's rim, for tests of everything that shows outcomes.
#pragma once

#include "asperity/predict/outcome.h"

namespace asperity::test_support {

inline constexpr double kRimDiameter_mm = 62.0;
inline constexpr double kRimTop_mm = 14.0;
inline constexpr double kLip_mm = 0.6;         ///< height of the uncut lip at the base
inline constexpr double kSteady_um = 8.0;      ///< residual of the even wall
inline constexpr double kLevelStep_um = 2.0;   ///< every other level stands this much higher
inline constexpr double kGrooveDepth_um = 6.0; ///< of the witness groove at s = 0, on every level
inline constexpr double kGrooveWidth_mm = 0.6;

/// The rim unrolled: four levels, a witness groove at s = 0 and a lip at the base.
WallChart rim_chart(double spacing_mm);

/// Job, checks, findings and chart of the rim: one wanted value met, one missed, one danger.
Outcome rim_outcome(double spacing_mm = 0.2);

} // namespace asperity::test_support
