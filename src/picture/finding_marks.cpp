// Numbered marks where the findings are, and the list that explains them.
#include "finding_marks.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kRing_px = 9.0;
constexpr int kTagHeight_px = 24;
constexpr std::size_t kMostListed = 12;
constexpr std::size_t kMostSizes = 2; ///< the summary has the others

std::string words_of(const Finding &finding) {
  std::string text(name_of(finding.kind));
  if (finding.weight == Weight::danger)
    text = "DANGER: " + text;
  if (!finding.where.empty())
    text += ", " + finding.where;
  for (std::size_t i = 0; i < finding.size.size() && i < kMostSizes; ++i)
    text += fmt::format("{} {} {}", i == 0 ? ":" : ",", finding.size[i].name,
                        quantity_text(finding.size[i].value, finding.size[i].unit));
  const std::string lines = lines_text(finding.lines, finding.line_count);
  return lines.empty() ? text : text + " (program " + lines + ")";
}

bool overlap(const Box &a, const Box &b) {
  return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

bool within(const Box &inner, const Box &outer) {
  return inner.x >= outer.x && inner.y >= outer.y && inner.right() <= outer.right() &&
         inner.bottom() <= outer.bottom();
}

/// The tag's place beside the ring: the first of eight that hides no other tag or ring.
Box tag_beside(double x, double y, int width, const Box &panel, const std::vector<Box> &taken) {
  constexpr int kGap_px = 15;
  const int cx = static_cast<int>(std::lround(x)), cy = static_cast<int>(std::lround(y));
  const int right = cx + kGap_px, left = cx - kGap_px - width;
  const int above = cy - kGap_px - kTagHeight_px, below = cy + kGap_px, level = cy - kTagHeight_px / 2;
  const int spots[][2] = {{right, above}, {left, above}, {right, below},      {left, below},
                          {right, level}, {left, level}, {right + 40, above}, {left - 40, above}};
  for (const auto &spot : spots) {
    const Box box{spot[0], spot[1], width, kTagHeight_px};
    const bool is_free =
        std::none_of(taken.begin(), taken.end(), [&](const Box &t) { return overlap(t, box); });
    if (is_free && within(box, panel))
      return box;
  }
  return {std::clamp(right, panel.x, panel.right() - width),
          std::clamp(above, panel.y, panel.bottom() - kTagHeight_px), width, kTagHeight_px};
}

/// Dangers are white on dark, everything else dark on white.
void draw_tag(Page &page, const Box &box, const Mark &mark) {
  const bool is_danger = mark.weight == Weight::danger;
  fill_rounded(page.image, box, 6.0, kInk);
  if (!is_danger)
    fill_rounded(page.image, {box.x + 2, box.y + 2, box.width - 4, box.height - 4}, 4.0, kPaper);
  page.write(std::to_string(mark.number), box.x + box.width / 2, box.y + 18, kText_px,
             is_danger ? kPaper : kInk, Anchor::centre);
}

int tag_width(const Page &page, const Mark &mark) {
  return std::max(24, page.lettering.width_px(std::to_string(mark.number), kText_px) + 12);
}

} // namespace

std::vector<Mark> marks_on(const Chart &chart, const Plane &plane, std::size_t feature,
                           const std::vector<Finding> &findings) {
  std::vector<Mark> marks;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding &finding = findings[i];
    if (finding.feature < 0 || static_cast<std::size_t>(finding.feature) != feature)
      continue;
    const Vec2 place = chart_place(chart, finding.place_mm);
    const bool has_place = std::isfinite(place.x) && std::isfinite(place.y);
    marks.push_back({.number = i + 1,
                     .weight = finding.weight,
                     .x_mm = has_place ? std::clamp(plane.x_offset_mm(place.x), 0.0, plane.width_mm) : 0.0,
                     .y_mm = has_place ? std::clamp(plane.y_offset_mm(place.y), 0.0, plane.height_mm) : 0.0,
                     .words = words_of(finding)});
  }
  std::stable_sort(marks.begin(), marks.end(),
                   [](const Mark &a, const Mark &b) { return a.weight > b.weight; });
  return marks;
}

void draw_marks(Page &page, const Box &panel, const Plane &plane, const std::vector<Mark> &marks) {
  std::vector<Box> taken;
  const auto x_of = [&](const Mark &m) { return panel.x + m.x_mm / plane.width_mm * panel.width; };
  const auto y_of = [&](const Mark &m) { return panel.bottom() - m.y_mm / plane.height_mm * panel.height; };
  constexpr int kReach = static_cast<int>(kRing_px) + 2;
  for (const Mark &mark : marks) {
    const int x = static_cast<int>(x_of(mark)), y = static_cast<int>(y_of(mark));
    taken.push_back({x - kReach, y - kReach, 2 * kReach, 2 * kReach});
    ring(page.image, x_of(mark), y_of(mark), kRing_px, 5.0, kPaper);
    ring(page.image, x_of(mark), y_of(mark), kRing_px, 2.2, kInk);
  }
  for (const Mark &mark : marks) {
    const Box box = tag_beside(x_of(mark), y_of(mark), tag_width(page, mark), panel, taken);
    taken.push_back(box);
    draw_tag(page, box, mark);
  }
}

int draw_list(Page &page, const std::vector<Mark> &marks, std::size_t dangers_elsewhere, int y,
              int width_px) {
  page.write(marks.empty() ? "No findings on this surface" : "Findings on this surface", kMargin_px, y + 8,
             kHeading_px, kInk);
  y += 26;
  for (std::size_t i = 0; i < marks.size() && i < kMostListed; ++i) {
    const int width = tag_width(page, marks[i]);
    draw_tag(page, {kMargin_px, y, width, kTagHeight_px}, marks[i]);
    const int x = kMargin_px + 52;
    for (const std::string &text :
         fitted_lines(page.lettering, marks[i].words, kText_px, width_px - x - kMargin_px)) {
      page.write(text, x, y + 18, kText_px, kInk);
      y += kLine_px;
    }
    y += 7;
  }
  if (marks.size() > kMostListed) {
    page.write(fmt::format("and {} more in the summary", marks.size() - kMostListed), kMargin_px + 52, y + 14,
               kText_px, kSoftInk);
    y += kLine_px;
  }
  if (dangers_elsewhere > 0) {
    page.write(fmt::format("{} elsewhere in this job: see the summary",
                           count_text(dangers_elsewhere, "danger", "dangers")),
               kMargin_px, y + 18, kText_px, kInk);
    y += kLine_px;
  }
  return y;
}

} // namespace asperity
