// Reads text STL line by line, so that every problem can name its line.
#include "stl_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

namespace asperity {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\f' || c == '\v'; }

/// Takes the next word off the line; empty at its end.
std::string_view next_word(std::string_view &line) {
  while (!line.empty() && is_blank(line.front()))
    line.remove_prefix(1);
  const auto end = std::find_if(line.begin(), line.end(), is_blank);
  const std::string_view word = line.substr(0, static_cast<std::size_t>(end - line.begin()));
  line.remove_prefix(word.size());
  return word;
}

bool is_word(std::string_view word, std::string_view wanted) {
  return word.size() == wanted.size() &&
         std::equal(word.begin(), word.end(), wanted.begin(),
                    [](char a, char b) { return a == b || (a >= 'A' && a <= 'Z' && a - 'A' + 'a' == b); });
}

bool read_number(std::string_view &line, double &value) {
  std::string_view word = next_word(line);
  if (!word.empty() && word.front() == '+')
    word.remove_prefix(1);
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
  return error == std::errc() && end == word.data() + word.size();
}

class Reader {
public:
  Reader(const std::string &file, Problems &problems) : file_(file), problems_(problems) {}

  void line(std::string_view text) {
    ++line_;
    std::string_view rest = text;
    const std::string_view word = next_word(rest);
    if (is_word(word, "facet"))
      begin_facet();
    else if (is_word(word, "vertex"))
      vertex(rest);
    else if (is_word(word, "endfacet"))
      end_facet();
    else if (is_word(word, "solid"))
      in_solid_ = true;
    else if (is_word(word, "endsolid"))
      in_solid_ = false;
    else if (!word.empty() && !is_word(word, "outer") && !is_word(word, "endloop"))
      error(fmt::format("'{}' is not a word of STL", word.substr(0, 20)), "Export the mesh again as STL.");
  }

  std::vector<std::array<Vec3, 3>> finish() {
    if (in_facet_ || in_solid_)
      error("the file is cut short: 'endsolid' is missing", "Export or copy the mesh again.");
    return std::move(triangles_);
  }

private:
  void begin_facet() {
    if (in_facet_)
      error("a facet begins before the last one has ended", "Export the mesh again.");
    in_facet_ = true;
    corners_ = 0;
  }

  void vertex(std::string_view rest) {
    Vec3 p(0.0);
    if (!read_number(rest, p.x) || !read_number(rest, p.y) || !read_number(rest, p.z))
      error("a vertex needs three numbers", "Export the mesh again.");
    else if (!std::isfinite(p.x) || !std::isfinite(p.y) || !std::isfinite(p.z))
      error("a vertex has a coordinate that is not a finite number", "Repair the mesh or export it again.");
    if (corners_ < 3)
      triangle_[corners_] = p;
    ++corners_;
  }

  void end_facet() {
    if (corners_ != 3)
      error(fmt::format("a facet has {} corners instead of 3", corners_), "Export the mesh as triangles.");
    else
      triangles_.push_back(triangle_);
    in_facet_ = false;
    corners_ = 0;
  }

  void error(std::string message, std::string remedy) {
    problems_.error(file_, line_, 0, std::move(message), std::move(remedy));
  }

  std::string file_;
  Problems &problems_;
  int line_ = 0;
  bool in_solid_ = false, in_facet_ = false;
  std::size_t corners_ = 0;
  std::array<Vec3, 3> triangle_{};
  std::vector<std::array<Vec3, 3>> triangles_;
};

} // namespace

bool begins_like_text_stl(std::string_view bytes) {
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos)
    return false;
  const std::string_view rest = bytes.substr(first, 6);
  return is_word(rest.substr(0, 5), "solid") && (rest.size() == 5 || is_blank(rest[5]) || rest[5] == '\n');
}

std::vector<std::array<Vec3, 3>> read_text_stl(std::string_view bytes, const std::string &file,
                                               Problems &problems) {
  Reader reader(file, problems);
  while (!bytes.empty()) {
    const std::size_t end = std::min(bytes.find('\n'), bytes.size());
    reader.line(bytes.substr(0, end));
    bytes.remove_prefix(std::min(end + 1, bytes.size()));
  }
  return reader.finish();
}

} // namespace asperity
