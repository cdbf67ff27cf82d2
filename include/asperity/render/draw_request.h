// What to draw: things, eye, lamp, colours, exaggeration. The renderer's only input beside the outcome.
#pragma once

#include "asperity/render/camera.h"
#include "asperity/render/theme.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace asperity {

/// space: everything at its true place. strip: one feature laid flat (a wall unrolled, its material below
/// the sheet, seen from outside). section: one feature cut through.
enum class View : std::uint8_t { space, strip, section };

/// lamp: as stock looks. The others are false colour under a soft light: residual; program line, piece of
/// path or level that made the cell; a quantity given with Renderer::set_quantity.
enum class Colouring : std::uint8_t { lamp, residual, line, piece, level, quantity };

/// A lamp far away. In space: plan direction and elevation in which it stands, seen from the part; with
/// turns_with_eye the azimuth counts from the eye's (negative: from the left of the picture). On a strip:
/// azimuth in the sheet (0 = from the right, 90 degrees = from above), elevation above the sheet.
struct Lamp {
  double azimuth_rad = rad_from_deg(-80.0);
  double elevation_rad = rad_from_deg(20.0);
  bool turns_with_eye = true;
  double strength = 1.6;
  double ambient = 0.18;  ///< 0..1, light from everywhere
  double highlight = 0.5; ///< 0..1, gloss stretched across the lay
};

inline Lamp strip_lamp() {
  return {.azimuth_rad = rad_from_deg(165.0), .elevation_rad = rad_from_deg(20.0), .turns_with_eye = false};
}

struct Things {
  bool surfaces = true;
  bool rest_of_part = true; ///< what no chart covers: uncut islands, lower face
  bool path = false;
  bool cutter = false; ///< at moment_s
  bool blank = false;  ///< translucent
  bool spoilboard = true;
  bool holding = true; ///< bolts and clamps
  bool marks = true;   ///< findings
};

struct DrawRequest {
  View view = View::space;
  PictureSize size;
  double px_scale = 1.0; ///< lines and marks are drawn so many times wider
  Theme theme = light_theme();
  bool is_light = false; ///< surfaces of fewer triangles, filtered more plainly, for pictures in motion
  Things things;
  std::vector<bool> shows_feature; ///< empty = all
  bool shows_path_kind[4] = {true, true, true, true};

  Camera camera;            ///< space
  SheetView sheet;          ///< strip and section
  int feature = 0;          ///< strip and section
  double section_at_mm = 0; ///< arc length of the wall, y of the floor, where it is cut

  Lamp lamp;
  Colouring colouring = Colouring::lamp;
  std::optional<double> range_low, range_high; ///< of the colours, in the legend's unit; nothing = chosen

  /// Residuals are drawn so many times larger, in shape and in shading; 0 = chosen. Stock left standing keeps
  /// its true size.
  double exaggeration = 0.0;
  /// Nothing is moved farther than this from where it is wanted [mm]; 0 = chosen.
  double farthest_mm = 0.0;

  std::optional<double> moment_s; ///< the path is drawn faint after it
  int chosen_piece = -1;          ///< index into TimedPath::pieces
  int chosen_finding = -1;        ///< index into Outcome::findings
};

inline constexpr double kMostExaggeration = 1000.0;

struct LegendStop {
  double value = 0;
  Rgb colour;
};
struct LegendEntry {
  std::string name;
  Rgb colour;
  double share = 0; ///< of the drawn cells
};

/// What the colours mean. Stops rise in value; entries (program lines, levels) come widest first.
struct Legend {
  std::string title, unit;
  std::vector<LegendStop> stops;           ///< a scale ...
  std::vector<LegendEntry> entries;        ///< ... or named colours
  bool repeats = false;                    ///< more names than colours: a colour may stand for several
  double share_below = 0, share_above = 0; ///< of the drawn cells, beyond the ends of the scale
};

/// Where a finding came to lie in the picture; its number is written by the caller.
struct PlacedMark {
  std::size_t finding = 0;   ///< index into Outcome::findings
  double x_px = 0, y_px = 0; ///< from the upper left corner
  double radius_px = 0;
  bool is_hidden = false; ///< on the far side: drawn faint
};

struct Drawn {
  double exaggeration = 1.0; ///< as used
  Legend legend;
  std::vector<PlacedMark> marks;
};

} // namespace asperity
