// Plain solids on the graphics card.
#include "solid_pass.h"

#include <cstddef>

namespace asperity {

void SolidOnCard::upload(const SolidShape &shape) {
  glBindVertexArray(array.name());
  glBindBuffer(GL_ARRAY_BUFFER, vertices.name());
  glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(shape.vertices().size() * sizeof(SolidVertex)),
               shape.vertices().data(), GL_STATIC_DRAW);
  for (GLuint index : {0u, 1u}) {
    const std::size_t offset = index == 0 ? offsetof(SolidVertex, place) : offsetof(SolidVertex, normal);
    glEnableVertexAttribArray(index);
    glVertexAttribPointer(index, 3, GL_FLOAT, GL_FALSE, sizeof(SolidVertex),
                          reinterpret_cast<const void *>(offset)); // NOLINT: OpenGL's way to say an offset
  }
  glBindVertexArray(0);
  count = static_cast<GLsizei>(shape.vertices().size());
}

void SolidPass::draw(const Eye &eye, const SolidOnCard &solid, const SolidLook &look) const {
  if (solid.count == 0)
    return;
  program_.use();
  eye.light(program_);
  program_.set("moved_by", look.moved_by);
  program_.set("tone", look.colour, look.alpha);
  program_.set("is_plain", look.is_plain);
  const bool is_translucent = look.alpha < 1.0;
  if (is_translucent) {
    glEnable(GL_BLEND);
    glDepthMask(GL_FALSE);
  }
  glBindVertexArray(solid.array.name());
  glDrawArrays(GL_TRIANGLES, 0, solid.count);
  glBindVertexArray(0);
  glDisable(GL_BLEND);
  glDepthMask(GL_TRUE);
  expect_no_gl_error();
}

void SolidPass::draw_pick(const Eye &eye, const SolidOnCard &solid) const {
  if (solid.count == 0)
    return;
  pick_.use();
  eye.light(pick_);
  pick_.set("moved_by", Vec3(0.0));
  glBindVertexArray(solid.array.name());
  glDrawArrays(GL_TRIANGLES, 0, solid.count);
  glBindVertexArray(0);
}

} // namespace asperity
