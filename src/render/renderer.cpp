// The one renderer: what is drawn in which order.
#include "asperity/render/renderer.h"

#include "asperity/render/scene.h"
#include "exaggeration.h"
#include "mark_pass.h"
#include "path_pass.h"
#include "pick_target.h"
#include "section_pass.h"
#include "solid_things.h"
#include "surface_pass.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// What no pass has cut is named in the legend from this share of the cells on.
constexpr double kNamedShare = 1e-4;

void clear(const DrawRequest &request) {
  const Rgb ground = request.theme.ground;
  glDisable(GL_SCISSOR_TEST);
  glDisable(GL_CULL_FACE);
  glDisable(GL_BLEND);
  glDepthMask(GL_TRUE);
  glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
  glViewport(0, 0, request.size.width_px, request.size.height_px);
  glClearColor(static_cast<float>(ground.r) / 255.0f, static_cast<float>(ground.g) / 255.0f,
               static_cast<float>(ground.b) / 255.0f, 1.0f);
  glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  glDepthFunc(GL_LEQUAL);
}

bool is_named(Colouring c) { return c == Colouring::line || c == Colouring::piece || c == Colouring::level; }

} // namespace

struct Renderer::Inner {
  std::string fault;
  SurfacePass surfaces{fault};
  SolidPass solids{fault};
  LinePass lines{fault};
  MarkPass marks{fault};
  PickTarget pick_target;
  SolidThings things;
  PathPass path;
  const Outcome *outcome = nullptr;
  Bounds bounds;
  double radius_mm = 1.0;
  std::string quantity_name, quantity_unit;

  bool can_draw(const DrawRequest &request) const {
    return fault.empty() && outcome && request.size.width_px > 0 && request.size.height_px > 0;
  }
  std::vector<std::size_t> features_of(const DrawRequest &request) const;
  SurfaceLook look_of(const DrawRequest &request, const std::vector<std::size_t> &features);
  Eye eye(const DrawRequest &request, const SurfaceLook &look) const;
  void draw_space(const DrawRequest &request, const Eye &eye, const SurfaceLook &look,
                  const std::vector<std::size_t> &features);
  void draw_section_of(const DrawRequest &request, const Eye &eye, const SurfaceLook &look) const;
  Pick surface_pick(int feature, std::size_t column, std::size_t row) const;
  Pick pick_mark(const DrawRequest &request, const Eye &eye, double x_px, double y_px) const;
  void name_path(Legend &legend, const DrawRequest &request) const;
  void name_uncut(Legend &legend, const DrawRequest &request, const std::vector<std::size_t> &features) const;
};

std::vector<std::size_t> Renderer::Inner::features_of(const DrawRequest &request) const {
  std::vector<std::size_t> features;
  for (std::size_t k = 0; k < outcome->charts.size(); ++k) {
    const bool is_asked =
        request.view == View::space
            ? request.shows_feature.empty() || (k < request.shows_feature.size() && request.shows_feature[k])
            : request.feature == static_cast<int>(k);
    if (is_asked)
      features.push_back(k);
  }
  return features;
}

void Renderer::Inner::name_uncut(Legend &legend, const DrawRequest &request,
                                 const std::vector<std::size_t> &features) const {
  double standing = 0.0, skin = 0.0;
  for (std::size_t feature : features) {
    standing = std::max(standing, surfaces.standing_share(feature));
    skin = std::max(skin, surfaces.skin_share(feature));
  }
  if (standing > kNamedShare)
    legend.entries.push_back({"stock left standing, true size", request.theme.uncut_stock, standing});
  if (skin > kNamedShare)
    legend.entries.push_back({"not reached: blank too small", request.theme.printed_skin, skin});
}

void Renderer::Inner::name_path(Legend &legend, const DrawRequest &request) const {
  for (std::size_t kind = 0; kind < std::size(request.shows_path_kind); ++kind)
    if (request.shows_path_kind[kind] && path.has(kind))
      legend.entries.push_back(
          {"path: " + std::string(name_of(static_cast<PathKind>(kind))), request.theme.path[kind], 0.0});
}

