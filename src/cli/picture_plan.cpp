// From the words of `asperity picture` to what the renderer is asked.
#include "picture_plan.h"

#include "asperity/base/units.h"
#include "asperity/render/scene.h"
#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace asperity {

namespace {

constexpr int kSmallest_px = 320, kLargest_px = 8192;
constexpr double kElevation = rad_from_deg(24.0);
/// What is looked at stands a little beside the middle, so that the lamp rakes over it.
constexpr double kBeside = rad_from_deg(14.0);

std::optional<PictureSize> size_of(const std::string &text) {
  PictureSize size;
  char rest = 0;
  if (std::sscanf(text.c_str(), "%dx%d%c", &size.width_px, &size.height_px, &rest) != 2)
    return std::nullopt;
  const bool is_fine = size.width_px >= kSmallest_px && size.height_px >= kSmallest_px &&
                       size.width_px <= kLargest_px && size.height_px <= kLargest_px;
  return is_fine ? std::optional(size) : std::nullopt;
}

bool suits(const std::string &view, const Feature &feature) {
  const bool is_wall = std::holds_alternative<WallFeature>(feature);
  return view == "wall" ? is_wall : view == "floor" ? !is_wall : true;
}

/// The named feature, or the first that suits the view; -1 if there is none.
int feature_of(const PictureRequest &request, const std::vector<Feature> &features) {
  for (std::size_t k = 0; k < features.size(); ++k)
    if (request.feature.empty() ? suits(request.view, features[k]) : name_of(features[k]) == request.feature)
      return static_cast<int>(k);
  return -1;
}

std::string names_of(const std::vector<Feature> &features) {
  std::string names;
  for (const Feature &feature : features)
    names += fmt::format("{}\"{}\"", names.empty() ? "" : ", ", name_of(feature));
  return names;
}

Colouring colouring_of(const std::string &word) {
  static const std::map<std::string, Colouring> kWords = {{"lamp", Colouring::lamp},
                                                          {"residual", Colouring::residual},
                                                          {"line", Colouring::line},
                                                          {"piece", Colouring::piece},
                                                          {"level", Colouring::level}};
  const auto found = kWords.find(word);
  return found == kWords.end() ? Colouring::quantity : found->second;
}

/// The first finding on the feature, or on any for -1: findings come weightiest first.
const Finding *first_finding(const Outcome &outcome, int feature) {
  for (const Finding &finding : outcome.findings)
    if (finding.feature >= 0 && (feature < 0 || finding.feature == feature))
      return &finding;
  return nullptr;
}

bool has(const PictureRequest &request, const char *thing) {
  return std::find(request.with.begin(), request.with.end(), thing) != request.with.end();
}

void look_from_space(PicturePlan &plan, const PictureRequest &request, const Outcome &outcome, int feature) {
  DrawRequest &draw = plan.draw;
  double azimuth = rad_from_deg(-60.0), elevation = kElevation;
  if (const Finding *finding = first_finding(outcome, request.feature.empty() ? -1 : feature)) {
    const Vec3 off = finding->place_mm - surface_bounds(outcome).middle();
    azimuth = std::atan2(off.y, off.x) + kBeside;
  }
  if (request.from_deg.size() == 2) {
    azimuth = rad_from_deg(request.from_deg[0]);
    elevation = rad_from_deg(request.from_deg[1]);
  }
  if (has(request, "path") || has(request, "blank"))
    draw.camera = camera_on(whole_bounds(outcome), draw.size, azimuth, elevation);
  else
    draw.camera = camera_on(surface_points(outcome, request.feature.empty() ? -1 : feature), draw.size,
                            azimuth, elevation);
  plan.caption.subtitle =
      fmt::format("seen from {:.0f} degrees, {:.0f} degrees above the level",
                  deg_from_rad(std::remainder(azimuth, 2.0 * kPi)), deg_from_rad(elevation));
}

SheetAxes strip_axes(const Outcome &outcome, std::size_t feature, const SheetView &view) {
  const auto *wall = std::get_if<WallChart>(&outcome.charts[feature]);
  const SheetBox box = strip_box(outcome, feature);
  if (!wall)
    return {.view = view, .low_mm = box.low_mm, .high_mm = box.high_mm, .across_name = "x", .up_name = "y"};
  const double length = wall->outline.length_mm();
  return {.view = view,
          .low_mm = box.low_mm,
          .high_mm = box.high_mm,
          .across_name = "s, along the outline",
          .up_name = "z",
          .across_origin_mm = seam_mm(outcome, feature) + (wall->inside ? length : 0.0),
          .across_wrap_mm = length,
          .is_mirrored = wall->inside};
}

void look_at_sheet(PicturePlan &plan, const PictureRequest &request, const Outcome &outcome,
                   std::size_t feature) {
  DrawRequest &draw = plan.draw;
  draw.feature = static_cast<int>(feature);
  const bool is_wall = std::holds_alternative<WallChart>(outcome.charts[feature]);
  if (request.view != "section") {
    draw.view = View::strip;
    draw.lamp = strip_lamp();
    const SheetBox box = strip_box(outcome, feature);
    const Vec2 extent = box.high_mm - box.low_mm;
    // A long low wall is drawn taller than it is, so that its marks can be made out.
    const double room = static_cast<double>(draw.size.height_px) / draw.size.width_px;
    const double stretch =
        is_wall ? std::clamp(std::floor(0.75 * room * extent.x / extent.y), 1.0, 6.0) : 1.0;
    draw.sheet = sheet_on(box.low_mm, box.high_mm, draw.size, stretch);
    plan.caption.axes = strip_axes(outcome, feature, draw.sheet);
    plan.caption.subtitle =
        is_wall ? fmt::format("unrolled, cut open at s = {:.1f} mm", seam_mm(outcome, feature))
                : std::string("seen from above");
    if (stretch > 1.0)
      plan.caption.subtitle += fmt::format("; drawn {:.0f} times taller than true", stretch);
    return;
  }
  draw.view = View::section;
  const Finding *finding = first_finding(outcome, draw.feature);
  const Vec2 place = finding ? strip_place_mm(outcome, feature, finding->place_mm) : Vec2(0.0);
  const double seam = seam_mm(outcome, feature);
  const auto *wall = std::get_if<WallChart>(&outcome.charts[feature]);
  double at = place.y;
  if (wall) {
    const double length = wall->outline.length_mm(), u = wall->inside ? length - place.x : place.x;
    at = finding ? std::fmod(u + seam, length) : 0.0;
  }
  draw.section_at_mm = request.at_mm.value_or(at);
  const SheetBox box = section_box(outcome, feature, draw.section_at_mm);
  draw.sheet = sheet_on(box.low_mm, box.high_mm, draw.size);
  plan.caption.axes = SheetAxes{.view = draw.sheet,
                                .low_mm = box.low_mm,
                                .high_mm = box.high_mm,
                                .across_name = is_wall ? "out from the wanted surface" : "x",
                                .up_name = is_wall ? "z" : "height above the floor"};
  plan.caption.subtitle = fmt::format("cut through at {} = {:.2f} mm; dotted: wanted, dashed: blank",
                                      is_wall ? "s" : "y", draw.section_at_mm);
}

std::string words_of(const Finding &finding) {
  const std::string kind = std::string(name_of(finding.kind));
  const std::string name = finding.weight == Weight::danger ? "DANGER: " + kind : kind;
  if (finding.size.empty())
    return name;
  std::string size = quantity_text(finding.size[0].value, finding.size[0].unit);
  if (size.ends_with(" %"))
    size.replace(size.size() - 2, 1, "\u00a0"); // number and sign stay in one line
  return fmt::format("{}, {} {}", name, finding.size[0].name, size);
}

void add_findings(PicturePlan &plan, const Outcome &outcome, int feature) {
  constexpr std::size_t kMost = 12;
  for (std::size_t k = 0; k < outcome.findings.size(); ++k) {
    if (feature >= 0 && outcome.findings[k].feature != feature)
      continue;
    if (plan.caption.findings.size() < kMost)
      plan.caption.findings.push_back({k, words_of(outcome.findings[k])});
    else
      ++plan.caption.findings_left_out;
  }
}

} // namespace

