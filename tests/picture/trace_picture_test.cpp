// The picture of a trace: single marks can be counted, curves stand where their heights are.
#include "asperity/picture/trace_picture.h"

#include "asperity/picture/write_png.h"
#include "layout.h"
#include "support/rim_trace.h"
#include "trace_panels.h"

#include <gtest/gtest.h>
#include <png.h>

#include <cmath>
#include <set>

namespace asperity {

namespace {

using test_support::kMark_mm;
using test_support::kMarkHeight_um;
using test_support::rim_trace;
using test_support::RimTrace;

bool is_near(Rgb a, Rgb b) {
  constexpr int kSameInk = 40; // sum of the three channels: an inked pixel blended a little with its ground
  return std::abs(a.r - b.r) + std::abs(a.g - b.g) + std::abs(a.b - b.b) < kSameInk;
}

/// A trace's panels on a sheet of their own.
struct Sheet {
  Lettering lettering;
  TracePanels panels;
  Page page;
  explicit Sheet(const RimTrace &rim)
      : panels(trace_panels(rim.view(), 100, 60, 1200)), page{Image(1400, 1100, kPaper), lettering} {
    draw_trace_panels(page, rim.view(), panels);
  }
  /// Middle of the ink in a column of a plot; NaN without any.
  double ink_y(const Box &box, int x, Rgb ink) const {
    double sum = 0, count = 0;
    for (int y = box.y; y < box.bottom(); ++y)
      if (is_near(page.image.at(x, y), ink)) {
        sum += y + 0.5;
        ++count;
      }
    return count > 0 ? sum / count : std::nan("");
  }
};

int count_of(const Image &image, const Box &box, Rgb colour) {
  int count = 0;
  for (int y = box.y; y < box.bottom(); ++y)
    for (int x = box.x; x < box.right(); ++x)
      count += image.at(x, y) == colour ? 1 : 0;
  return count;
}

} // namespace

TEST(TracePicture, DecodesAndIsFullOfColours) {
  const ChartPicture picture = trace_picture(rim_trace().view());
  const std::string bytes = png_bytes(picture.image);
  png_image header{};
  header.version = PNG_IMAGE_VERSION;
  ASSERT_TRUE(png_image_begin_read_from_memory(&header, bytes.data(), bytes.size()));
  EXPECT_EQ(header.width, 1600u);
  EXPECT_GT(header.height, 900u);
  header.format = PNG_FORMAT_RGB;
  Image back(static_cast<int>(header.width), static_cast<int>(header.height), {});
  ASSERT_TRUE(png_image_finish_read(&header, nullptr, back.pixels.data(), 0, nullptr));
  std::set<std::tuple<int, int, int>> colours;
  for (Rgb p : back.pixels)
    colours.insert({p.r, p.g, p.b});
  EXPECT_GT(colours.size(), 100u); // three inks and lettering, all with soft edges
}

TEST(TracePicture, TenMarksCanBeCountedInTheCloseUp) {
  const Sheet sheet(rim_trace());
  const Plot &plot = sheet.panels.close;
  EXPECT_NEAR(plot.x_high_mm - plot.x_low_mm, 10.0 * kMark_mm, 1e-9);
  int crossings = 0;
  bool was_above = false, is_first = true;
  for (int x = plot.box.x + 1; x < plot.box.right() - 1; ++x) {
    const double y = sheet.ink_y(plot.box, x, kProfileInk);
    if (std::isnan(y))
      continue;
    const bool is_above = y < plot.y_px(0.0);
    crossings += !is_first && is_above != was_above ? 1 : 0;
    was_above = is_above;
    is_first = false;
  }
  EXPECT_NEAR(crossings, 20, 1); // two a wave; one may fall on the edge
}

TEST(TracePicture, TheCloseUpStandsWhereItsHeightsAre) {
  constexpr double kOff_px = 3.0; // half the pen and a steep flank
  const RimTrace rim = rim_trace();
  const Sheet sheet(rim);
  const Plot &plot = sheet.panels.close;
  int seen = 0;
  for (double place = plot.x_low_mm + 0.01; place < plot.x_high_mm; place += 0.5 * kMark_mm) {
    // Crests and hollows, where the curve lies level.
    const double crest =
        rim.trace.begin_mm + 0.5 * kMark_mm * std::round((place - rim.trace.begin_mm) / (0.5 * kMark_mm));
    const int x = static_cast<int>(plot.x_px(crest));
    if (x <= plot.box.x + 2 || x >= plot.box.right() - 2)
      continue;
    const double height =
        kMarkHeight_um * std::cos(2.0 * 3.14159265358979 * (crest - rim.trace.begin_mm) / kMark_mm);
    EXPECT_NEAR(sheet.ink_y(plot.box, x, kProfileInk), plot.y_px(height), kOff_px);
    ++seen;
  }
  EXPECT_GE(seen, 18);
}

TEST(TracePicture, EvaluatedGroundIsWhiteAndTheRestIsNot) {
  const Sheet sheet(rim_trace());
  const Box &box = sheet.panels.whole.box;
  const auto ground = [&](double place_mm) {
    return sheet.page.image.at(static_cast<int>(sheet.panels.whole.x_px(place_mm)), box.bottom() - 3);
  };
  EXPECT_EQ(ground(10.7), kNotEvaluated); // 10 .. 16 mm, read from 11 to 15
  EXPECT_EQ(ground(11.1), kEvaluated);
  EXPECT_EQ(ground(14.9), kEvaluated);
  EXPECT_EQ(ground(15.3), kNotEvaluated);
}

TEST(TracePicture, OnlyUncutStretchesAreHatched) {
  RimTrace rim = rim_trace();
  const Sheet with(rim);
  std::fill(rim.trace.owner.begin(), rim.trace.owner.end(), 1u);
  const Sheet without(rim);
  Image hatched(60, 60, kPaper);
  hatch_not_cut(hatched, {0, 0, 60, 60});
  const Rgb stroke = hatched.at(0, 0); // x + y = 0 lies on a stroke
  const int strip = static_cast<int>(with.panels.whole.x_px(10.3)) - with.panels.whole.box.x;
  const Box left{with.panels.whole.box.x, with.panels.whole.box.y, strip, with.panels.whole.box.height};
  EXPECT_GT(count_of(with.page.image, left, stroke), left.width * left.height / 10);
  EXPECT_EQ(count_of(without.page.image, left, stroke), 0);
}

TEST(TracePicture, SurvivesEmptyUncutFlatAndBrokenTraces) {
  RimTrace rim = rim_trace();
  std::fill(rim.trace.owner.begin(), rim.trace.owner.end(), kNobody);
  EXPECT_GT(trace_picture(rim.view()).image.height, 900);
  std::fill(rim.trace.profile_mm.begin(), rim.trace.profile_mm.end(), 0.0);
  EXPECT_GT(trace_picture(rim.view()).image.height, 900);
  rim.trace.profile_mm[100] = std::nan("");
  rim.trace.profile_mm[200] = -std::numeric_limits<double>::infinity();
  EXPECT_GT(trace_picture(rim.view()).image.height, 900);
  rim.trace = Trace{};
  EXPECT_GT(trace_picture(rim.view()).image.height, 0);
  EXPECT_GT(trace_picture(rim_trace(0.05).view()).image.height, 900); // half a mark
}

} // namespace asperity
