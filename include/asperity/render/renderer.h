// The one renderer: draws an outcome into whatever framebuffer is bound. Knows no window.
#pragma once

#include "asperity/predict/outcome.h"
#include "asperity/render/draw_request.h"

#include <memory>
#include <string>
#include <vector>

namespace asperity {

/// A number for every cell of every chart (roughness, bending, chip load...); NaN = none.
struct CellQuantity {
  std::string name, unit;
  std::vector<std::vector<float>> of_feature; ///< [feature][cell]; an empty grid = none there
};

struct Pick {
  enum class What : std::uint8_t { nothing, surface, path, finding };
  What what = What::nothing;
  int feature = -1;
  std::size_t column = 0, row = 0, cell = 0;
  int piece = -1;           ///< path: index into TimedPath::pieces; surface: who made the cell, -1 = nobody
  int finding = -1;         ///< index into Outcome::findings
  Vec3 point_mm{0.0};       ///< on the wanted surface, part frame
  double residual_mm = 0.0; ///< of the cell
};

/// Needs an OpenGL 3.3 core context, current on this thread, from its making to its end.
class Renderer {
public:
  Renderer();
  ~Renderer();
  Renderer(const Renderer &) = delete;
  Renderer &operator=(const Renderer &) = delete;

  /// Empty, or why nothing can be drawn (a shader that does not compile, an old OpenGL).
  const std::string &fault() const;

  /// Brings an outcome to the graphics card. It is not copied: it must stay as it is until the next show().
  void show(const Outcome &outcome);
  void set_quantity(const CellQuantity &quantity);

  /// Clears and fills the bound framebuffer (with depth) from pixel (0, 0); sRGB values are written as they
  /// are. Nothing is drawn before show(). Depth, blending and scissor state are left at OpenGL's defaults.
  Drawn draw(const DrawRequest &request);

  /// What is seen at a pixel, from the upper left corner. Findings win over path, path over surface, within
  /// a few pixels. The bound framebuffer stays as it is.
  Pick pick(const DrawRequest &request, double x_px, double y_px);

private:
  struct Inner;
  std::unique_ptr<Inner> inner_;
};

} // namespace asperity
