// Rings round the places of findings.
#include "mark_pass.h"

#include "asperity/render/scene.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

namespace asperity {

namespace {

constexpr double kRing_px = 9.0;
constexpr double kBesideSection_mm = 1.0; ///< findings no farther from the cut are marked in it
constexpr float kFaint = 0.35f;

struct Ring {
  float x, y, radius, rings, alpha, r, g, b;
};

bool is_shown(const DrawRequest &request, int feature) {
  if (request.view != View::space)
    return feature == request.feature;
  return feature < 0 || request.shows_feature.empty() ||
         (static_cast<std::size_t>(feature) < request.shows_feature.size() &&
          request.shows_feature[static_cast<std::size_t>(feature)]);
}

/// The wall's way out at its column nearest to p.
Vec3 outwards_at(const Outcome &outcome, int feature, Vec2 p) {
  const auto *wall = std::get_if<WallChart>(&outcome.charts[static_cast<std::size_t>(feature)]);
  if (!wall)
    return {0.0, 0.0, 1.0};
  std::size_t best = 0;
  for (std::size_t i = 1; i < wall->columns(); ++i)
    if (glm::length(wall->foot[i] - p) < glm::length(wall->foot[best] - p))
      best = i;
  return wall->columns() > 0 ? Vec3(wall->normal[best], 0.0) : Vec3(0.0, 0.0, 1.0);
}

std::optional<PlacedMark> in_space(const Outcome &outcome, const Finding &finding, const Eye &eye) {
  PlacedMark mark;
  const Vec2 at = eye.pixel_of(finding.place_mm);
  mark.x_px = at.x;
  mark.y_px = at.y;
  if (finding.feature >= 0 && static_cast<std::size_t>(finding.feature) < outcome.charts.size()) {
    const Vec3 to_eye = eye.is_near ? eye.place_mm - finding.place_mm : eye.towards_eye;
    mark.is_hidden = glm::dot(outwards_at(outcome, finding.feature, plan(finding.place_mm)), to_eye) < 0.0;
  }
  return mark;
}

std::optional<PlacedMark> on_sheet(const Outcome &outcome, const Finding &finding,
                                   const DrawRequest &request) {
  const auto feature = static_cast<std::size_t>(request.feature);
  Vec2 place = strip_place_mm(outcome, feature, finding.place_mm);
  if (request.view == View::section) {
    const auto *wall = std::get_if<WallChart>(&outcome.charts[feature]);
    double off = place.y - request.section_at_mm;
    if (wall) {
      const double length = wall->outline.length_mm(), u = wall->inside ? length - place.x : place.x;
      off = std::remainder(u + seam_mm(outcome, feature) - request.section_at_mm, length);
    }
    if (std::abs(off) > kBesideSection_mm)
      return std::nullopt;
    place = wall ? Vec2(0.0, place.y) : Vec2(place.x, 0.0);
  }
  const Vec2 pixel = request.sheet.pixel(place, request.size);
  return PlacedMark{.x_px = pixel.x, .y_px = pixel.y};
}

} // namespace

std::vector<PlacedMark> placed_marks(const Outcome &outcome, const DrawRequest &request, const Eye &eye) {
  std::vector<PlacedMark> marks;
  for (std::size_t k = 0; k < outcome.findings.size(); ++k) {
    const Finding &finding = outcome.findings[k];
    if (!is_shown(request, finding.feature))
      continue;
    auto mark =
        request.view == View::space ? in_space(outcome, finding, eye) : on_sheet(outcome, finding, request);
    const double reach = 2.0 * kRing_px * request.px_scale;
    if (!mark || mark->x_px < -reach || mark->y_px < -reach || mark->x_px > request.size.width_px + reach ||
        mark->y_px > request.size.height_px + reach)
      continue;
    mark->finding = k;
    mark->radius_px = kRing_px * request.px_scale;
    marks.push_back(*mark);
  }
  return marks;
}

MarkPass::MarkPass(std::string &fault) : program_("mark.vert", "mark.frag", fault) {
  glBindVertexArray(array_.name());
  glBindBuffer(GL_ARRAY_BUFFER, rings_.name());
  constexpr GLint kCounts[] = {2, 3, 3};
  std::size_t offset = 0;
  for (GLuint index = 0; index < 3; ++index) {
    glEnableVertexAttribArray(index);
    glVertexAttribPointer(index, kCounts[index], GL_FLOAT, GL_FALSE, sizeof(Ring),
                          reinterpret_cast<const void *>(offset)); // NOLINT: OpenGL's way to say an offset
    glVertexAttribDivisor(index, 1);
    offset += static_cast<std::size_t>(kCounts[index]) * sizeof(float);
  }
  glBindVertexArray(0);
}

void MarkPass::draw(const Outcome &outcome, const DrawRequest &request,
                    const std::vector<PlacedMark> &marks) const {
  if (marks.empty())
    return;
  std::vector<Ring> rings;
  for (const PlacedMark &mark : marks) {
    const Weight weight = outcome.findings[mark.finding].weight;
    const bool is_chosen = request.chosen_finding == static_cast<int>(mark.finding);
    const Rgb ink = is_chosen                  ? request.theme.chosen
                    : weight == Weight::danger ? request.theme.danger
                                               : request.theme.mark;
    const double radius = mark.radius_px * (weight == Weight::note ? 0.7 : 1.0);
    rings.push_back({static_cast<float>(mark.x_px), static_cast<float>(mark.y_px), static_cast<float>(radius),
                     weight == Weight::danger ? 2.0f : 1.0f, mark.is_hidden ? kFaint : 1.0f,
                     static_cast<float>(ink.r) / 255.0f, static_cast<float>(ink.g) / 255.0f,
                     static_cast<float>(ink.b) / 255.0f});
  }
  glBindBuffer(GL_ARRAY_BUFFER, rings_.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(rings.size() * sizeof(Ring)), rings.data(),
               GL_STREAM_DRAW);
  program_.use();
  program_.set("picture_px", Vec2(request.size.width_px, request.size.height_px));
  program_.set("px_scale", request.px_scale);
  program_.set("halo", request.theme.mark_halo);
  glEnable(GL_BLEND);
  glBindVertexArray(array_.name());
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, static_cast<GLsizei>(rings.size()));
  glBindVertexArray(0);
  glDisable(GL_BLEND);
  expect_no_gl_error();
}

} // namespace asperity
