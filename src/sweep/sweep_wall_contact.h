// Where the wall of a cut touches the moving disc, and which rays of an element that contact meets.
#pragma once

#include "sweep_wall_section.h"
#include "sweep_wall_window.h"

namespace asperity {

/// Unit direction from the disc's centre to its contact on one side (+1 left, -1 right) of its motion: square
/// to the motion, tilted by growth/speed because a growing disc touches behind, held at straight behind or
/// ahead beyond that. Zero when the disc does not move.
Vec2 contact_direction(const Disc &disc, double side);

/// The contact over a section, sampled.
struct ContactPath {
  bool exists = false;
  Vec2 begin{0.0}, end{0.0};
  Vec2 begin_direction{0.0}, end_direction{0.0};
  Vec2 fan{0.0};       ///< contact of the motion before, at the section's begin
  double bow_mm = 0.0; ///< how far the path leaves its chord, generously
  Vec2 centre_begin{0.0}, centre_end{0.0};
  Vec2 heading_begin{0.0},
      heading_end{0.0}; ///< velocity of the commanded curve, which decides the wall's side
  double radius_mm = 0.0;
  double turn_slack =
      1e-6; ///< contacts facing away from the wall by more (a sine) are on the disc's far side

  /// Starts the path at the contact that the motion before had on this disc.
  void set_fan(const Disc &before, double side);
};

ContactPath contact_path(const Section &section, double side, const Disc &begin, const Disc &end);

struct ContactTrack {
  Window window{0.0, -1.0};
  double first_mm = 0, last_mm = 0; ///< positions of the path's begin and end
  double e_least_mm = -1e300;       ///< no contact lies lower
  bool is_plainly_seen =
      false; ///< every ray has its wall on the contact's side of the motion, with room to spare
};

/// Positions on the element that the contact passes at e <= e_most, on the near side of the disc.
ContactTrack track_on(const WallElement &element, const ContactPath &path, double e_most_mm);

} // namespace asperity
