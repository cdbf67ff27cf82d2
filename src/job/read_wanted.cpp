// The sizes and the finish wanted of a feature, and small things several sections share.
#include "job_sections.h"
#include "ranges.h"

#include <fmt/format.h>

namespace asperity {

std::optional<SizeWanted> read_size_wanted(KeyReader &reader, std::string_view key, double drawn_mm) {
  auto wanted = reader.table(key, Need::optional);
  if (!wanted)
    return std::nullopt;
  const double nominal_mm = wanted->number("nominal", kCoordinate_mm, Need::optional).value_or(drawn_mm);
  const auto plus_mm = wanted->number("plus", kTolerance_mm, Need::required);
  const auto minus_mm = wanted->number("minus", kTolerance_mm, Need::required);
  wanted->finish();
  if (!plus_mm || !minus_mm)
    return std::nullopt;
  const SizeWanted size{nominal_mm, nominal_mm - *minus_mm, nominal_mm + *plus_mm};
  if (!(size.lower_mm < size.upper_mm)) {
    reader.error(key, fmt::format("allows nothing: from {} down to {}", size.lower_mm, size.upper_mm),
                 "Allowed is nominal - minus up to nominal + plus; both are usually positive.");
    return std::nullopt;
  }
  if (drawn_mm < size.lower_mm - 1e-9 || drawn_mm > size.upper_mm + 1e-9)
    reader.warning(key,
                   fmt::format("allows {} to {} mm, but the feature is drawn at {} mm", size.lower_mm,
                               size.upper_mm, drawn_mm),
                   "Check the nominal size and the drawn one.");
  return size;
}

FinishWanted read_finish(KeyReader &reader) {
  FinishWanted finish;
  auto wanted = reader.table("finish", Need::optional);
  if (!wanted)
    return finish;
  finish.ra_um = wanted->number("ra_um", {0.01, 500}, Need::optional);
  finish.lip_mm = wanted->number("lip_mm", {0, 20}, Need::optional);
  finish.witness_depth_um = wanted->number("witness_depth_um", {0.1, 2000}, Need::optional);
  wanted->finish();
  return finish;
}

std::filesystem::path beside_job(const ReadLog &log, const std::string &name) {
  return (std::filesystem::path(log.file).parent_path() / name).lexically_normal();
}

std::optional<MeshRays> read_mesh(KeyReader &reader) {
  const auto name = reader.text("mesh", Need::required);
  const Vec3 moved_mm = reader.point3("mesh_moved_mm", Need::optional).value_or(Vec3{0.0});
  if (!name)
    return std::nullopt;
  const std::filesystem::path path = beside_job(reader.log(), *name);
  auto mesh = read_stl(path, reader.log().problems);
  if (!mesh) {
    reader.error("mesh", fmt::format("names a mesh that cannot be used: {}", path.string()),
                 "Give an STL file in mm; its name is taken from the job file's folder.");
    return std::nullopt;
  }
  for (auto &triangle : mesh->triangles)
    for (Vec3 &corner : triangle)
      corner += moved_mm;
  mesh->low += moved_mm;
  mesh->high += moved_mm;
  return MeshRays(std::move(*mesh));
}

void check_heights(KeyReader &reader, double bottom_mm, double top_mm) {
  if (!(bottom_mm < top_mm))
    reader.error(reader.has("top_mm") ? "top_mm" : "bottom_mm",
                 fmt::format("leaves no height: bottom {} mm, top {} mm", bottom_mm, top_mm),
                 "Put the top above the bottom; z points up.");
}

} // namespace asperity