SurfaceLook Renderer::Inner::look_of(const DrawRequest &request, const std::vector<std::size_t> &features) {
  const Exaggeration exaggeration = exaggeration_of(request, surfaces, features, radius_mm);
  SurfaceLook look{.times = exaggeration.times,
                   .farthest_mm = exaggeration.farthest_mm,
                   .colouring = request.colouring,
                   .scale = {},
                   .theme = request.theme,
                   .is_light = request.is_light};
  const ScaleAsk ask{request.range_low, request.range_high};
  std::vector<float> values;
  for (std::size_t feature : features) {
    const std::vector<float> &sample = request.colouring == Colouring::quantity
                                           ? surfaces.quantity_sample(feature)
                                           : surfaces.residual_sample(feature);
    values.insert(values.end(), sample.begin(), sample.end());
  }
  if (request.colouring == Colouring::residual)
    look.scale = residual_scale(std::move(values), ask);
  else if (request.colouring == Colouring::quantity)
    look.scale = quantity_scale(std::move(values), quantity_name, quantity_unit, ask);
  else if (is_named(request.colouring)) {
    NameCounts all;
    for (std::size_t feature : features)
      for (const auto &[name, count] : surfaces.names(feature, request.colouring))
        all[name] += count;
    look.scale.legend = legend_of(all, request.colouring);
  }
  name_uncut(look.scale.legend, request, features);
  if (request.view == View::space && request.things.path)
    name_path(look.scale.legend, request);
  return look;
}

Eye Renderer::Inner::eye(const DrawRequest &request, const SurfaceLook &look) const {
  return eye_of(request, bounds, look.farthest_mm);
}

void Renderer::Inner::draw_space(const DrawRequest &request, const Eye &eye, const SurfaceLook &look,
                                 const std::vector<std::size_t> &features) {
  glEnable(GL_DEPTH_TEST);
  if (request.view == View::space)
    things.draw_opaque(solids, eye, request);
  if (request.things.surfaces)
    surfaces.draw(eye, look, features);
  if (request.view == View::space) {
    if (request.things.path)
      path.draw(lines, eye, request);
    things.draw_translucent(solids, eye, request, outcome->path);
  }
  glDisable(GL_DEPTH_TEST);
}

void Renderer::Inner::draw_section_of(const DrawRequest &request, const Eye &eye,
                                      const SurfaceLook &look) const {
  const SectionShape shape = section_of(*outcome, {.feature = static_cast<std::size_t>(request.feature),
                                                   .at_mm = request.section_at_mm,
                                                   .times = look.times,
                                                   .farthest_mm = look.farthest_mm});
  draw_section(shape, request, eye, solids, lines);
}

Pick Renderer::Inner::surface_pick(int feature, std::size_t column, std::size_t row) const {
  const Chart &chart = outcome->charts[static_cast<std::size_t>(feature)];
  Pick pick{.what = Pick::What::surface, .feature = feature, .column = column, .row = row};
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    pick.cell = wall->at(column, row);
    pick.point_mm = {wall->foot[column], wall->z_mm[row]};
  } else {
    const auto &floor = std::get<FloorChart>(chart);
    pick.cell = floor.at(column, row);
    pick.point_mm = {floor.x_mm(column), floor.y_mm(row),
                     floor.base_mm + static_cast<double>(floor.wanted_mm[pick.cell])};
  }
  pick.residual_mm = static_cast<double>(residual_mm(chart, pick.cell));
  const std::uint32_t owner = owner_of(chart, pick.cell);
  pick.piece = owner == kNobody ? -1 : static_cast<int>(owner);
  return pick;
}

Pick Renderer::Inner::pick_mark(const DrawRequest &request, const Eye &eye, double x_px, double y_px) const {
  Pick pick;
  double least = std::numeric_limits<double>::infinity();
  if (!request.things.marks)
    return pick;
  for (const PlacedMark &mark : placed_marks(*outcome, request, eye)) {
    const double off = std::hypot(mark.x_px - x_px, mark.y_px - y_px);
    if (mark.is_hidden || off > 1.3 * mark.radius_px || off >= least)
      continue;
    least = off;
    const Finding &finding = outcome->findings[mark.finding];
    pick = {.what = Pick::What::finding,
            .feature = finding.feature,
            .finding = static_cast<int>(mark.finding),
            .point_mm = finding.place_mm};
  }
  return pick;
}

