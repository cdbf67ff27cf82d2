// Charts on the graphics card.
#include "surface_pass.h"

#include "asperity/render/scene.h"

#include <algorithm>
#include <cstddef>

namespace asperity {

namespace {

constexpr std::size_t kMostVertices = 300000;       ///< of one chart
constexpr std::size_t kMostVerticesInAll = 1200000; ///< of many
constexpr std::size_t kFewestVertices = 50000;
constexpr float kNoValue = -1e30f; ///< in step with surface.frag
constexpr double kSteepShare =
    0.0002; ///< of the cut cells may be steeper than what is shown at full strength
constexpr double kHatch_px = 5.0;
constexpr float kAnisotropy = 8.0f;
constexpr std::size_t kMostSlopes = 200000;

/// Unit of the texture, in step with set_common.
enum TextureUnit : GLint { kSlopes, kKinds, kValues, kScale, kNamed };

void bind(GLint unit, const Texture &texture) {
  glActiveTexture(GL_TEXTURE0 + static_cast<GLenum>(unit));
  glBindTexture(GL_TEXTURE_2D, texture.name());
}

void filter(GLint smaller, GLint larger) {
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, smaller);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, larger);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
}

struct Grid {
  GLint inner;
  GLenum format, type;
  const void *texels;
};

void upload_grid(const Texture &texture, const ChartPatch &patch, const Grid &grid) {
  glActiveTexture(GL_TEXTURE0);
  glBindTexture(GL_TEXTURE_2D, texture.name());
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glTexImage2D(GL_TEXTURE_2D, 0, grid.inner, static_cast<GLsizei>(patch.width),
               static_cast<GLsizei>(patch.height), 0, grid.format, grid.type, grid.texels);
}

/// Smaller versions are means, and slanted views take several of them.
void upload_smooth(const Texture &texture, const ChartPatch &patch, const Grid &grid) {
  upload_grid(texture, patch, grid);
  filter(GL_LINEAR_MIPMAP_LINEAR, GL_LINEAR);
  glGenerateMipmap(GL_TEXTURE_2D);
}

/// Several samples along the slant: half of a picture's time on a processor, so not while it moves.
void bind_smooth(GLint unit, const Texture &texture, bool is_light) {
  bind(unit, texture);
  if (epoxy_has_gl_extension("GL_EXT_texture_filter_anisotropic"))
    glTexParameterf(GL_TEXTURE_2D, GL_TEXTURE_MAX_ANISOTROPY_EXT, is_light ? 1.0f : kAnisotropy);
}

void upload_row(const Texture &texture, std::span<const Rgb> colours, GLint filtering) {
  static_assert(sizeof(Rgb) == 3);
  glActiveTexture(GL_TEXTURE0);
  glBindTexture(GL_TEXTURE_2D, texture.name());
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGB8, static_cast<GLsizei>(colours.size()), 1, 0, GL_RGB,
               GL_UNSIGNED_BYTE, colours.data());
  filter(filtering, filtering);
}

void describe_vertices() {
  const auto attribute = [](GLuint index, GLint count, std::size_t offset) {
    glEnableVertexAttribArray(index);
    glVertexAttribPointer(index, count, GL_FLOAT, GL_FALSE, sizeof(SurfaceVertex),
                          reinterpret_cast<const void *>(offset)); // NOLINT: OpenGL's way to say an offset
  };
  attribute(0, 3, offsetof(SurfaceVertex, place));
  attribute(1, 3, offsetof(SurfaceVertex, ray));
  attribute(2, 3, offsetof(SurfaceVertex, along_u));
  attribute(3, 3, offsetof(SurfaceVertex, along_v));
  attribute(4, 2, offsetof(SurfaceVertex, sheet));
  attribute(5, 2, offsetof(SurfaceVertex, texel));
  attribute(6, 1, offsetof(SurfaceVertex, residual_mm));
  attribute(7, 1, offsetof(SurfaceVertex, uncut));
}

/// Slope that only so small a share of the cut surface passes.
double steep_slope_of(const SurfaceGrid &grid) {
  const std::size_t stride = std::max<std::size_t>(1, grid.across() * grid.up() / kMostSlopes);
  std::vector<double> slopes;
  for (std::size_t k = 0; k < grid.across() * grid.up(); k += stride) {
    const std::size_t i = k % grid.across(), j = k / grid.across();
    if (grid.is_cut(i, j))
      slopes.push_back(glm::length(grid.slope(i, j)));
  }
  if (slopes.empty())
    return 0.0;
  const auto rank = static_cast<std::ptrdiff_t>((1.0 - kSteepShare) * static_cast<double>(slopes.size() - 1));
  std::nth_element(slopes.begin(), slopes.begin() + rank, slopes.end());
  return slopes[static_cast<std::size_t>(rank)];
}

} // namespace

SurfacePass::SurfacePass(std::string &fault)
    : program_("surface.vert", "surface.frag", fault), pick_("surface.vert", "surface_pick.frag", fault) {
  upload_row(scale_, scale_colours(), GL_LINEAR);
  upload_row(named_, named_colours(), GL_NEAREST);
}