std::optional<Measure> measure_of(const PictureRequest &request) {
  static const std::map<std::string, Measure> kWords = {{"roughness", Measure::roughness},
                                                        {"bending", Measure::bending},
                                                        {"chip-load", Measure::chip_load},
                                                        {"speed", Measure::speed}};
  const auto found = kWords.find(request.colour);
  return found == kWords.end() ? std::nullopt : std::optional(found->second);
}

std::string fault_of(const PictureRequest &request, const Job &job) {
  if (!size_of(request.size))
    return fmt::format("--size {}: give width x height in pixels, as in 1600x1000, {} to {} each.",
                       request.size, kSmallest_px, kLargest_px);
  const int feature = feature_of(request, job.features);
  if (feature < 0 && !request.feature.empty())
    return fmt::format("the job has no feature \"{}\"; it has {}.", request.feature, names_of(job.features));
  if (feature < 0)
    return fmt::format("the job has no {}: choose another --view.", request.view);
  if (!suits(request.view, job.features[static_cast<std::size_t>(feature)]))
    return fmt::format("\"{}\" is no {}: choose another --feature or --view.", request.feature, request.view);
  if (has(request, "cutter") && !request.moment_s)
    return "--with cutter needs --moment, the time at which it is shown.";
  return {};
}

PicturePlan picture_plan(const PictureRequest &request, const Outcome &outcome) {
  PicturePlan plan;
  plan.sheet = sheet_layout(size_of(request.size).value_or(PictureSize{}));
  if (request.is_bare)
    plan.sheet.drawing = plan.sheet.whole;
  DrawRequest &draw = plan.draw;
  draw.size = plan.sheet.drawing;
  draw.px_scale = plan.sheet.scale;
  draw.theme = request.is_dark ? dark_theme() : light_theme();
  draw.colouring = colouring_of(request.colour);
  draw.exaggeration = request.exaggeration;
  draw.moment_s = request.moment_s;
  draw.things.path = has(request, "path");
  draw.things.blank = has(request, "blank");
  draw.things.cutter = has(request, "cutter");

  const int feature = feature_of(request, outcome.job.features);
  const bool is_part = request.view == "part";
  if (feature < 0 || static_cast<std::size_t>(feature) >= outcome.charts.size())
    plan.fault = "there is no such feature to draw.";
  else if (is_part)
    look_from_space(plan, request, outcome, feature);
  else
    look_at_sheet(plan, request, outcome, static_cast<std::size_t>(feature));
  if (request.lamp_deg.size() == 2) {
    draw.lamp.azimuth_rad = rad_from_deg(request.lamp_deg[0]);
    draw.lamp.elevation_rad = rad_from_deg(request.lamp_deg[1]);
    draw.lamp.turns_with_eye = false;
  }
  const bool is_one = !is_part || !request.feature.empty();
  const std::string what =
      is_one && feature >= 0 ? name_of(outcome.job.features[static_cast<std::size_t>(feature)]) : "";
  plan.caption.title =
      what.empty() ? outcome.job.title : fmt::format("{}  \u2014  {}", what, outcome.job.title);
  add_findings(plan, outcome, is_part ? -1 : feature);
  return plan;
}

} // namespace asperity
