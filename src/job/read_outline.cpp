// Plan outlines: circle, rounded rectangle, or lines and arcs that close.
#include "job_sections.h"
#include "ranges.h"

#include "asperity/base/units.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

namespace {

/// Ends may miss each other by what three decimals in a drawing leave open.
constexpr double kMeet_mm = 0.002;

const Choice<OutlineKind> kOutlineKinds[] = {{"circle", OutlineKind::circle},
                                             {"rounded_rectangle", OutlineKind::rounded_rectangle},
                                             {"free_form", OutlineKind::free_form}};
enum class Turn { left, right };
const Choice<Turn> kTurns[] = {{"left", Turn::left}, {"right", Turn::right}};

bool is_circle(const OutlineGiven &o) { return o.kind == OutlineKind::circle; }
bool is_rectangle(const OutlineGiven &o) { return o.kind == OutlineKind::rounded_rectangle; }

const NumberKey<OutlineGiven> kOutlineKeys[] = {
    {"diameter_mm",
     field<OutlineGiven, &OutlineGiven::diameter_mm>,
     kLength_mm,
     Need::required,
     {},
     is_circle},
    {"width_x_mm",
     plan_axis<OutlineGiven, &OutlineGiven::width_mm, 0>,
     kLength_mm,
     Need::required,
     {},
     is_rectangle},
    {"width_y_mm",
     plan_axis<OutlineGiven, &OutlineGiven::width_mm, 1>,
     kLength_mm,
     Need::required,
     {},
     is_rectangle},
    {"corner_radius_mm",
     field<OutlineGiven, &OutlineGiven::corner_radius_mm>,
     kLengthOrNone_mm,
     Need::required,
     {},
     is_rectangle},
};

double sweep_rad(Vec2 from_centre, Vec2 to_centre, Turn turn) {
  double sweep = std::atan2(to_centre.y, to_centre.x) - std::atan2(from_centre.y, from_centre.x);
  if (turn == Turn::left && sweep <= 0)
    sweep += 2 * kPi;
  if (turn == Turn::right && sweep >= 0)
    sweep -= 2 * kPi;
  return sweep;
}

std::optional<OutlineElement> read_arc(KeyReader &reader, Vec2 begin) {
  const auto end = reader.point2("arc_to_mm", Need::required);
  const auto centre = reader.point2("centre_mm", Need::required);
  const auto turn = reader.choice<Turn>("turn", kTurns, Need::required);
  if (!end || !centre || !turn)
    return std::nullopt;
  const double begin_radius_mm = glm::length(begin - *centre);
  const double end_radius_mm = glm::length(*end - *centre);
  if (begin_radius_mm < kMeet_mm) {
    reader.error("centre_mm", "lies on the arc's beginning: the arc has no radius", "Move the centre.");
    return std::nullopt;
  }
  if (std::abs(begin_radius_mm - end_radius_mm) > kMeet_mm) {
    reader.error("centre_mm",
                 fmt::format("is {:.4f} mm from the arc's beginning but {:.4f} mm from its end",
                             begin_radius_mm, end_radius_mm),
                 "Move the centre or the end so that both radii agree.");
    return std::nullopt;
  }
  return OutlineElement{begin, *end, *centre, sweep_rad(begin - *centre, *end - *centre, *turn)};
}

std::optional<OutlineElement> read_element(KeyReader &reader, Vec2 begin) {
  std::optional<OutlineElement> element;
  if (reader.has("arc_to_mm")) {
    element = read_arc(reader, begin);
    reader.belongs("line_to_mm", false, "an arc");
  } else {
    if (const auto end = reader.point2("line_to_mm", Need::optional))
      element = OutlineElement{begin, *end, {}, 0.0};
    else if (!reader.has("line_to_mm"))
      reader.error("line_to_mm", "is missing", "Give line_to_mm, or arc_to_mm with centre_mm and turn.");
    reader.know("arc_to_mm");
    reader.belongs("centre_mm", false, "a line");
    reader.belongs("turn", false, "a line");
  }
  reader.finish();
  return element;
}

void know_outline_keys(KeyReader &reader) {
  for (const auto &key : kOutlineKeys)
    reader.know(key.name);
  for (const char *key : {"centre_mm", "start_mm", "elements"})
    reader.know(key);
}

/// Makes the outline out of what was given; nothing when the sizes do not go together.
std::optional<Outline> drawn(KeyReader &reader, const OutlineGiven &given) {
  if (is_circle(given))
    return Outline::circle(given.centre, given.diameter_mm);
  const double narrower_mm = std::min(given.width_mm.x, given.width_mm.y);
  if (2 * given.corner_radius_mm > narrower_mm) {
    reader.error("corner_radius_mm",
                 fmt::format("is more than half of the narrower side, {} mm", narrower_mm),
                 "Make it at most half of the narrower side.");
    return std::nullopt;
  }
  return Outline::rounded_rectangle(given.centre, given.width_mm.x, given.width_mm.y, given.corner_radius_mm);
}

} // namespace

std::optional<Outline> read_free_form(KeyReader &reader) {
  const auto start = reader.point2("start_mm", Need::required);
  std::vector<KeyReader> rows = reader.tables("elements");
  if (rows.empty() && !reader.has("elements"))
    reader.error("elements", "is missing",
                 "Add elements = [ { line_to_mm = [x, y] }, ... ] that lead back to start_mm.");
  if (!start || rows.empty())
    return std::nullopt;

  // Each element begins where the one before ended.
  std::vector<OutlineElement> elements;
  Vec2 at = *start;
  for (KeyReader &row : rows) {
    const auto element = read_element(row, at);
    if (!element)
      return std::nullopt;
    elements.push_back(*element);
    at = element->end;
  }

  const double gap_mm = glm::length(at - *start);
  if (gap_mm > kMeet_mm) {
    reader.error("elements", fmt::format("do not close: the last one ends {:.4f} mm from start_mm", gap_mm),
                 fmt::format("End the last element at [{}, {}].", start->x, start->y));
    return std::nullopt;
  }
  elements.back().end = *start;
  Outline outline(std::move(elements));
  if (const std::string fault = outline.fault(); !fault.empty()) {
    reader.error("elements", "make no usable outline: " + fault,
                 "Draw one closed line that does not cross itself.");
    return std::nullopt;
  }
  return outline;
}

std::optional<OutlineGiven> read_outline(KeyReader &reader) {
  OutlineGiven given;
  const std::size_t errors_before = reader.log().problems.error_count();
  const auto kind = reader.choice<OutlineKind>("outline", kOutlineKinds, Need::required);
  if (!kind) {
    know_outline_keys(reader);
    return std::nullopt;
  }
  given.kind = *kind;
  const bool is_free = *kind == OutlineKind::free_form;
  const std::string kind_word = fmt::format("outline = \"{}\"", kOutlineKinds[static_cast<int>(*kind)].word);
  reader.numbers<OutlineGiven>(given, kOutlineKeys, kind_word);

  if (is_free) {
    reader.belongs("centre_mm", false, kind_word);
    if (const auto outline = read_free_form(reader)) {
      given.outline = *outline;
      given.centre = 0.5 * (outline->low() + outline->high());
    }
  } else {
    reader.belongs("start_mm", false, kind_word);
    reader.belongs("elements", false, kind_word);
    given.centre = reader.point2("centre_mm", Need::required).value_or(Vec2{0.0});
    if (reader.log().problems.error_count() == errors_before)
      if (const auto outline = drawn(reader, given))
        given.outline = *outline;
  }
  return reader.log().problems.error_count() == errors_before ? std::optional(given) : std::nullopt;
}

} // namespace asperity