void SurfacePass::show(const Outcome &outcome) {
  outcome_ = &outcome;
  charts_.clear();
  const std::size_t share = kMostVerticesInAll / std::max<std::size_t>(1, outcome.charts.size());
  const std::size_t most = std::clamp(share, kFewestVertices, kMostVertices);
  for (std::size_t feature = 0; feature < outcome.charts.size(); ++feature) {
    const Chart &chart = outcome.charts[feature];
    charts_.push_back({.grid = SurfaceGrid(chart, seam_mm(outcome, feature)),
                       .patches = {},
                       .residuals_mm = {},
                       .quantities = {},
                       .names = {}});
    ChartOnCard &on_card = charts_.back();
    std::vector<float> cut;
    std::size_t present = 0, standing = 0, skin = 0;
    for (std::size_t cell = 0; cell < cell_count(chart); ++cell) {
      const SurfaceKind kind = surface_kind(chart, cell);
      present += kind != SurfaceKind::absent ? 1 : 0;
      standing += kind == SurfaceKind::standing ? 1 : 0;
      skin += kind == SurfaceKind::skin ? 1 : 0;
      if (kind == SurfaceKind::cut)
        cut.push_back(residual_mm(chart, cell));
    }
    const auto of_all = [present](std::size_t n) {
      return present > 0 ? static_cast<double>(n) / static_cast<double>(present) : 0.0;
    };
    on_card.standing_share = of_all(standing);
    on_card.skin_share = of_all(skin);
    on_card.residuals_mm = sample_of(cut);
    on_card.steep_slope = steep_slope_of(on_card.grid);
    upload(on_card, most);
  }
  expect_no_gl_error();
}

void SurfacePass::upload(ChartOnCard &chart, std::size_t most_vertices) {
  for (ChartPatch &patch : patches_of(chart.grid, most_vertices)) {
    PatchOnCard on_card;
    glBindVertexArray(on_card.array.name());
    glBindBuffer(GL_ARRAY_BUFFER, on_card.vertices.name());
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(patch.vertices.size() * sizeof(SurfaceVertex)),
                 patch.vertices.data(), GL_STATIC_DRAW);
    describe_vertices();
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, on_card.triangles.name());
    on_card.count = static_cast<GLsizei>(patch.triangles.size());
    on_card.light_count = static_cast<GLsizei>(patch.light_triangles.size());
    patch.triangles.insert(patch.triangles.end(), patch.light_triangles.begin(), patch.light_triangles.end());
    glBufferData(GL_ELEMENT_ARRAY_BUFFER,
                 static_cast<GLsizeiptr>(patch.triangles.size() * sizeof(std::uint32_t)),
                 patch.triangles.data(), GL_STATIC_DRAW);
    glBindVertexArray(0);
    upload_smooth(on_card.slopes, patch, {GL_RG16F, GL_RG, GL_FLOAT, slope_texels(chart.grid, patch).data()});
    upload_smooth(on_card.residuals, patch,
                  {GL_R32F, GL_RED, GL_FLOAT, residual_texels(chart.grid, patch).data()});
    patch.vertices = {};
    patch.triangles = {};
    patch.light_triangles = {};
    on_card.place = std::move(patch);
    chart.patches.push_back(std::move(on_card));
  }
  upload_kinds(chart, Colouring::lamp);
}

void SurfacePass::upload_kinds(ChartOnCard &chart, Colouring colouring) {
  const bool is_named =
      colouring == Colouring::line || colouring == Colouring::piece || colouring == Colouring::level;
  const std::size_t feature = static_cast<std::size_t>(&chart - charts_.data());
  for (PatchOnCard &patch : chart.patches) {
    const ChartPatch &p = patch.place;
    std::vector<std::uint8_t> texels;
    texels.reserve(2 * p.width * p.height);
    for (std::size_t j = p.first_j; j < p.first_j + p.height; ++j)
      for (std::size_t i = p.first_i; i < p.first_i + p.width; ++i) {
        texels.push_back(static_cast<std::uint8_t>(chart.grid.kind(i, j)));
        const std::uint32_t owner =
            is_named ? owner_of(outcome_->charts[feature], chart.grid.cell(i, j)) : kNobody;
        texels.push_back(owner == kNobody ? std::uint8_t{0}
                                          : colour_of_name(name_of_owner(outcome_->path, colouring, owner)));
      }
    upload_grid(patch.kinds, p, {GL_RG8UI, GL_RG_INTEGER, GL_UNSIGNED_BYTE, texels.data()});
    filter(GL_NEAREST, GL_NEAREST);
  }
  chart.named_by = colouring;
}

