// Text, tables and pictures of a study.
#include "command_study_output.h"

#include "asperity/base/text_file.h"
#include "asperity/picture/study_picture.h"
#include "asperity/picture/write_png.h"
#include "asperity/report/study_csv.h"
#include "asperity/report/study_json.h"
#include "asperity/report/study_text.h"
#include "output.h"
#include "read_inputs.h"
#include "result_place.h"

#include <cstdio>

namespace asperity {

namespace {

namespace fs = std::filesystem;

struct WrittenFiles {
  std::string names, fault;
  bool has_lettering = true;

  template <class Write> void put(const fs::path &path, Write write) {
    if (!fault.empty())
      return;
    fault = write(path);
    if (fault.empty())
      names += "  " + path.string() + '\n';
  }
  void put_text(const fs::path &path, const std::string &text) {
    put(path, [&](const fs::path &to) { return write_file(to, text); });
  }
  void put_picture(const fs::path &path, const ChartPicture &picture) {
    has_lettering = has_lettering && picture.has_lettering;
    put(path, [&](const fs::path &to) { return write_png(to, picture.image); });
  }
};

WrittenFiles write_files(const StudyView &view, const StudyOutputs &outputs) {
  WrittenFiles written;
  if (!outputs.csv.empty())
    written.put_text(outputs.csv, study_csv_text(view.results));
  if (!outputs.json.empty())
    written.put_text(outputs.json, study_json_text(view));
  if (outputs.folder.empty())
    return written;
  written.put_text(outputs.folder / "study.csv", study_csv_text(view.results));
  written.put_text(outputs.folder / "study.json", study_json_text(view));
  if (view.front.points.empty())
    return written;
  written.put_picture(outputs.folder / "front.png", front_picture(view));
  written.put_picture(outputs.folder / "influence.png", influence_picture(view));
  return written;
}

} // namespace

std::string fault_of_outputs(const StudyOutputs &outputs) {
  std::string fault = outputs.folder.empty() ? std::string() : fault_of_folder(outputs.folder);
  if (fault.empty() && !outputs.csv.empty())
    fault = fault_of_file(outputs.csv, "--csv");
  if (fault.empty() && !outputs.json.empty())
    fault = fault_of_file(outputs.json, "--json");
  return fault;
}

std::optional<StudyView> asked_view(StudyResults results, const StudyAsk &ask) {
  StudyWish wish{ask.x, ask.y, {}};
  Problems problems;
  for (const auto &[texts, is_upper] : {std::pair{&ask.at_most, true}, std::pair{&ask.at_least, false}})
    for (const std::string &text : *texts)
      if (const auto limit = read_limit(text, is_upper, results, problems))
        wish.limits.push_back(*limit);
  std::fputs(text_of(problems).c_str(), stderr);
  if (problems.has_errors())
    return std::nullopt;
  std::string fault;
  StudyView view = study_view(std::move(results), wish, fault);
  if (fault.empty())
    return view;
  fail(fault);
  return std::nullopt;
}

ExitStatus show_study(const StudyView &view, const StudyOutputs &outputs, bool is_quiet) {
  const WrittenFiles written = write_files(view, outputs);
  std::string text = study_text(view, style_of_output());
  if (!written.names.empty())
    text += "\nWritten\n" + written.names;
  if (!is_quiet && !print(text))
    return fail("the study could not be written to standard output.");
  if (!written.has_lettering)
    warn_of_no_font();
  if (!written.fault.empty())
    return fail(written.fault + ".");
  return view.best.best ? ExitStatus::all_well : ExitStatus::missed;
}

} // namespace asperity
