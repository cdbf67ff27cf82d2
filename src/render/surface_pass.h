// Charts on the graphics card: meshes, the full-resolution grids over them, and their drawing.
#pragma once

#include "asperity/render/renderer.h"
#include "chart_patch.h"
#include "colour_scale.h"
#include "eye.h"
#include "gl_object.h"
#include "named_colours.h"

#include <map>
#include <vector>

namespace asperity {

/// How the surfaces are to look in one drawing.
struct SurfaceLook {
  double times = 1.0, farthest_mm = 1.0;
  Colouring colouring = Colouring::lamp;
  ColourScale scale; ///< residual [mm] or quantity
  Theme theme;
  bool is_light = false; ///< fewer triangles, plainer filtering
};

class SurfacePass {
public:
  explicit SurfacePass(std::string &fault);

  void show(const Outcome &outcome);
  void set_quantity(const CellQuantity &quantity);

  /// Named colours are laid over the charts when they are first asked for.
  void draw(const Eye &eye, const SurfaceLook &look, const std::vector<std::size_t> &features);
  void draw_pick(const Eye &eye, const SurfaceLook &look, const std::vector<std::size_t> &features);

  const SurfaceGrid &grid(std::size_t feature) const { return charts_[feature].grid; }
  const std::vector<float> &residual_sample(std::size_t feature) const {
    return charts_[feature].residuals_mm;
  }
  const std::vector<float> &quantity_sample(std::size_t feature) const { return charts_[feature].quantities; }
  double steep_slope(std::size_t feature) const { return charts_[feature].steep_slope; }
  double standing_share(std::size_t feature) const { return charts_[feature].standing_share; }
  double skin_share(std::size_t feature) const { return charts_[feature].skin_share; }
  const NameCounts &names(std::size_t feature, Colouring colouring);

private:
  struct PatchOnCard {
    ChartPatch place; ///< vertices and triangles given up once uploaded
    VertexArray array;
    Buffer vertices, triangles; ///< those of the light mesh come after the others
    Texture slopes, kinds, residuals, quantity;
    bool has_quantity = false;
    GLsizei count = 0, light_count = 0;
  };
  struct ChartOnCard {
    SurfaceGrid grid;
    std::vector<PatchOnCard> patches;
    std::vector<float> residuals_mm, quantities; ///< sorted samples
    double steep_slope = 0, standing_share = 0, skin_share = 0;
    std::map<Colouring, NameCounts> names;
    Colouring named_by = Colouring::lamp; ///< what the kinds' second number stands for
  };

  void upload(ChartOnCard &chart, std::size_t most_vertices);
  void upload_kinds(ChartOnCard &chart, Colouring colouring);
  void set_look(const Eye &eye, const SurfaceLook &look) const;
  void set_common(const ShaderProgram &program, const Eye &eye, const SurfaceLook &look,
                  const SurfaceGrid &grid) const;

  ShaderProgram program_, pick_;
  Texture scale_, named_;
  const Outcome *outcome_ = nullptr;
  std::vector<ChartOnCard> charts_;
};

} // namespace asperity
