// Reads STL, binary and text, and says what is wrong with files that only look like it.
#include "asperity/shape/mesh.h"

#include "asperity/base/text_file.h"

#include "stl_text.h"

#include <fmt/format.h>

#include <bit>
#include <cmath>
#include <cstdint>
#include <cstring>

namespace asperity {
namespace {

constexpr std::size_t kMostBytes = std::size_t{1} << 30;
/// Layout of binary STL (from memory, the layout is common practice without a standard): 80 bytes of title, a
/// count, then for each triangle a normal, three corners (float32, little endian) and two spare bytes.
constexpr std::size_t kHead = 84, kTriangle = 50;
/// Nothing this program works on is larger [mm]; a larger number is a wrong unit or a broken file.
constexpr double kLargest_mm = 1e5;

template <class T> T little_endian(const char *bytes) {
  static_assert(std::endian::native == std::endian::little, "numbers in STL files are little endian");
  T value;
  std::memcpy(&value, bytes, sizeof value);
  return value;
}

std::size_t promised_triangles(std::string_view bytes) {
  return little_endian<std::uint32_t>(bytes.data() + 80);
}

/// Binary titles may begin with "solid" too, so a size that fits decides first.
bool is_text(std::string_view bytes) {
  if (bytes.size() >= kHead && bytes.size() == kHead + kTriangle * promised_triangles(bytes))
    return false;
  const std::string_view opening = bytes.substr(0, 4096);
  return begins_like_text_stl(opening) && opening.find('\0') == std::string_view::npos;
}

std::vector<std::array<Vec3, 3>> read_binary(std::string_view bytes, const std::string &file,
                                             Problems &problems) {
  if (bytes.size() < kHead) {
    problems.error(file, 0, 0,
                   "this is not an STL file: too short for the head of a binary one and it does not "
                   "begin with 'solid'",
                   "Export the mesh again as STL.");
    return {};
  }
  const std::size_t promised = promised_triangles(bytes), held = (bytes.size() - kHead) / kTriangle;
  if (promised > held) {
    problems.error(
        file, 0, 0,
        fmt::format("the file is cut short or is not STL: its head promises {} triangles, it holds {}",
                    promised, held),
        "Export or copy the mesh again.");
    return {};
  }
  if (bytes.size() > kHead + kTriangle * promised)
    problems.warning(file, 0, 0,
                     fmt::format("the file goes on for {} bytes after the {} triangles its head promises",
                                 bytes.size() - kHead - kTriangle * promised, promised),
                     "Export the mesh again if triangles are missing.");
  std::vector<std::array<Vec3, 3>> triangles(promised);
  const char *at = bytes.data() + kHead;
  for (std::size_t i = 0; i < promised; ++i, at += kTriangle)
    for (std::size_t corner = 0; corner < 3; ++corner)
      for (std::size_t axis = 0; axis < 3; ++axis)
        triangles[i][corner][static_cast<glm::length_t>(axis)] =
            double(little_endian<float>(at + 12 + 12 * corner + 4 * axis));
  return triangles;
}

bool is_usable(const std::array<Vec3, 3> &triangle, double *worst) {
  for (const Vec3 &p : triangle)
    for (const double v : {p.x, p.y, p.z})
      if (!(std::abs(v) <= kLargest_mm)) {
        *worst = v;
        return false;
      }
  return true;
}

void check_coordinates(const Mesh &mesh, const std::string &file, Problems &problems) {
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    double worst = 0.0;
    if (is_usable(mesh.triangles[i], &worst))
      continue;
    if (std::isfinite(worst))
      problems.error(
          file, 0, 0, fmt::format("triangle {} reaches out to {:g} mm", i + 1, worst),
          fmt::format("Check the unit: sizes are taken as mm and may reach {:g} mm.", kLargest_mm));
    else
      problems.error(file, 0, 0,
                     fmt::format("triangle {} has a coordinate that is not a finite number", i + 1),
                     "Repair the mesh or export it again.");
    return; // one such number usually means thousands
  }
}

} // namespace

std::optional<Mesh> read_stl(const std::filesystem::path &path, Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  const std::optional<std::string> bytes = read_file(path, kMostBytes, problems);
  if (!bytes)
    return std::nullopt;
  const std::string file = path.string();
  Mesh mesh;
  mesh.triangles =
      is_text(*bytes) ? read_text_stl(*bytes, file, problems) : read_binary(*bytes, file, problems);
  if (problems.error_count() > errors_before)
    return std::nullopt;
  if (mesh.triangles.empty()) {
    problems.error(file, 0, 0, "the mesh has no triangle",
                   "Export the part again; check that it was selected.");
    return std::nullopt;
  }
  check_coordinates(mesh, file, problems);
  if (problems.error_count() > errors_before)
    return std::nullopt;
  mesh.low = mesh.high = mesh.triangles.front()[0];
  for (const auto &triangle : mesh.triangles)
    for (const Vec3 &p : triangle) {
      mesh.low = glm::min(mesh.low, p);
      mesh.high = glm::max(mesh.high, p);
    }
  return mesh;
}

} // namespace asperity
