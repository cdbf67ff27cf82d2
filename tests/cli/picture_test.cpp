// Pictures in space through the program: what is written, and what is said of wrong options.
#include "cli/workshop.h"

#include <gtest/gtest.h>

namespace asperity::test_support {

namespace {

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

#if ASPERITY_DRAWS
/// Width or height of a PNG: bytes 16 to 23 of the file (ISO/IEC 15948, 11.2.2 IHDR).
unsigned png_number(const std::string &png, std::size_t at) {
  unsigned n = 0;
  for (std::size_t k = at; k < at + 4 && k < png.size(); ++k)
    n = 256 * n + static_cast<unsigned char>(png[k]);
  return n;
}
#endif

} // namespace

using Picture = Workshop;

#if ASPERITY_DRAWS

TEST_F(Picture, EveryViewIsWrittenInTheSizeAsked) {
  for (const char *view : {"part", "wall", "section"}) {
    const Ran ran = run({"picture", "bush.toml", "--view", view, "--size", "480x360", "-o", "bush.png"});
    if (holds(ran.err, "OpenGL"))
      GTEST_SKIP() << ran.err;
    EXPECT_EQ(ran.status, 0) << view << ran.err;
    const std::string png = read("bush.png");
    ASSERT_TRUE(png.starts_with("\x89PNG\r\n\x1a\n")) << view;
    EXPECT_EQ(png_number(png, 16), 480u);
    EXPECT_EQ(png_number(png, 20), 360u);
  }
}

TEST_F(Picture, ColoursAndExaggerationChangeThePicture) {
  const auto picture = [&](std::vector<std::string> more) {
    std::vector<std::string> all = {"picture", "bush.toml", "--size", "480x360", "-o", "bush.png"};
    all.insert(all.end(), more.begin(), more.end());
    return run(all).status == 0 ? read("bush.png") : std::string();
  };
  const std::string lamp = picture({});
  if (lamp.empty())
    GTEST_SKIP() << "no OpenGL here";
  EXPECT_NE(picture({"--colour", "residual"}), lamp);
  EXPECT_NE(picture({"--exaggeration", "200"}), lamp);
  EXPECT_NE(picture({"--from", "120,40"}), lamp);
  EXPECT_NE(picture({"--lamp", "60,10"}), lamp);
  EXPECT_NE(picture({"--with", "path,blank"}), lamp);
  EXPECT_EQ(picture({}), lamp) << "the same picture twice";
}

TEST_F(Picture, WhatCannotBeDrawnIsRefusedBeforeTheRun) {
  const std::vector<std::string> first = {"picture", "bush.toml", "-o", "bush.png"};
  const auto refused = [&](std::vector<std::string> more, std::string_view words) {
    std::vector<std::string> all = first;
    all.insert(all.end(), more.begin(), more.end());
    const Ran ran = run(all);
    EXPECT_EQ(ran.status, 2) << more.back();
    EXPECT_TRUE(holds(ran.err, words)) << ran.err;
  };
  refused({"--size", "huge"}, "1600x1000");
  refused({"--size", "100x100"}, "320");
  refused({"--feature", "inner side"}, "\"outer side\"");
  refused({"--view", "floor"}, "no floor");
  refused({"--with", "cutter"}, "--moment");
  refused({"--exaggeration", "0.5"}, "--exaggeration");
  refused({"--from", "20"}, "--from");
  EXPECT_EQ(files(), (std::vector<std::string>{"bush.ngc", "bush.toml"}));
}

TEST_F(Picture, AFolderThatIsNotThereIsSaidSo) {
  const Ran ran = run({"picture", "bush.toml", "-o", "nowhere/bush.png"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "nowhere")) << ran.err;
}

#else

TEST_F(Picture, WithoutOpenGLTheProgramSaysWhatIsMissing) {
  const Ran ran = run({"picture", "bush.toml", "-o", "bush.png"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "ASPERITY_VIEWER=ON")) << ran.err;
}

#endif

} // namespace asperity::test_support