void SurfacePass::set_quantity(const CellQuantity &quantity) {
  for (std::size_t feature = 0; feature < charts_.size(); ++feature) {
    ChartOnCard &chart = charts_[feature];
    const bool is_given = feature < quantity.of_feature.size() &&
                          quantity.of_feature[feature].size() == cell_count(outcome_->charts[feature]);
    chart.quantities = is_given ? sample_of(quantity.of_feature[feature]) : std::vector<float>{};
    for (PatchOnCard &patch : chart.patches) {
      const ChartPatch &p = patch.place;
      std::vector<float> texels;
      for (std::size_t j = p.first_j; is_given && j < p.first_j + p.height; ++j)
        for (std::size_t i = p.first_i; i < p.first_i + p.width; ++i) {
          const float value = quantity.of_feature[feature][chart.grid.cell(i, j)];
          texels.push_back(std::isfinite(value) ? value : kNoValue);
        }
      patch.has_quantity = is_given;
      if (!is_given)
        continue;
      upload_grid(patch.quantity, p, {GL_R32F, GL_RED, GL_FLOAT, texels.data()});
      filter(GL_NEAREST, GL_NEAREST); // a mean with "no value" would be neither
    }
  }
  expect_no_gl_error();
}

const NameCounts &SurfacePass::names(std::size_t feature, Colouring colouring) {
  auto [at, is_new] = charts_[feature].names.try_emplace(colouring);
  if (is_new)
    at->second = count_names(outcome_->charts[feature], outcome_->path, colouring);
  return at->second;
}

void SurfacePass::set_common(const ShaderProgram &program, const Eye &eye, const SurfaceLook &look,
                             const SurfaceGrid &grid) const {
  eye.light(program);
  program.set("is_flat", eye.is_flat);
  program.set("sheet_sign", grid.is_mirrored() ? -1.0 : 1.0);
  program.set("times", look.times);
  program.set("farthest_mm", look.farthest_mm);
  program.set("kinds", kKinds);
}

void SurfacePass::set_look(const Eye &eye, const SurfaceLook &look) const {
  program_.use();
  program_.set("slopes", kSlopes);
  program_.set("values", kValues);
  program_.set("scale", kScale);
  program_.set("named", kNamed);
  program_.set("value_low", look.scale.low);
  program_.set("value_high", look.scale.high);
  program_.set("scale_span", Vec2(look.scale.span_low, look.scale.span_high));
  program_.set("cut_colour", look.theme.cut_stock);
  program_.set("uncut_colour", look.theme.uncut_stock);
  program_.set("skin_colour", look.theme.printed_skin);
  program_.set("inside_colour", look.theme.inside);
  program_.set("hatch_px", look.colouring == Colouring::lamp ? 0.0 : kHatch_px * eye.px_scale);
}

void SurfacePass::draw(const Eye &eye, const SurfaceLook &look, const std::vector<std::size_t> &features) {
  const Colouring colouring = look.colouring;
  const bool is_named =
      colouring == Colouring::line || colouring == Colouring::piece || colouring == Colouring::level;
  const bool is_scale = colouring == Colouring::residual || colouring == Colouring::quantity;
  set_look(eye, look);
  for (std::size_t feature : features) {
    ChartOnCard &chart = charts_[feature];
    if (is_named && chart.named_by != colouring)
      upload_kinds(chart, colouring);
    program_.use();
    set_common(program_, eye, look, chart.grid);
    bind(kScale, scale_);
    bind(kNamed, named_);
    for (const PatchOnCard &patch : chart.patches) {
      const bool has_value = colouring != Colouring::quantity || patch.has_quantity;
      program_.set("colouring", is_named ? 2 : is_scale && has_value ? 1 : 0);
      bind_smooth(kSlopes, patch.slopes, look.is_light);
      bind(kKinds, patch.kinds);
      if (colouring == Colouring::quantity && patch.has_quantity)
        bind(kValues, patch.quantity);
      else
        bind_smooth(kValues, patch.residuals, look.is_light);
      glBindVertexArray(patch.array.name());
      const std::size_t first =
          look.is_light ? static_cast<std::size_t>(patch.count) * sizeof(std::uint32_t) : 0;
      glDrawElements(GL_TRIANGLES, look.is_light ? patch.light_count : patch.count, GL_UNSIGNED_INT,
                     reinterpret_cast<const void *>(first)); // NOLINT: OpenGL's way to say an offset
    }
  }
  glBindVertexArray(0);
  glActiveTexture(GL_TEXTURE0);
  expect_no_gl_error();
}

void SurfacePass::draw_pick(const Eye &eye, const SurfaceLook &look,
                            const std::vector<std::size_t> &features) {
  pick_.use();
  for (std::size_t feature : features) {
    const ChartOnCard &chart = charts_[feature];
    set_common(pick_, eye, look, chart.grid);
    pick_.set_unsigned("feature", feature);
    for (const PatchOnCard &patch : chart.patches) {
      pick_.set_unsigned("first_texel", patch.place.first_i, patch.place.first_j);
      bind(kKinds, patch.kinds);
      glBindVertexArray(patch.array.name());
      glDrawElements(GL_TRIANGLES, patch.count, GL_UNSIGNED_INT, nullptr);
    }
  }
  glBindVertexArray(0);
  glActiveTexture(GL_TEXTURE0);
  expect_no_gl_error();
}

} // namespace asperity
