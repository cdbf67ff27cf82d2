// Strokes put one after the other.
#include "asperity/passes/route.h"

#include <cmath>
#include <utility>

namespace asperity {

namespace {

/// A stroke shorter than this is none [mm].
constexpr double kNoLength_mm = 1e-9;
/// An arc shorter than this is written as a line: its rounded ends could meet and make a full circle [mm].
constexpr double kShortestArc_mm = 0.005;

} // namespace

OutlineElement PassStroke::plan_view() const {
  return {plan(begin), plan(end), centre, kind == StrokeKind::arc ? sweep_rad : 0.0};
}

double PassStroke::length_mm() const {
  return moves() ? std::hypot(plan_view().length_mm(), end.z - begin.z) : 0.0;
}

Vec3 PassStroke::point(double share) const {
  const OutlineElement view = plan_view();
  return {view.point(share * view.length_mm()), begin.z + share * (end.z - begin.z)};
}

void Route::note(std::string text) {
  PassStroke stroke;
  stroke.kind = StrokeKind::note;
  stroke.begin = stroke.end = at_;
  stroke.note = std::move(text);
  strokes_.push_back(std::move(stroke));
}

void Route::change_cutter(int cutter, double rpm) {
  PassStroke stroke;
  stroke.kind = StrokeKind::cutter_change;
  stroke.begin = stroke.end = at_;
  stroke.cutter = cutter;
  stroke.rpm = rpm;
  strokes_.push_back(std::move(stroke));
}

void Route::rapid_to(Vec3 end) {
  if (glm::distance(end, at_) < kNoLength_mm)
    return;
  PassStroke stroke;
  stroke.kind = StrokeKind::rapid;
  stroke.begin = at_;
  stroke.end = at_ = end;
  strokes_.push_back(std::move(stroke));
}

void Route::line_to(Vec3 end, double feed_mm_per_min) {
  if (glm::distance(end, at_) < kNoLength_mm)
    return;
  PassStroke stroke;
  stroke.begin = at_;
  stroke.end = at_ = end;
  stroke.feed_mm_per_min = feed_mm_per_min;
  strokes_.push_back(std::move(stroke));
}

void Route::arc_to(Vec3 end, Vec2 centre, double sweep_rad, double feed_mm_per_min) {
  if (std::abs(sweep_rad) * glm::distance(plan(end), centre) < kShortestArc_mm)
    return line_to(end, feed_mm_per_min);
  PassStroke stroke;
  stroke.kind = StrokeKind::arc;
  stroke.begin = at_;
  stroke.end = at_ = end;
  stroke.centre = centre;
  stroke.sweep_rad = sweep_rad;
  stroke.feed_mm_per_min = feed_mm_per_min;
  strokes_.push_back(std::move(stroke));
}

void Route::follow_arc(const OutlineElement &arc, double z_end_mm, double feed_mm_per_min, double chord_mm) {
  if (chord_mm <= 0.0)
    return arc_to({arc.end, z_end_mm}, arc.centre, arc.sweep_rad, feed_mm_per_min);
  const double z_begin_mm = at_.z, length_mm = arc.length_mm();
  const auto chords = static_cast<int>(std::ceil(length_mm / chord_mm * (1.0 - 1e-12)));
  for (int i = 1; i < chords; ++i)
    line_to({arc.point(length_mm * i / chords), z_begin_mm + (z_end_mm - z_begin_mm) * i / chords},
            feed_mm_per_min);
  line_to({arc.end, z_end_mm}, feed_mm_per_min);
}

void Route::follow(std::span<const OutlineElement> elements, double z_end_mm, double feed_mm_per_min,
                   double chord_mm) {
  double length_mm = 0.0, done_mm = 0.0;
  for (const OutlineElement &element : elements)
    length_mm += element.length_mm();
  const double z_begin_mm = at_.z;
  for (const OutlineElement &element : elements) {
    done_mm += element.length_mm();
    const double z_mm =
        &element == &elements.back() ? z_end_mm : z_begin_mm + (z_end_mm - z_begin_mm) * done_mm / length_mm;
    if (element.is_arc())
      follow_arc(element, z_mm, feed_mm_per_min, chord_mm);
    else
      line_to({element.end, z_mm}, feed_mm_per_min);
  }
}

} // namespace asperity
