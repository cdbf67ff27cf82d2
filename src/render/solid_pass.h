// Plain solids on the graphics card, opaque or translucent.
#pragma once

#include "eye.h"
#include "gl_object.h"
#include "solid_shape.h"

namespace asperity {

struct SolidOnCard {
  VertexArray array;
  Buffer vertices;
  GLsizei count = 0;

  void upload(const SolidShape &shape);
};

struct SolidLook {
  Rgb colour;
  double alpha = 1.0;
  Vec3 moved_by{0.0};
  bool is_plain = false; ///< without light
};

class SolidPass {
public:
  explicit SolidPass(std::string &fault)
      : program_("solid.vert", "solid.frag", fault), pick_("solid.vert", "solid_pick.frag", fault) {}

  /// Translucent ones (alpha < 1) hide nothing and are to be drawn last.
  void draw(const Eye &eye, const SolidOnCard &solid, const SolidLook &look) const;
  void draw_pick(const Eye &eye, const SolidOnCard &solid) const;

private:
  ShaderProgram program_, pick_;
};

} // namespace asperity
