// Lines of a given width on the graphics card.
#include "line_pass.h"

#include <cstddef>

namespace asperity {

void LinesOnCard::upload(const std::vector<LineStretch> &all) {
  glBindVertexArray(array.name());
  glBindBuffer(GL_ARRAY_BUFFER, stretches.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(all.size() * sizeof(LineStretch)), all.data(),
               GL_STATIC_DRAW);
  constexpr std::size_t kOffsets[] = {offsetof(LineStretch, begin), offsetof(LineStretch, end),
                                      offsetof(LineStretch, along_mm)};
  for (GLuint index = 0; index < 3; ++index) {
    glEnableVertexAttribArray(index);
    glVertexAttribPointer(index, 3, GL_FLOAT, GL_FALSE, sizeof(LineStretch),
                          reinterpret_cast<const void *>(kOffsets[index])); // NOLINT: OpenGL's way
    glVertexAttribDivisor(index, 1);
  }
  glBindVertexArray(0);
  count = static_cast<GLsizei>(all.size());
}

void LinePass::set_common(const ShaderProgram &program, const Eye &eye, const LineLook &look) const {
  program.use();
  program.set("clip_from_world", eye.clip_from_world);
  program.set("picture_px", Vec2(eye.size.width_px, eye.size.height_px));
  program.set("width_px", look.width_px * eye.px_scale);
  program.set("nearer", look.nearer);
  program.set("chosen_piece", look.only_piece);
  program.set("only_chosen", look.only_piece >= 0);
}

void LinePass::draw(const Eye &eye, const LinesOnCard &lines, const LineLook &look) const {
  if (lines.count == 0)
    return;
  set_common(program_, eye, look);
  program_.set("tone", look.colour, look.alpha);
  program_.set("dash_mm", look.dash_mm);
  program_.set("moment_s", look.moment_s);
  glEnable(GL_BLEND);
  glDepthMask(GL_FALSE);
  glBindVertexArray(lines.array.name());
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, lines.count);
  glBindVertexArray(0);
  glDepthMask(GL_TRUE);
  glDisable(GL_BLEND);
  expect_no_gl_error();
}

void LinePass::draw_pick(const Eye &eye, const LinesOnCard &lines, double width_px) const {
  if (lines.count == 0)
    return;
  set_common(pick_, eye, {.colour = {}, .width_px = width_px, .nearer = 2e-4});
  glBindVertexArray(lines.array.name());
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, lines.count);
  glBindVertexArray(0);
}

} // namespace asperity
