// The way of the cutter as it is planned, before it becomes program text. Part frame, mm, mm/min.
#pragma once

#include "asperity/base/vec.h"
#include "asperity/shape/outline.h"

#include <limits>
#include <span>
#include <string>
#include <vector>

namespace asperity {

enum class StrokeKind { rapid, line, arc, note, cutter_change };

struct PassStroke {
  StrokeKind kind = StrokeKind::line;
  Vec3 begin{0.0}, end{0.0};
  Vec2 centre{0.0};     ///< arc
  double sweep_rad = 0; ///< arc: > 0 counter-clockwise from above; z changes evenly along it
  double feed_mm_per_min = 0;
  std::string note;
  int cutter = 0; ///< cutter_change
  double rpm = 0;

  bool moves() const { return kind == StrokeKind::rapid || cuts(); }
  bool cuts() const { return kind == StrokeKind::line || kind == StrokeKind::arc; }
  double length_mm() const;
  /// Plan view.
  OutlineElement plan_view() const;
  Vec3 point(double share) const;
};

/// Strokes in order, each beginning where the one before ended.
class Route {
public:
  const std::vector<PassStroke> &strokes() const { return strokes_; }
  Vec3 at() const { return at_; }
  Vec2 plan_at() const { return plan(at_); }

  void note(std::string text);
  void change_cutter(int cutter, double rpm);
  void rapid_to(Vec3 end);
  /// Straight up or down by a rapid; the only stroke allowed before the plan position is known.
  void rapid_to_height(double z_mm) { rapid_to({at_.x, at_.y, z_mm}); }
  void line_to(Vec3 end, double feed_mm_per_min);
  void arc_to(Vec3 end, Vec2 centre, double sweep_rad, double feed_mm_per_min);
  /// Along the elements, which begin here, with z changing evenly to z_end. chord_mm > 0: arcs as chords.
  void follow(std::span<const OutlineElement> elements, double z_end_mm, double feed_mm_per_min,
              double chord_mm = 0.0);

private:
  void follow_arc(const OutlineElement &arc, double z_end_mm, double feed_mm_per_min, double chord_mm);

  std::vector<PassStroke> strokes_;
  Vec3 at_{std::numeric_limits<double>::quiet_NaN()}; ///< not known before the first strokes
};

} // namespace asperity
