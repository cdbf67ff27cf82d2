// `asperity compare`: read, predict, set side by side, print, write.
#include "command_compare.h"

#include "asperity/base/text_file.h"
#include "asperity/compare/difference_chart.h"
#include "asperity/picture/write_png.h"
#include "asperity/report/number_text.h"
#include "asperity/sheet/answer.h"
#include "asperity/sheet/comparison_output.h"
#include "asperity/sheet/strip_picture.h"
#include "interrupt.h"
#include "number_check.h"
#include "output.h"
#include "result_place.h"

#include <fmt/format.h>

#include <set>

namespace asperity {

namespace fs = std::filesystem;

namespace {

std::string prepare(const CompareCommand &command) {
  std::string fault = command.folder.empty() ? std::string() : fault_of_folder(command.folder);
  if (fault.empty() && !command.json.empty())
    fault = fault_of_file(command.json, "--json");
  if (fault.empty() && !command.csv.empty())
    fault = fault_of_file(command.csv, "--csv");
  return fault;
}

struct WrittenFiles {
  std::vector<fs::path> files;
  std::string fault;
  bool has_lettering = true;

  void note(const fs::path &file, std::string fault_of_this) {
    if (fault_of_this.empty())
      files.push_back(file);
    else
      fault = std::move(fault_of_this);
  }
};

DifferenceWords words_of(const ComparedOutcomes &compared, std::size_t plan, std::size_t feature,
                         const DifferenceChart &difference) {
  const std::string &first = compared.comparison.plans[0].letter,
                    &other = compared.comparison.plans[plan].letter;
  const std::string &name = name_of(compared.outcomes[0]->job.features[feature]);
  if (!(difference.both_share > 0.0))
    return {fmt::format("{}: {} minus {}", name, other, first), "nothing of it is cut in both plans"};
  return {fmt::format("{}: {} minus {}", name, other, first),
          fmt::format("{} on the mean, {} to {}{}. Predicted by a model, not measured.",
                      signed_text(difference.mean_um, "um"), signed_text(difference.lowest_um, "um"),
                      signed_text(difference.highest_um, "um"),
                      difference.is_resampled ? "; read on the first plan's cells" : "")};
}

/// One picture for every feature two plans have in common.
void write_differences(WrittenFiles &written, const ComparedOutcomes &compared, const fs::path &folder,
                       const Progress &progress) {
  std::set<std::string> taken;
  for (std::size_t k = 1; k < compared.outcomes.size(); ++k)
    for (const FeaturePair &pair :
         feature_pairs(compared.outcomes[0]->job, compared.outcomes[k]->job).pairs) {
      if (!written.fault.empty() || progress.cancelled())
        return;
      const Chart &grid = compared.outcomes[0]->charts[pair.first];
      const DifferenceChart difference = difference_chart(grid, compared.outcomes[k]->charts[pair.other]);
      const std::string &feature = name_of(compared.outcomes[0]->job.features[pair.first]);
      const CaptionedStrip picture =
          difference_picture(difference, words_of(compared, k, pair.first, difference),
                             common_seam_mm(grid, feature, compared.outcomes));
      written.has_lettering = written.has_lettering && picture.has_lettering;
      const std::string stem =
          fmt::format("{}-{}-minus-{}", plain_name(feature), compared.comparison.plans[k].letter,
                      compared.comparison.plans[0].letter);
      std::string name = stem;
      for (int n = 2; !taken.insert(name).second; ++n)
        name = fmt::format("{}-{}", stem, n);
      const fs::path file = folder / (name + ".png");
      written.note(file, write_png(file, picture.image));
    }
}

WrittenFiles write_comparison(const CompareCommand &command, const ComparedOutcomes &compared,
                              const Progress &progress) {
  WrittenFiles written;
  const auto put = [&](const fs::path &file, const std::string &text) {
    if (written.fault.empty() && !progress.cancelled())
      written.note(file, write_file(file, text));
  };
  if (!command.folder.empty()) {
    put(command.folder / "comparison.json", comparison_json_text(compared));
    put(command.folder / "comparison.csv", comparison_csv_text(compared));
    write_differences(written, compared, command.folder, progress);
  }
  if (!command.json.empty())
    put(command.json, comparison_json_text(compared));
  if (!command.csv.empty())
    put(command.csv, comparison_csv_text(compared));
  return written;
}

bool print_comparison(const ComparedOutcomes &compared, const WrittenFiles &written) {
  std::string text = comparison_text(compared, style_of_output());
  if (!written.files.empty())
    text += "\nWritten\n";
  for (const fs::path &file : written.files)
    text += "  " + file.string() + '\n';
  return print(text);
}

} // namespace

ExitStatus command_compare(const CompareCommand &command) {
  Progress progress;
  const Interrupt interrupt(progress);
  const auto inputs = read_plans(command.plans.jobs);
  if (!inputs)
    return ExitStatus::wrong_input;
  if (const std::string fault = prepare(command); !fault.empty())
    return fail(fault);
  const PredictedPlans plans = predict_plans(*inputs, command.plans, progress);
  if (plans.ended)
    return *plans.ended == ExitStatus::interrupted ? stopped() : *plans.ended;

  const std::vector<const Outcome *> outcomes = plans.pointers();
  const ComparedOutcomes compared{plans.comparison, outcomes, command.plans.draws};
  const WrittenFiles written = write_comparison(command, compared, progress);
  if (progress.cancelled())
    return stopped();
  if (!command.plans.quiet && !print_comparison(compared, written))
    return fail("the comparison could not be written to standard output.");
  if (!written.has_lettering)
    warn_of_no_font();
  return written.fault.empty() ? status_of(plans.outcomes) : fail(written.fault);
}

} // namespace asperity
