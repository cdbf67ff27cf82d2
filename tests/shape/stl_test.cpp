// STL files, good and broken, in both forms.
#include "asperity/shape/mesh.h"

#include "asperity/base/text_file.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <unistd.h>

namespace asperity {
namespace {

namespace fs = std::filesystem;
using Corners = std::vector<std::array<Vec3, 3>>;

const Corners kTwo = {{Vec3(0, 0, 0), Vec3(10, 0, 0), Vec3(0, 10, 2)},
                      {Vec3(1, 1, 1), Vec3(2, 1, 1), Vec3(1, 2, -4)}};

std::string binary(const Corners &triangles, std::uint32_t promised, std::string title = "") {
  title.resize(80, ' ');
  std::string bytes = title;
  const auto put = [&](auto value) { bytes.append(reinterpret_cast<const char *>(&value), sizeof value); };
  put(promised);
  for (const auto &t : triangles) {
    for (int i = 0; i < 3; ++i)
      put(0.0f);
    for (const Vec3 &p : t)
      for (const double v : {p.x, p.y, p.z})
        put(static_cast<float>(v));
    put(std::uint16_t{0});
  }
  return bytes;
}

const char *const kText = "solid dome finial\n"
                          "  facet normal 0 0 1\n"
                          "    outer loop\n"
                          "      vertex 0 0 0\n"
                          "      vertex +1.0e1 0 0\n"
                          "      VERTEX 0 10.0 2\r\n"
                          "    endloop\n"
                          "  endfacet\n"
                          "endsolid dome finial\n";

class Stl : public ::testing::Test {
protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "asperity-test-XXXXXX").string();
    ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::optional<Mesh> read(const std::string &bytes) {
    EXPECT_EQ(write_file(folder_ / "a.stl", bytes), "");
    problems_ = Problems();
    return read_stl(folder_ / "a.stl", problems_);
  }
  /// Reading fails with an error whose message holds `words`.
  void expect_refused(const std::string &bytes, const std::string &words, int line = 0) {
    EXPECT_FALSE(read(bytes));
    ASSERT_TRUE(problems_.has_errors());
    EXPECT_NE(problems_.all()[0].message.find(words), std::string::npos) << text_of(problems_.all()[0]);
    EXPECT_EQ(problems_.all()[0].line, line);
    EXPECT_FALSE(problems_.all()[0].remedy.empty());
  }
  fs::path folder_;
  Problems problems_;
};

TEST_F(Stl, BinaryTrianglesAreReadExactly) {
  const auto mesh = read(binary(kTwo, 2));
  ASSERT_TRUE(mesh);
  EXPECT_TRUE(problems_.all().empty());
  EXPECT_EQ(mesh->triangles, kTwo);
  EXPECT_EQ(mesh->low, Vec3(0, 0, -4));
  EXPECT_EQ(mesh->high, Vec3(10, 10, 2));
}

TEST_F(Stl, ABinaryTitleMayBeginWithSolid) {
  const auto mesh = read(binary(kTwo, 2, "solid sheave facet"));
  ASSERT_TRUE(mesh);
  EXPECT_EQ(mesh->triangles.size(), 2u);
}

TEST_F(Stl, TextTrianglesAreReadExactly) {
  const auto mesh = read(kText);
  ASSERT_TRUE(mesh);
  EXPECT_TRUE(problems_.all().empty());
  EXPECT_EQ(mesh->triangles, Corners({{Vec3(0, 0, 0), Vec3(10, 0, 0), Vec3(0, 10, 2)}}));
}

TEST_F(Stl, ATruncatedBinaryFileTellsPromisedAndHeld) {
  const std::string whole = binary(kTwo, 2);
  expect_refused(whole.substr(0, whole.size() - 10), "promises 2 triangles, it holds 1");
}

TEST_F(Stl, ACountTooLargeIsRefused) { expect_refused(binary(kTwo, 4000000000u), "promises 4000000000"); }

TEST_F(Stl, ACountTooSmallIsReadWithAWarning) {
  const auto mesh = read(binary(kTwo, 1));
  ASSERT_TRUE(mesh);
  EXPECT_EQ(mesh->triangles.size(), 1u);
  ASSERT_EQ(problems_.all().size(), 1u);
  EXPECT_EQ(problems_.all()[0].severity, Severity::warning);
}

TEST_F(Stl, SomethingElseIsNotStl) {
  expect_refused("%PDF-1.4 and so on", "not an STL file");
  expect_refused("", "not an STL file");
}

TEST_F(Stl, AMeshWithoutTrianglesIsRefused) {
  expect_refused(binary({}, 0), "no triangle");
  expect_refused("solid nothing\nendsolid nothing\n", "no triangle");
}

TEST_F(Stl, ACoordinateThatIsNotFiniteIsRefused) {
  Corners broken = kTwo;
  broken[1][2].y = std::numeric_limits<double>::quiet_NaN();
  expect_refused(binary(broken, 2), "triangle 2 has a coordinate that is not a finite number");
  broken[1][2].y = INFINITY;
  expect_refused(binary(broken, 2), "not a finite number");
}

TEST_F(Stl, AHugeCoordinateIsRefusedWithTheUnitInMind) {
  Corners huge = kTwo;
  huge[0][0].x = 2e7;
  expect_refused(binary(huge, 2), "2e+07 mm");
  EXPECT_NE(problems_.all()[0].remedy.find("mm"), std::string::npos);
}

TEST_F(Stl, TextProblemsNameTheirLine) {
  const std::string text = kText;
  const auto with = [&](const std::string &from, const std::string &to) {
    std::string changed = text;
    return changed.replace(changed.find(from), from.size(), to);
  };
  expect_refused(with("+1.0e1", "ten"), "three numbers", 5);
  expect_refused(with("+1.0e1", "nan"), "not a finite number", 5);
  expect_refused(with("      vertex 0 0 0\n", ""), "2 corners", 7);
  expect_refused(with("    endloop", "    vertex 1 1 1"), "4 corners", 8);
  expect_refused(with("outer loop", "other loop"), "'other' is not a word", 3);
}

TEST_F(Stl, ATruncatedTextFileIsNoticed) {
  const std::string text = kText;
  expect_refused(text.substr(0, text.find("endsolid")), "cut short", 8);
}

TEST_F(Stl, AMissingFileIsAProblem) {
  EXPECT_FALSE(read_stl(folder_ / "none.stl", problems_));
  EXPECT_TRUE(problems_.has_errors());
}

} // namespace
} // namespace asperity
