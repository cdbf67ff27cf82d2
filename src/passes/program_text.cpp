// RS-274 text of a planned route (words and order of NISTIR 6556).
#include "program_text.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace asperity {

namespace {

/// A comment may hold no brackets of its own, and a line at most 256 characters (NISTIR 6556, 3.3).
constexpr std::size_t kLongestComment = 200;

std::string comment(std::string_view text) {
  std::string result = "(";
  for (const char c : text.substr(0, kLongestComment)) {
    const bool is_plain = static_cast<unsigned char>(c) >= 0x20u && static_cast<unsigned char>(c) < 0x7Fu;
    result += c == '(' ? '[' : c == ')' ? ']' : is_plain ? c : '?';
  }
  return result + ")\n";
}

class TextWriter {
public:
  TextWriter(const Job &job, std::string &text) : job_(job), text_(text) {}

  void head();
  void stroke(const PassStroke &stroke);
  void tail();

private:
  std::string number(double value) const;
  void change_cutter(const PassStroke &stroke);
  void move(const PassStroke &stroke);
  /// The axis word, unless the axis stands there already or its place is not known yet.
  void axis(char letter, int axis, double value_mm, bool always);

  const Job &job_;
  std::string &text_;
  std::string stands_[3]; ///< the last word of each axis
  double feed_ = 0.0;
  int cutter_ = 0;
};

std::string TextWriter::number(double value) const {
  const double unit = std::pow(10.0, job_.between_passes.decimals);
  const double rounded = std::round(value * unit) / unit;
  return fmt::format("{:.{}f}", rounded == 0.0 ? 0.0 : rounded, job_.between_passes.decimals);
}

void TextWriter::head() {
  const Vec3 zero = job_.setup.program_zero_mm;
  text_ += "%\n";
  text_ += comment(job_.title);
  text_ += comment("Planned passes of " + job_.file.filename().string());
  text_ += comment("Unit mm, absolute, feed in mm a minute. Every position is the cutter's tip on its axis.");
  text_ += comment(fmt::format("Program zero, G54, lies at X{:g} Y{:g} Z{:g} of the part's drawing.", zero.x,
                               zero.y, zero.z));
  for (const Cutter &cutter : job_.cutters)
    text_ += comment(fmt::format("T{}: {}{}diameter {:g} mm, {} flutes", cutter.number, cutter.name,
                                 cutter.name.empty() ? "" : ", ", cutter.diameter_mm, cutter.flutes));
  text_ +=
      comment("Run it once above the work first. Secure the work, wear eye protection, extract the dust.");
  text_ += comment("Limits of the controller and of the cutter's maker rule over this program.");
  text_ += "G21 G90 G17 G94 G40 G49 G54\n";
}

void TextWriter::change_cutter(const PassStroke &stroke) {
  if (stroke.cutter != cutter_) {
    if (cutter_ != 0)
      text_ += "M5\n";
    text_ += fmt::format("T{} M6\n", stroke.cutter);
    const Cutter *cutter = job_.cutter(stroke.cutter);
    if (cutter && cutter->length_offset_mm != 0.0)
      text_ += fmt::format("G43 H{}\n", stroke.cutter);
    else if (cutter_ != 0)
      text_ += "G49\n";
  }
  cutter_ = stroke.cutter;
  text_ += fmt::format("S{:g} M3\n", stroke.rpm);
  if (job_.between_passes.spindle_start_s > 0.0)
    text_ += fmt::format("G4 P{:g}\n", job_.between_passes.spindle_start_s);
  for (std::string &word : stands_)
    word.clear();
}

void TextWriter::axis(char letter, int axis, double value_mm, bool always) {
  std::string word = number(value_mm - job_.setup.program_zero_mm[axis]);
  if (std::isnan(value_mm) || (!always && word == stands_[axis]))
    return;
  text_ += fmt::format(" {}{}", letter, word);
  stands_[axis] = std::move(word);
}

void TextWriter::move(const PassStroke &stroke) {
  const std::size_t line_begin = text_.size();
  const bool is_arc = stroke.kind == StrokeKind::arc;
  text_ += stroke.kind == StrokeKind::rapid ? "G0" : !is_arc ? "G1" : stroke.sweep_rad > 0.0 ? "G3" : "G2";
  const std::size_t words_begin = text_.size();
  axis('X', 0, stroke.end.x, is_arc);
  axis('Y', 1, stroke.end.y, is_arc);
  axis('Z', 2, stroke.end.z, false);
  if (text_.size() == words_begin) {
    text_.resize(line_begin);
    return;
  }
  if (is_arc)
    text_ += fmt::format(" I{} J{}", number(stroke.centre.x - stroke.begin.x),
                         number(stroke.centre.y - stroke.begin.y));
  if (stroke.cuts() && stroke.feed_mm_per_min != feed_) {
    feed_ = stroke.feed_mm_per_min;
    text_ += fmt::format(" F{:.10g}", feed_);
  }
  text_ += '\n';
}

void TextWriter::stroke(const PassStroke &stroke) {
  if (stroke.kind == StrokeKind::note)
    text_ += comment(stroke.note);
  else if (stroke.kind == StrokeKind::cutter_change)
    change_cutter(stroke);
  else
    move(stroke);
}

void TextWriter::tail() {
  text_ += "M5\n";
  if (const auto park_mm = job_.between_passes.park_mm) {
    text_ += "G0";
    axis('X', 0, park_mm->x, true);
    axis('Y', 1, park_mm->y, true);
    text_ += '\n';
  }
  text_ += "M30\n%\n";
}

} // namespace

std::string program_text(const Job &job, const Route &route) {
  std::string text;
  TextWriter writer(job, text);
  writer.head();
  for (const PassStroke &stroke : route.strokes())
    writer.stroke(stroke);
  writer.tail();
  return text;
}

} // namespace asperity
