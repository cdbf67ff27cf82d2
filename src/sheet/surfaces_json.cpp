// The thinned-out surfaces of all plans for the view that can be turned.
#include "html.h"
#include "sheet_page.h"

#include "asperity/base/digest.h"
#include "asperity/base/units.h"
#include "asperity/picture/colour_map.h"
#include "asperity/sheet/strip_picture.h"
#include "asperity/sheet/surface_grid.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace asperity {

namespace {

using nlohmann::json;

constexpr double kMostSteps = 32000.0; // of a 16-bit number
constexpr int kColours = 33;

/// Values as 16-bit steps of the unit that just holds them all, little end first, in base 64.
struct Packed {
  double unit = 1;
  std::string text;
};

Packed packed(const std::vector<double> &values) {
  double most = 0.0;
  for (const double value : values)
    most = std::max(most, std::abs(value));
  Packed out{.unit = most > 0.0 ? most / kMostSteps : 1.0, .text = {}};
  std::string bytes;
  for (const double value : values) {
    const auto steps = static_cast<std::uint16_t>(static_cast<std::int16_t>(std::lround(value / out.unit)));
    bytes += static_cast<char>(steps & 0xFFu);
    bytes += static_cast<char>(steps >> 8);
  }
  out.text = base64(bytes);
  return out;
}

double thousandths(double value) { return std::round(value * 1000.0) / 1000.0; }

json rounded(const std::vector<double> &values) {
  json out = json::array();
  for (const double value : values)
    out.push_back(thousandths(value));
  return out;
}

void add_wall(json &out, const SurfaceGrid &grid) {
  out["foot"] = json::array();
  out["normal"] = json::array();
  for (std::size_t i = 0; i < grid.columns; ++i)
    for (int axis = 0; axis < 2; ++axis) {
      out["foot"].push_back(thousandths(grid.foot[i][axis]));
      out["normal"].push_back(std::round(grid.normal[i][axis] * 1e5) / 1e5);
    }
  out["z"] = rounded(grid.z_mm);
}

/// A level floor needs one height, a dome one a cell.
void add_floor(json &out, const SurfaceGrid &grid) {
  out["x"] = rounded(grid.x_mm);
  out["y"] = rounded(grid.y_mm);
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (std::size_t k = 0; k < grid.cell.size(); ++k)
    if (grid.cell[k] != GridCell::absent) {
      low = std::min(low, grid.wanted_z_mm[k]);
      high = std::max(high, grid.wanted_z_mm[k]);
    }
  out["base_mm"] = std::isfinite(low) ? low : 0.0;
  if (!(high - low > 1e-6))
    return;
  std::vector<double> heights;
  for (std::size_t k = 0; k < grid.cell.size(); ++k)
    heights.push_back(grid.cell[k] == GridCell::absent ? 0.0 : grid.wanted_z_mm[k] - low);
  const Packed pack = packed(heights);
  out["heights"] = pack.text;
  out["height_unit_mm"] = pack.unit;
}

json feature_json(const SurfaceGrid &grid) {
  std::string cells;
  for (const GridCell cell : grid.cell)
    cells += static_cast<char>(cell);
  const Packed e = packed({grid.e_mm.begin(), grid.e_mm.end()});
  json out = {{"name", grid.name},       {"wall", grid.is_wall}, {"inside", grid.is_inside},
              {"columns", grid.columns}, {"rows", grid.rows},    {"e", e.text},
              {"unit_mm", e.unit},       {"cell", base64(cells)}};
  if (grid.is_wall)
    add_wall(out, grid);
  else
    add_floor(out, grid);
  return out;
}

struct Box {
  Vec3 low{std::numeric_limits<double>::infinity()}, high{-std::numeric_limits<double>::infinity()};
  void hold(const SurfaceGrid &grid) {
    for (std::size_t j = 0; j < grid.rows; ++j)
      for (std::size_t i = 0; i < grid.columns; ++i)
        if (grid.cell[grid.at(i, j)] != GridCell::absent) {
          low = glm::min(low, grid.point_mm(i, j));
          high = glm::max(high, grid.point_mm(i, j));
        }
  }
};

/// Where the first witness line is seen best, a little from the side; else from the front left.
double turn_deg(const SheetPage &page, Vec3 middle) {
  for (const Outcome *outcome : page.input.outcomes)
    for (const Finding &finding : outcome->findings)
      if (finding.kind == FindingKind::witness_line)
        return std::fmod(
            deg_from_rad(std::atan2(finding.place_mm.y - middle.y, finding.place_mm.x - middle.x)) + 374.0,
            360.0);
  return 300.0;
}

} // namespace

std::string surfaces_json(const SheetPage &page) {
  json book = {{"plans", json::array()}, {"colours", json::array()}};
  Box box;
  std::vector<std::vector<float>> values;
  for (std::size_t k = 0; k < page.plans(); ++k) {
    const Outcome &outcome = page.outcome(k);
    json features = json::array();
    for (std::size_t i = 0; i < outcome.charts.size(); ++i) {
      const SurfaceGrid grid = surface_grid(outcome.job.features[i], outcome.charts[i], kViewCells);
      if (grid.columns == 0 || grid.rows == 0)
        continue;
      box.hold(grid);
      values.push_back(cut_residual_um(outcome.charts[i]));
      features.push_back(feature_json(grid));
    }
    book["plans"].push_back({{"letter", page.letter(k)}, {"features", std::move(features)}});
  }
  const bool is_empty = !(box.low.x <= box.high.x);
  const Vec3 middle = is_empty ? Vec3(0.0) : 0.5 * (box.low + box.high);
  for (int k = 0; k < kColours; ++k) {
    const Rgb colour = residual_colour(2.0 * k / (kColours - 1) - 1.0);
    book["colours"].push_back({colour.r, colour.g, colour.b});
  }
  book["middle"] = {middle.x, middle.y, middle.z};
  book["radius_mm"] = is_empty ? 1.0 : std::max(0.5 * glm::length(box.high - box.low), 1e-3);
  book["range_um"] = common_range_um(values);
  book["times"] = std::max(1.0, page.input.pictures.exaggeration);
  book["turn_deg"] = turn_deg(page, middle);
  return script_safe(book.dump(-1, ' ', false, json::error_handler_t::replace));
}

} // namespace asperity
