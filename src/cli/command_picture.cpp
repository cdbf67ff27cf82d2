// `asperity picture`: read, predict, draw without a window, write.
#include "command_picture.h"

#include "asperity/picture/write_png.h"
#include "asperity/render/offscreen.h"
#include "interrupt.h"
#include "picture_plan.h"
#include "progress_line.h"
#include "read_inputs.h"

#include <fmt/format.h>

#include <cstdio>
#include <unistd.h>

namespace asperity {

namespace {

ExitStatus fail(std::string_view what) {
  fmt::print(stderr, "asperity: error: {}\n", what);
  return ExitStatus::wrong_input;
}

std::string exaggeration_words(double times) {
  return times > 1.0 ? fmt::format("cut surface drawn {:g} times rougher than it is", times)
                     : std::string("cut surface drawn as it is");
}

/// Draws and writes; empty, or what went wrong.
std::string draw_to_file(const PictureRequest &request, const Outcome &outcome) {
  std::string fault;
  const std::unique_ptr<OffscreenContext> context = OffscreenContext::make(fault);
  if (!context)
    return fault;
  PicturePlan plan = picture_plan(request, outcome);
  if (!plan.fault.empty())
    return plan.fault;
  Renderer renderer;
  renderer.show(outcome);
  if (const auto measure = measure_of(request))
    renderer.set_quantity(cell_quantity(outcome, *measure));
  const OffscreenPicture picture = offscreen_picture(renderer, plan.draw);
  if (!picture.fault.empty())
    return picture.fault;
  if (request.is_bare)
    return write_png(request.file, picture.image);
  plan.caption.notes = {exaggeration_words(picture.drawn.exaggeration),
                        "Predicted by a model, not measured."};
  const CaptionedPicture sheet =
      captioned(plan.sheet, picture.image, picture.drawn, plan.caption, plan.draw.theme);
  if (!sheet.has_lettering)
    fmt::print(stderr,
               "asperity: warning: the font DejaVu Sans was not found, so the picture is without words "
               "(Debian package fonts-dejavu-core).\n");
  return write_png(request.file, sheet.image);
}

} // namespace

ExitStatus command_picture(const PictureRequest &request) {
  Progress progress;
  const Interrupt interrupt(progress);
  Problems problems;
  const std::optional<Inputs> inputs = read_inputs(request.job_file, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!inputs)
    return ExitStatus::wrong_input;
  if (const std::string fault = fault_of(request, inputs->job); !fault.empty())
    return fail(fault);

  Outcome outcome;
  {
    ProgressLine line(true, ::isatty(STDERR_FILENO));
    progress.report = [&line](std::string_view stage, double fraction) { line.show(stage, fraction); };
    if (!progress.cancelled())
      outcome = predict(inputs->job, inputs->program, {.threads = request.threads}, progress);
  }
  if (progress.cancelled() || outcome.status == Status::cancelled) {
    fmt::print(stderr, "asperity: stopped.\n");
    return ExitStatus::interrupted;
  }
  if (outcome.status != Status::done)
    return fail(outcome.why);
  if (const std::string fault = draw_to_file(request, outcome); !fault.empty())
    return fail(fault);
  return ExitStatus::all_well;
}

} // namespace asperity