Renderer::Renderer() : inner_(std::make_unique<Inner>()) {
  if (epoxy_gl_version() < 33)
    inner_->fault = "OpenGL 3.3 is needed, this one is older";
}

Renderer::~Renderer() = default;

const std::string &Renderer::fault() const { return inner_->fault; }

void Renderer::show(const Outcome &outcome) {
  inner_->outcome = &outcome;
  inner_->surfaces.show(outcome);
  inner_->things.show(outcome);
  inner_->path.show(outcome.path);
  inner_->bounds = whole_bounds(outcome);
  for (const PathPiece &piece : outcome.path.pieces)
    inner_->bounds.hold(piece.curve.end);
  const Bounds surfaces = surface_bounds(outcome);
  inner_->radius_mm = surfaces.radius_mm();
  // Room for the cutter, the board and what is drawn larger than it is.
  inner_->bounds.hold(inner_->bounds.low - Vec3(0.35 * inner_->radius_mm));
  inner_->bounds.hold(inner_->bounds.high + Vec3(0.35 * inner_->radius_mm));
  expect_no_gl_error();
}

void Renderer::set_quantity(const CellQuantity &quantity) {
  inner_->quantity_name = quantity.name;
  inner_->quantity_unit = quantity.unit;
  if (inner_->outcome)
    inner_->surfaces.set_quantity(quantity);
}

Drawn Renderer::draw(const DrawRequest &request) {
  Drawn drawn;
  clear(request);
  if (!inner_->can_draw(request))
    return drawn;
  const std::vector<std::size_t> features = inner_->features_of(request);
  const SurfaceLook look = inner_->look_of(request, features);
  const Eye eye = inner_->eye(request, look);
  if (request.view != View::section)
    inner_->draw_space(request, eye, look, features);
  else if (!features.empty())
    inner_->draw_section_of(request, eye, look);
  drawn.exaggeration = look.times;
  drawn.legend = look.scale.legend;
  const bool can_mark = request.view == View::space || !features.empty();
  if (request.things.marks && can_mark) {
    drawn.marks = placed_marks(*inner_->outcome, request, eye);
    inner_->marks.draw(*inner_->outcome, request, drawn.marks);
  }
  return drawn;
}

Pick Renderer::pick(const DrawRequest &request, double x_px, double y_px) {
  if (!inner_->can_draw(request))
    return {};
  const std::vector<std::size_t> features = inner_->features_of(request);
  if (request.view != View::space && features.empty())
    return {};
  const SurfaceLook look = inner_->look_of(request, features);
  const Eye eye = inner_->eye(request, look);
  if (const Pick mark = inner_->pick_mark(request, eye, x_px, y_px); mark.what == Pick::What::finding)
    return mark;
  if (request.view == View::section) {
    const SectionCell cell = section_cell(inner_->outcome->charts[features.front()], request.section_at_mm,
                                          request.sheet.place_mm(x_px, y_px, request.size));
    return inner_->surface_pick(request.feature, cell.column, cell.row);
  }
  const Seen seen = inner_->pick_target.look(eye, x_px, y_px, [&](const Eye &close) {
    if (request.view == View::space)
      inner_->things.draw_pick(inner_->solids, close, request);
    if (request.things.surfaces)
      inner_->surfaces.draw_pick(close, look, features);
    if (request.view == View::space && request.things.path)
      inner_->path.draw_pick(inner_->lines, close, request);
  });
  if (seen[0] == kSeesPath)
    return {.what = Pick::What::path, .piece = static_cast<int>(seen[1])};
  if (seen[0] != kSeesSurface)
    return {};
  return inner_->surface_pick(static_cast<int>(seen[1]), inner_->surfaces.grid(seen[1]).column(seen[2]),
                              seen[3]);
}

} // namespace asperity
