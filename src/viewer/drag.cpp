// What dragging does.
#include "drag.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kTurn_rad_per_px = kPi / 360.0;
constexpr double kZoomStep = 0.8;

} // namespace

Camera orbited(const Camera &camera, double right_px, double down_px) {
  return turned(camera, -right_px * kTurn_rad_per_px, down_px * kTurn_rad_per_px);
}

Lamp dragged(Lamp lamp, double right_px, double down_px) {
  lamp.azimuth_rad = std::remainder(lamp.azimuth_rad + right_px * kTurn_rad_per_px, 2.0 * kPi);
  lamp.elevation_rad = std::clamp(lamp.elevation_rad - 0.5 * down_px * kTurn_rad_per_px, rad_from_deg(1.0),
                                  rad_from_deg(89.0));
  return lamp;
}

double zoom_factor(double wheel) { return std::pow(kZoomStep, wheel); }

SheetView stretched(SheetView view, double wheel) {
  view.up_stretch /= std::pow(kZoomStep, wheel);
  return view;
}

} // namespace asperity
