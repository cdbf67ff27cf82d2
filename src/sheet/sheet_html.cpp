// The sheet, put together in the order it is read.
#include "asperity/sheet/sheet_html.h"
#include "asperity/base/digest.h"

#include "asperity/picture/write_png.h"
#include "asperity/report/outcome_json.h"
#include "html.h"
#include "packed_assets.h"
#include "sheet_page.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

std::string letter_html(const SheetPage &page, std::size_t plan) {
  return fmt::format("<span class=\"letter {}\">{}</span>", plan_class(plan), page.letter(plan));
}

std::string section_begin(std::string_view id, std::string_view heading) {
  return fmt::format("<section id=\"{0}\" aria-labelledby=\"{0}-h\">\n<h2 id=\"{0}-h\">{1}</h2>\n", id,
                     heading);
}

std::string number_html(const SheetPage &page, const KeyNumber &number, std::size_t plan) {
  return fmt::format("<span data-number=\"{}\" data-plan=\"{}\" data-value=\"{}\">{}</span>",
                     escaped(number.id), page.letter(plan), number.value,
                     value_html(number.value, number.unit));
}

std::string plan_class(std::size_t plan) {
  constexpr std::size_t kColours = 6;
  return fmt::format("p{}", plan % kColours);
}

std::optional<std::size_t> feature_named(const Job &job, const std::string &name) {
  for (std::size_t i = 0; i < job.features.size(); ++i)
    if (name_of(job.features[i]) == name)
      return i;
  return std::nullopt;
}

std::vector<std::string> feature_names(const SheetPage &page) {
  std::vector<std::string> names;
  for (const Outcome *outcome : page.input.outcomes)
    for (const Feature &feature : outcome->job.features)
      if (std::find(names.begin(), names.end(), name_of(feature)) == names.end())
        names.push_back(name_of(feature));
  return names;
}

std::string png_uri(const Image &image) { return "data:image/png;base64," + base64(png_bytes(image)); }

namespace {

/// Everything is forbidden but pictures inside the file, and this very style and script.
std::string policy(const std::string &style, std::string_view script) {
  return fmt::format("default-src 'none'; img-src data:; style-src 'sha256-{}'; script-src 'sha256-{}'; "
                     "base-uri 'none'; form-action 'none'",
                     sha256_base64(style), sha256_base64(script));
}

} // namespace

std::string sheet_html(const SheetInput &input) {
  SheetPage page{input, answer_of(input.comparison, input.outcomes), {}, {}};
  for (const Outcome *outcome : input.outcomes)
    page.predictions.push_back(outcome_json(*outcome));

  std::string body = head_section(page);
  body += wanted_section(page) + plan_section(page) + picture_section(page) + turn_section(page);
  body += strip_section(page) + profile_section(page) + number_section(page) + finding_section(page);
  body += limit_section(page) + file_section(page);

  const std::string style = std::string(sheet_style()) + page.rules;
  const std::string title = input.title.empty() ? common_title(input.outcomes) : input.title;
  return fmt::format("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                     "<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">\n"
                     "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                     "<meta name=\"generator\" content=\"asperity {}\">\n"
                     "<title>{} \u2013 which plan?</title>\n<style>{}</style>\n</head>\n<body>\n{}</main>\n"
                     "<script type=\"application/json\" id=\"surfaces\">{}</script>\n<script>{}</script>\n"
                     "</body>\n</html>\n",
                     policy(style, sheet_script()), escaped(input.version), escaped(title), style, body,
                     surfaces_json(page), sheet_script());
}

} // namespace asperity
