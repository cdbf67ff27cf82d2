// Lines of a given width on the graphics card.
#pragma once

#include "eye.h"
#include "gl_object.h"

#include <array>
#include <vector>

namespace asperity {

/// One straight stretch. along_mm counts from the start of its run, for dashes.
struct LineStretch {
  std::array<float, 3> begin{}, end{};
  float along_mm = 0, time_s = 0, piece = 0;
};

struct LinesOnCard {
  VertexArray array;
  Buffer stretches;
  GLsizei count = 0;

  void upload(const std::vector<LineStretch> &stretches);
};

struct LineLook {
  Rgb colour;
  double alpha = 1.0;
  double width_px = 1.5;
  Vec2 dash_mm{0.0}; ///< drawn, left out
  double moment_s = 1e30;
  int only_piece = -1;
  double nearer = 0.0; ///< of the depth range
};

class LinePass {
public:
  explicit LinePass(std::string &fault)
      : program_("line.vert", "line.frag", fault), pick_("line.vert", "line_pick.frag", fault) {}

  void draw(const Eye &eye, const LinesOnCard &lines, const LineLook &look) const;
  void draw_pick(const Eye &eye, const LinesOnCard &lines, double width_px) const;

private:
  void set_common(const ShaderProgram &program, const Eye &eye, const LineLook &look) const;
  ShaderProgram program_, pick_;
};

} // namespace asperity
