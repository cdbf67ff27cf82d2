// A lip as measured, before it is put into words.
#pragma once

#include "found.h"

namespace asperity {

/// The lip round one wall. Heights above the wall's bottom [mm].
struct BaseLip {
  std::size_t column = 0;                          ///< where it is highest
  double height_mm = 0;                            ///< up to clean wall
  double least_height_mm = 0;                      ///< where it is lowest
  double unreached_mm = 0;                         ///< part of the height no pass reaches
  double stands_out_mm = 0;                        ///< beyond the cut wall above, at `column`
  double cutter_corner_mm = 0;                     ///< corner radius of the cutter that made the wall above
  double share = 0;                                ///< of the outline, 0..1
  std::size_t stretches = 0;                       ///< separate stretches round the outline
  std::size_t stretch_first = 0, stretch_last = 0; ///< columns of the longest one
  double deepest_tip_z_mm = 0;                     ///< part frame
};

/// Wall bottom rests on a wanted floor, so that no pass may go below it.
bool stands_on_floor(const Job &job, const WallFeature &wall);

std::string lip_where(const WallFeature &wall, const WallChart &chart, const BaseLip &lip);
std::string lip_cause(const BaseLip &lip);
std::string lip_remedy(const Job &job, const WallFeature &wall, const BaseLip &lip);

} // namespace asperity
