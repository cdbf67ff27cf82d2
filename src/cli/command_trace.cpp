// `asperity trace`: read, predict what is needed, trace, print, write.
#include "command_trace.h"

#include "asperity/base/text_file.h"
#include "asperity/picture/trace_picture.h"
#include "asperity/picture/write_png.h"
#include "asperity/predict/one_feature.h"
#include "asperity/report/trace_csv.h"
#include "asperity/report/trace_text.h"
#include "interrupt.h"
#include "output.h"
#include "progress_line.h"
#include "read_inputs.h"
#include "result_place.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <unistd.h>
#include <vector>

namespace asperity {

namespace {

namespace fs = std::filesystem;

struct TraceFiles {
  std::vector<fs::path> csv, pictures;
};

TraceFiles files_of(const TraceCommand &command) {
  TraceFiles files;
  if (!command.folder.empty()) {
    const std::string name = plain_name(command.wish.feature) + "-along-" + command.wish.along;
    files.csv.push_back(command.folder / (name + ".csv"));
    files.pictures.push_back(command.folder / (name + ".png"));
  }
  if (!command.csv.empty())
    files.csv.push_back(command.csv);
  if (!command.picture.empty())
    files.pictures.push_back(command.picture);
  return files;
}

std::string fault_of_places(const TraceCommand &command) {
  std::string fault = command.folder.empty() ? std::string() : fault_of_folder(command.folder);
  if (fault.empty() && !command.csv.empty())
    fault = fault_of_file(command.csv, "--csv");
  if (fault.empty() && !command.picture.empty())
    fault = fault_of_file(command.picture, "--picture");
  return fault;
}

/// Why there is nothing to read, or empty.
std::string fault_of_trace(const TraceView &view) {
  if (std::none_of(view.trace.owner.begin(), view.trace.owner.end(),
                   [](std::uint32_t owner) { return owner != kNobody; }))
    return "no pass cuts the surface along this trace: there is nothing to read.";
  if (!std::isfinite(view.trace.reading.parameters.ra_mm))
    return "the blank has a hole under this trace: move it with --at, or keep beside the hole with --from "
           "and "
           "--length.";
  return {};
}

struct Laid {
  OneFeature cut;
  Trace trace;
  std::string why; ///< no trace
};

Laid lay(const TraceCommand &command, const Inputs &inputs, std::size_t feature, const TraceRequest &request,
         const Progress &progress) {
  Laid laid;
  laid.cut = predict_one_feature(inputs.job, inputs.program, feature, {.threads = command.threads}, progress);
  if (laid.cut.status != Status::done)
    return laid;
  progress.at("laying the trace", 0.9);
  const TextureSource source{inputs.job, laid.cut.path, laid.cut.cut.swept};
  laid.trace =
      lay_trace(inputs.job.features[feature], laid.cut.chart, source, request, command.threads, laid.why);
  return laid;
}

/// Writes the files and prints; the exit status says how it went.
ExitStatus show(const TraceCommand &command, const TraceView &view, const Progress &progress) {
  const TraceFiles files = files_of(command);
  std::string text = trace_text(view, style_of_output());
  std::string fault;
  bool has_lettering = true;
  std::string names;
  const auto note = [&](const fs::path &file) {
    if (fault.empty())
      names += "  " + file.string() + '\n';
  };
  for (const fs::path &file : files.csv)
    if (fault.empty() && !progress.cancelled()) {
      fault = write_file(file, trace_csv_text(view));
      note(file);
    }
  for (const fs::path &file : files.pictures)
    if (fault.empty() && !progress.cancelled()) {
      const ChartPicture picture = trace_picture(view);
      has_lettering = picture.has_lettering;
      fault = write_png(file, picture.image);
      note(file);
    }
  if (progress.cancelled())
    return stopped();
  if (!names.empty())
    text += "\nWritten\n" + names;
  if (!print(text))
    return fail("the trace could not be written to standard output.");
  if (!has_lettering)
    warn_of_no_font();
  if (!fault.empty())
    return fail(fault);
  return is_ra_met(view) ? ExitStatus::all_well : ExitStatus::missed;
}

} // namespace

ExitStatus command_trace(const TraceCommand &command) {
  Progress progress;
  const Interrupt interrupt(progress);

  // Everything that can be wrong is looked for before the long part.
  Problems problems;
  const std::optional<Inputs> inputs = read_inputs(command.job_file, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!inputs)
    return ExitStatus::wrong_input;
  std::string fault;
  const std::optional<std::size_t> feature = find_feature(inputs->job.features, command.wish.feature, fault);
  if (!feature)
    return fail(fault);
  const Feature &wanted = inputs->job.features[*feature];
  const std::optional<TraceRequest> request = trace_request(wanted, command.wish, fault);
  if (!request)
    return fail(fault);
  if (fault = fault_of_places(command); !fault.empty())
    return fail(fault);

  Laid laid;
  {
    ProgressLine line(true, ::isatty(STDERR_FILENO));
    progress.report = [&line](std::string_view stage, double fraction) { line.show(stage, fraction); };
    laid = lay(command, *inputs, *feature, *request, progress);
    progress.report = nullptr;
  }
  if (progress.cancelled() || laid.cut.status == Status::cancelled)
    return stopped();
  if (laid.cut.status != Status::done)
    return fail(laid.cut.why);
  if (laid.trace.profile_mm.empty())
    return fail(laid.why + ".");
  const TraceView view{inputs->job, wanted, laid.cut.path, *request, laid.trace};
  if (fault = fault_of_trace(view); !fault.empty())
    return fail(fault);
  return show(command, view, progress);
}

} // namespace asperity
