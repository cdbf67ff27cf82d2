// The predicted surfaces as binary glTF 2.0.
#include "asperity/sheet/export.h"

#include "asperity/picture/colour_map.h"
#include "asperity/sheet/strip_picture.h"
#include "asperity/sheet/surface_grid.h"
#include "little_end.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

using nlohmann::json;

// Of the glTF 2.0 specification: component types, buffer targets, chunk names.
constexpr int kUnsignedByte = 5121, kUnsignedInt = 5125, kFloat = 5126;
constexpr int kVertexBuffer = 34962, kIndexBuffer = 34963;
constexpr std::uint32_t kMagic = 0x46546C67, kJsonChunk = 0x4E4F534A, kBinaryChunk = 0x004E4942;
constexpr double kMetre_mm = 1000.0;

/// The part's x, z, -y: glTF has y up.
Vec3 gltf_from_part(Vec3 p) { return {p.x, p.z, -p.y}; }

struct Surface {
  std::vector<Vec3> position, normal; ///< part frame, mm
  std::vector<Rgb> colour;
  std::vector<std::uint32_t> index;
};

/// Out of the material; 0 where no neighbour says. e's own slope is in it.
Vec3 normal_at(const SurfaceGrid &grid, std::size_t i, std::size_t j) {
  const auto point = [&](std::size_t c, std::size_t r) { return grid.point_mm(c, r); };
  const bool wraps = grid.is_wall;
  const std::size_t left = i > 0 ? i - 1 : wraps ? grid.columns - 1 : i;
  const std::size_t right = i + 1 < grid.columns ? i + 1 : wraps ? 0 : i;
  const std::size_t below = j > 0 ? j - 1 : j, above = j + 1 < grid.rows ? j + 1 : j;
  const auto known = [&](std::size_t c, std::size_t r) {
    return grid.cell[grid.at(c, r)] != GridCell::absent;
  };
  const Vec3 u = point(known(right, j) ? right : i, j) - point(known(left, j) ? left : i, j);
  const Vec3 v = point(i, known(i, above) ? above : j) - point(i, known(i, below) ? below : j);
  const Vec3 out = grid.is_wall ? Vec3(grid.normal[i], 0.0) : Vec3(0.0, 0.0, 1.0);
  Vec3 n = glm::cross(u, v);
  if (!(glm::length(n) > 0.0))
    return out;
  n = glm::normalize(n);
  return glm::dot(n, out) < 0.0 ? -n : n;
}

Surface surface_of(const SurfaceGrid &grid, double range_um) {
  Surface surface;
  constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();
  std::vector<std::uint32_t> vertex(grid.cell.size(), kNone);
  for (std::size_t j = 0; j < grid.rows; ++j)
    for (std::size_t i = 0; i < grid.columns; ++i) {
      const std::size_t k = grid.at(i, j);
      if (grid.cell[k] == GridCell::absent)
        continue;
      vertex[k] = static_cast<std::uint32_t>(surface.position.size());
      surface.position.push_back(grid.point_mm(i, j));
      surface.normal.push_back(normal_at(grid, i, j));
      constexpr Rgb kUncut{200, 200, 200};
      surface.colour.push_back(grid.cell[k] == GridCell::cut
                                   ? residual_colour(1000.0 * static_cast<double>(grid.e_mm[k]) / range_um)
                                   : kUncut);
    }
  const auto add = [&](std::uint32_t a, std::uint32_t b, std::uint32_t c) {
    const auto corners = grid.is_inside ? std::array{a, c, b} : std::array{a, b, c};
    surface.index.insert(surface.index.end(), corners.begin(), corners.end());
  };
  for (std::size_t j = 0; j + 1 < grid.rows; ++j)
    for (std::size_t i = 0; i + (grid.is_wall ? 0 : 1) < grid.columns; ++i) {
      const std::size_t next = (i + 1) % grid.columns;
      const std::uint32_t a = vertex[grid.at(i, j)], b = vertex[grid.at(next, j)],
                          c = vertex[grid.at(next, j + 1)], d = vertex[grid.at(i, j + 1)];
      if (a == kNone || b == kNone || c == kNone || d == kNone)
        continue;
      add(a, b, c);
      add(a, c, d);
    }
  return surface;
}

/// The growing file: one binary buffer and the JSON that describes it.
struct Scene {
  json root;
  std::string binary;

  int add_view(const std::string &bytes, int target) {
    binary.resize((binary.size() + 3) / 4 * 4, '\0');
    root["bufferViews"].push_back(
        {{"buffer", 0}, {"byteOffset", binary.size()}, {"byteLength", bytes.size()}, {"target", target}});
    binary += bytes;
    return static_cast<int>(root["bufferViews"].size()) - 1;
  }
  int add_accessor(json accessor) {
    root["accessors"].push_back(std::move(accessor));
    return static_cast<int>(root["accessors"].size()) - 1;
  }
};

