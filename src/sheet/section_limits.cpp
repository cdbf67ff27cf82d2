// What to heed before cutting, what the numbers do not cover, and what the sheet was made from.
#include "html.h"
#include "sheet_page.h"

#include "asperity/report/cautions.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

/// Lines of all plans, each once; with the letters of the plans where not all have it.
template <typename Lines> std::vector<std::string> gathered(const SheetPage &page, Lines lines_of) {
  std::vector<std::string> lines;
  std::vector<std::string> letters;
  for (std::size_t k = 0; k < page.plans(); ++k)
    for (const std::string &line : lines_of(page.outcome(k))) {
      const auto at = std::find(lines.begin(), lines.end(), line);
      if (at == lines.end()) {
        lines.push_back(line);
        letters.push_back(page.letter(k));
      } else {
        letters[static_cast<std::size_t>(at - lines.begin())] += ", " + page.letter(k);
      }
    }
  std::string all;
  for (std::size_t k = 0; k < page.plans(); ++k)
    all += (k == 0 ? "" : ", ") + page.letter(k);
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (letters[i] != all)
      lines[i] = letters[i] + ": " + lines[i];
  return lines;
}

std::string file_row(const std::string &letter, const InputFile &file) {
  return fmt::format("<tr><th scope=\"row\">{} <code>{}</code></th><td><code>{}</code></td></tr>\n", letter,
                     escaped(file.name), file.sha256.empty() ? "could not be read again" : file.sha256);
}

} // namespace

std::string limit_section(const SheetPage &page) {
  std::string out = section_begin("limits", "Before cutting, and what the numbers do not cover");
  std::vector<std::string> said;
  for (const std::string_view caution : cautions())
    said.emplace_back(caution);
  out += "<h3>Before cutting</h3>\n" + list_html(said);
  out += "<h3>Not covered</h3>\n" + list_html(gathered(page, [](const Outcome &o) { return o.notes; }));
  out += fmt::format("<p>{}</p>\n",
                     typeset(page.plans() > 1 ? uncertainty_sentence(page.input.comparison)
                                              : std::string("The uncertainty of these numbers was not "
                                                            "asked for.")));
  const auto defaults = gathered(page, [](const Outcome &o) { return o.job.defaults_used; });
  if (!defaults.empty())
    out += "<h3>Values the jobs leave to their defaults</h3>\n" + list_html(defaults, "small");
  return out + "</section>\n";
}

std::string file_section(const SheetPage &page) {
  std::string out = section_begin("files", "Made from");
  out += "<table class=\"stack small\"><thead><tr><th scope=\"col\">File</th><th "
         "scope=\"col\">SHA-256</th></tr></thead>\n<tbody>\n";
  for (std::size_t k = 0; k < page.input.files.size(); ++k)
    for (const InputFile &file : page.input.files[k])
      out += file_row(letter_html(page, k), file);
  out += "</tbody></table>\n";
  return out +
         fmt::format(
             "<p class=\"small\">asperity {}, {}. {}</p>\n<p class=\"small\">Made by <code>{}</code></p>\n"
             "</section>\n",
             escaped(page.input.version), escaped(page.input.date),
             page.input.draws > 0 ? fmt::format("Uncertainty from {} draws.", page.input.draws)
                                  : std::string("Uncertainty was not asked for."),
             escaped(page.input.command));
}

} // namespace asperity
