// Job and program read together.
#include "read_inputs.h"

#include "asperity/passes/job_program.h"

#include <fmt/format.h>

namespace asperity {

namespace {

/// A file's own words may be quoted in a message; line breaks between problems stay.
std::string without_controls(std::string text) {
  std::erase_if(text, [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20u && c != '\n') || byte == 0x7Fu;
  });
  return text;
}

} // namespace

std::optional<Inputs> read_inputs(const std::filesystem::path &job_file, Problems &problems) {
  std::optional<Job> job = read_job(job_file, problems);
  if (!job)
    return std::nullopt;
  std::optional<JobProgram> program = job_program(*job, problems);
  if (!program || problems.has_errors())
    return std::nullopt;
  return Inputs{std::move(*job), std::move(program->program), std::move(program->text)};
}

std::string text_of(const Problems &problems) {
  std::string text;
  for (const Problem &problem : problems.all()) {
    text += without_controls(text_of(problem));
    if (text.back() != '\n')
      text += '\n';
  }
  if (problems.left_out() > 0)
    text += fmt::format("... and {} more problems.\n", problems.left_out());
  return text;
}

} // namespace asperity