int add_vectors(Scene &scene, const std::vector<Vec3> &part, double scale, bool has_bounds) {
  std::string bytes;
  float low[3] = {INFINITY, INFINITY, INFINITY}, high[3] = {-INFINITY, -INFINITY, -INFINITY};
  for (const Vec3 p : part) {
    const Vec3 q = scale * gltf_from_part(p);
    for (int axis = 0; axis < 3; ++axis) {
      const auto value = static_cast<float>(q[axis]);
      put_float(bytes, value);
      low[axis] = std::min(low[axis], value);
      high[axis] = std::max(high[axis], value);
    }
  }
  json accessor = {{"bufferView", scene.add_view(bytes, kVertexBuffer)},
                   {"componentType", kFloat},
                   {"count", part.size()},
                   {"type", "VEC3"}};
  if (has_bounds) {
    accessor["min"] = {low[0], low[1], low[2]};
    accessor["max"] = {high[0], high[1], high[2]};
  }
  return scene.add_accessor(std::move(accessor));
}

int add_colours(Scene &scene, const std::vector<Rgb> &colours) {
  std::string bytes;
  // Vertex colours are linear in glTF; ours are sRGB (IEC 61966-2-1).
  const auto linear = [](std::uint8_t value) {
    const double c = value / 255.0;
    const double l = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    return static_cast<char>(static_cast<unsigned char>(std::lround(255.0 * l)));
  };
  for (const Rgb colour : colours)
    bytes += {linear(colour.r), linear(colour.g), linear(colour.b), static_cast<char>(0xFF)};
  return scene.add_accessor({{"bufferView", scene.add_view(bytes, kVertexBuffer)},
                             {"componentType", kUnsignedByte},
                             {"normalized", true},
                             {"count", colours.size()},
                             {"type", "VEC4"}});
}

int add_indices(Scene &scene, const std::vector<std::uint32_t> &indices) {
  std::string bytes;
  for (const std::uint32_t index : indices)
    put_u32(bytes, index);
  return scene.add_accessor({{"bufferView", scene.add_view(bytes, kIndexBuffer)},
                             {"componentType", kUnsignedInt},
                             {"count", indices.size()},
                             {"type", "SCALAR"}});
}

void add_feature(Scene &scene, const SurfaceGrid &grid, double range_um) {
  const Surface surface = surface_of(grid, range_um);
  if (surface.index.empty())
    return;
  const json attributes = {{"POSITION", add_vectors(scene, surface.position, 1.0 / kMetre_mm, true)},
                           {"NORMAL", add_vectors(scene, surface.normal, 1.0, false)},
                           {"COLOR_0", add_colours(scene, surface.colour)}};
  scene.root["meshes"].push_back({{"name", grid.name},
                                  {"primitives", json::array({{{"attributes", attributes},
                                                               {"indices", add_indices(scene, surface.index)},
                                                               {"material", 0}}})}});
  scene.root["nodes"].push_back({{"name", grid.name},
                                 {"mesh", scene.root["meshes"].size() - 1},
                                 {"extras",
                                  {{"columns", grid.columns},
                                   {"rows", grid.rows},
                                   {"chart_columns", grid.chart_columns},
                                   {"chart_rows", grid.chart_rows}}}});
  scene.root["scenes"][0]["nodes"].push_back(scene.root["nodes"].size() - 1);
}

void put_chunk(std::string &file, std::uint32_t name, std::string bytes, char filler) {
  bytes.resize((bytes.size() + 3) / 4 * 4, filler);
  put_u32(file, static_cast<std::uint32_t>(bytes.size()));
  put_u32(file, name);
  file += bytes;
}

} // namespace

std::string gltf_bytes(const Outcome &outcome, std::size_t cells_each) {
  Scene scene;
  scene.root = {
      {"asset", {{"version", "2.0"}, {"generator", "asperity"}}},
      {"scene", 0},
      {"scenes", json::array({{{"name", outcome.job.title}}})},
      {"materials",
       json::array({{{"name", "predicted surface"},
                     {"doubleSided", true},
                     {"pbrMetallicRoughness", {{"metallicFactor", 0.0}, {"roughnessFactor", 0.6}}}}})}};
  std::vector<std::vector<float>> values;
  for (const Chart &chart : outcome.charts)
    values.push_back(cut_residual_um(chart));
  const double range_um = common_range_um(values);
  scene.root["extras"] = {
      {"what", "Predicted by a model, not measured. True to size; only surfaces named in the job."},
      {"colours_um", {-range_um, range_um}}};
  for (std::size_t i = 0; i < outcome.charts.size(); ++i) {
    const SurfaceGrid grid = surface_grid(outcome.job.features[i], outcome.charts[i], cells_each);
    if (grid.columns > 0 && grid.rows > 0)
      add_feature(scene, grid, range_um);
  }
  scene.binary.resize((scene.binary.size() + 3) / 4 * 4, '\0');
  if (!scene.binary.empty())
    scene.root["buffers"] = json::array({{{"byteLength", scene.binary.size()}}});

  std::string chunks;
  put_chunk(chunks, kJsonChunk, scene.root.dump(-1, ' ', false, json::error_handler_t::replace), ' ');
  if (!scene.binary.empty())
    put_chunk(chunks, kBinaryChunk, scene.binary, '\0');
  std::string file;
  put_u32(file, kMagic);
  put_u32(file, 2);
  put_u32(file, static_cast<std::uint32_t>(chunks.size() + 12));
  return file + chunks;
}

} // namespace asperity
