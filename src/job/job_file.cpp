// Reads a whole job file and checks what its sections have to do with each other.
#include "change_tree.h"
#include "include.h"
#include "job_sections.h"

#include "asperity/base/text_file.h"
#include "read_pass.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace asperity {

namespace {

constexpr std::size_t kMostBytes = 4u << 20;

/// Reads one section by `read`; a section left out is read as an empty one so that its defaults are noted.
template <class T> T read_section(KeyReader &root, std::string_view key, Need need, T (*read)(KeyReader &)) {
  if (auto reader = root.table(key, need)) {
    T result = read(*reader);
    reader->finish();
    return result;
  }
  if (root.has(key) || need == Need::required)
    return T{};
  const toml::table nothing;
  KeyReader reader(nothing, std::string(key), root.place(), root.log());
  return read(reader);
}

std::filesystem::path read_program(KeyReader &root) {
  const bool is_planned = !root.lacks("pass");
  if (is_planned && root.has("program"))
    root.error("program", "stands beside planned passes",
               "Keep one of the two: remove 'program', or remove the [[pass]] sections.");
  if (!is_planned && !root.has("program"))
    root.error("program", "is missing, and no pass is planned either",
               "Add 'program' with the program's file name, or plan passes in [[pass]] sections.");
  const auto name = root.text("program", Need::optional);
  if (!name || is_planned)
    return {};
  const std::filesystem::path path = beside_job(root.log(), *name);
  std::error_code failure;
  if (!std::filesystem::is_regular_file(path, failure))
    root.error("program", fmt::format("names {}, which is not there", path.string()),
               "Give the program's file name; it is looked for in the job file's folder.");
  return path;
}

void read_cutters(KeyReader &root, Job &job) {
  std::set<int> numbers;
  for (KeyReader &reader : root.tables("cutter")) {
    job.cutters.push_back(read_cutter(reader));
    reader.finish();
    const int number = job.cutters.back().number;
    if (number > 0 && !numbers.insert(number).second)
      reader.error("number", fmt::format("{} is used by two cutters", number),
                   "Give each cutter its own number.");
  }
  if (root.lacks("cutter"))
    root.error("cutter", "is missing", "Add at least one [[cutter]] section.");
}

template <class T>
void read_features(KeyReader &root, std::string_view key, T (*read)(KeyReader &),
                   std::set<std::string> &names, Job &job) {
  for (KeyReader &reader : root.tables(key)) {
    T feature = read(reader);
    reader.finish();
    if (!feature.name.empty() && !names.insert(feature.name).second)
      reader.error("name", fmt::format("\"{}\" is used by two surfaces", feature.name),
                   "Give each wall, floor and dome its own name.");
    job.features.emplace_back(std::move(feature));
  }
}

void read_surfaces(KeyReader &root, Job &job) {
  std::set<std::string> names;
  read_features(root, "wall", read_wall, names, job);
  read_features(root, "floor", read_floor, names, job);
  read_features(root, "dome", read_dome, names, job);
  if (root.lacks("wall") && root.lacks("floor") && root.lacks("dome"))
    root.error("wall", "is missing, and there is no floor or dome either",
               "Add at least one [[wall]], [[floor]] or [[dome]] section.");
}

/// Last, because its defaults depend on what the others say.
Uncertainty read_uncertainty_section(KeyReader &root, const Job &job) {
  const toml::table nothing;
  KeyReader empty(nothing, "uncertainty", root.place(), root.log());
  auto reader = root.table("uncertainty", Need::optional);
  if (!reader)
    return read_uncertainty(empty, job);
  Uncertainty result = read_uncertainty(*reader, job);
  reader->finish();
  return result;
}

Job read_all(KeyReader &root, const std::filesystem::path &file,
             const std::vector<std::string> &defaults_used) {
  Job job;
  job.file = file;
  job.title = root.text("title", Need::optional).value_or(file.stem().string());
  job.program = read_program(root);
  job.material = read_section(root, "material", Need::required, read_material);
  job.machine = read_section(root, "machine", Need::optional, read_machine);
  read_cutters(root, job);
  read_surfaces(root, job);
  if (auto reader = root.table("blank", Need::required)) {
    job.blank = read_blank(*reader, job.features);
    reader->finish();
  }
  job.holding = read_section(root, "hold_down", Need::optional, read_hold_down);
  job.setup = read_section(root, "setup", Need::optional, read_setup);
  job.effects = read_section(root, "effects", Need::optional, read_effects);
  job.resolution = read_section(root, "chart", Need::optional, read_chart);
  job.passes = read_passes(root, job);
  job.between_passes = read_between_passes(root, job);
  job.defaults_used = defaults_used;
  job.uncertainty = read_uncertainty_section(root, job);
  root.finish();
  return job;
}

} // namespace

std::optional<Job> read_job(const std::filesystem::path &file, Problems &problems) {
  return read_job(file, {}, problems);
}

std::optional<Job> read_job(const std::filesystem::path &file, std::span<const JobChange> changes,
                            Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  const auto text = read_file(file, kMostBytes, problems);
  if (!text)
    return std::nullopt;
  auto table = parse_toml(*text, file.string(), problems);
  if (!table)
    return std::nullopt;
  if (table->empty()) {
    problems.error(
        file.string(), 1, 1, "the job file says nothing",
        "Describe the job: program, [material], [[cutter]], [blank] and a [[wall]], [[floor]] or [[dome]].");
    return std::nullopt;
  }
  std::vector<std::filesystem::path> included = take_in_included(*table, file, problems);
  for (const JobChange &change : changes)
    put_change(*table, change, problems);
  std::vector<std::string> defaults_used;
  ReadLog log{file.string(), problems, defaults_used};
  KeyReader root(*table, "", {1, 1}, log);
  Job job = read_all(root, file, defaults_used);
  job.included = std::move(included);
  return problems.error_count() == errors_before ? std::optional<Job>(std::move(job)) : std::nullopt;
}

const Cutter *Job::cutter(int number) const {
  const auto found = std::find_if(cutters.begin(), cutters.end(),
                                  [number](const Cutter &each) { return each.number == number; });
  return found == cutters.end() ? nullptr : &*found;
}

} // namespace asperity
