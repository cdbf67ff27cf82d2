// Conversions against the definitions of the units.
#include "asperity/base/units.h"

#include "asperity/base/vec.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

// The inch is 25.4 mm exactly (international yard and pound agreement of 1959).
TEST(Units, AnInchIsDefinedAs25Point4Millimetres) { EXPECT_DOUBLE_EQ(mm_from_inch(1.0), 25.4); }

TEST(Units, ConversionsUndoEachOther) {
  EXPECT_DOUBLE_EQ(mm_per_min_from_mm_per_s(mm_per_s_from_mm_per_min(1234.5)), 1234.5);
  EXPECT_DOUBLE_EQ(mm_from_um(um_from_mm(0.0321)), 0.0321);
  EXPECT_DOUBLE_EQ(deg_from_rad(rad_from_deg(77.0)), 77.0);
  EXPECT_DOUBLE_EQ(rev_per_s_from_rpm(18000.0), 300.0);
}

TEST(Vec, LeftOfTurnsByAQuarterCounterClockwise) {
  EXPECT_EQ(left_of(Vec2(1, 0)), Vec2(0, 1));
  EXPECT_GT(cross(Vec2(2, 1), left_of(Vec2(2, 1))), 0.0);
}

} // namespace
} // namespace asperity
