// The file of measurements: what to fit, readings of the part, pulls, indicator and gauge readings.
#include "asperity/job/measured.h"

#include "asperity/base/text_file.h"
#include "change_tree.h"
#include "key_reader.h"
#include "nearest_word.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

constexpr std::size_t kMostBytes = 1u << 20;
constexpr Range kAnyValue{-1e6, 1e6};
constexpr Range kUncertainty{0, 1e5, true};
constexpr Range kForce_N{0, 5000, true};
constexpr Range kMoved_um{0, 20000, true};
constexpr Range kRunout_mm{0, 1, true};
constexpr Range kDiameter_mm{0, 500, true};
constexpr Range kSmallUncertainty_mm{0, 1, true};

constexpr std::string_view kFitKeys[] = {"force_share",     "cutting_force_share", "edge_force_share",
                                         "stiffness_share", "runout_share",        "cutter_diameter_mm",
                                         "x_zero_mm",       "y_zero_mm",           "z_zero_mm"};

bool is_of_cutter(std::string_view key) { return key == "runout_share" || key == "cutter_diameter_mm"; }

/// "cutter 2 runout_share" taken apart; the cutter may be left out where the job has one.
std::optional<FitWanted> fit_wanted(const std::string &word, const Job &job, std::string &fault) {
  FitWanted wanted{word, 0};
  constexpr std::string_view kBegin = "cutter ";
  if (word.starts_with(kBegin)) {
    const std::size_t space = word.find(' ', kBegin.size());
    wanted.cutter = static_cast<int>(list_number(word.substr(kBegin.size(), space - kBegin.size())));
    wanted.key = space == std::string::npos ? std::string() : word.substr(space + 1);
  }
  if (std::find(std::begin(kFitKeys), std::end(kFitKeys), wanted.key) == std::end(kFitKeys)) {
    const std::string_view near = nearest_word(wanted.key, kFitKeys);
    fault = near.empty() ? fmt::format("Choose from: {}.", listed(kFitKeys))
                         : fmt::format("Did you mean \"{}\"?", near);
    return std::nullopt;
  }
  if (!is_of_cutter(wanted.key)) {
    fault = "It belongs to no cutter: leave the cutter out.";
    return wanted.cutter == 0 ? std::optional(wanted) : std::nullopt;
  }
  if (wanted.cutter == 0 && job.cutters.size() == 1)
    wanted.cutter = job.cutters.front().number;
  fault = "Say which cutter of the job: \"cutter 1 runout_share\".";
  return job.cutter(wanted.cutter) ? std::optional(wanted) : std::nullopt;
}

void read_fit(KeyReader &root, const toml::table &table, const Job &job, Measured &measured) {
  root.know("fit");
  const toml::array *list = table["fit"].as_array();
  if (!list || list->empty()) {
    root.error("fit", "must be a list of what to fit",
               fmt::format("Write fit = [\"stiffness_share\"]; choose from: {}.", listed(kFitKeys)));
    return;
  }
  for (const toml::node &node : *list) {
    const std::string word = node.value<std::string>().value_or("");
    std::string fault;
    const auto wanted = fit_wanted(word, job, fault);
    const auto is_same = [&](const FitWanted &each) {
      return wanted && each.key == wanted->key && each.cutter == wanted->cutter;
    };
    if (!wanted)
      root.error("fit", fmt::format("cannot hold \"{}\"", word.substr(0, 60)), fault);
    else if (std::any_of(measured.fit.begin(), measured.fit.end(), is_same))
      root.error("fit", fmt::format("holds \"{}\" twice", word), "Name it once.");
    else
      measured.fit.push_back(*wanted);
  }
  const auto has = [&](std::string_view key) {
    return std::any_of(measured.fit.begin(), measured.fit.end(),
                       [key](const auto &each) { return each.key == key; });
  };
  if (has("force_share") && (has("cutting_force_share") || has("edge_force_share")))
    root.error("fit", "holds force_share together with one of its parts",
               "Fit force_share (one factor for all), or its two parts, not both.");
}

/// The cutter a reading is of; a problem where the job has none of that number.
int read_cutter_number(KeyReader &reader, const Job &job) {
  const auto number = reader.whole_number("cutter", {1, 9999}, Need::required);
  if (number && !job.cutter(*number))
    reader.error("cutter", fmt::format("{} is no cutter of the job", *number),
                 "Give the number of a [[cutter]].");
  return number.value_or(0);
}

void read_part(KeyReader &reader, const Job &job, Reading &reading) {
  reading.number = reader.text("number", Need::required).value_or("");
  reading.value = reader.number("value", kAnyValue, Need::required).value_or(0);
  reading.expanded = reader.number("uncertainty", kUncertainty, Need::required).value_or(0);
  const std::size_t slash = reading.number.rfind('/');
  if (slash == std::string::npos)
    return;
  std::vector<std::string_view> names;
  for (const Feature &feature : job.features)
    names.push_back(name_of(feature));
  const std::string surface = reading.number.substr(0, slash);
  if (std::find(names.begin(), names.end(), surface) == names.end())
    reader.error("number", fmt::format("is of \"{}\", which is no surface of the job", surface),
                 fmt::format("The job has: {}.", listed(names)));
}

void read_pull(KeyReader &reader, const Job &, Reading &reading) {
  reading.force_N = reader.number("force_N", kForce_N, Need::required).value_or(1);
  reading.value = reader.number("moved_um", kMoved_um, Need::required).value_or(0);
  reading.expanded = reader.number("uncertainty_um", kUncertainty, Need::required).value_or(0);
}

void read_indicator(KeyReader &reader, const Job &job, Reading &reading) {
  reading.cutter = read_cutter_number(reader, job);
  reading.value = reader.number("runout_mm", kRunout_mm, Need::required).value_or(0);
  reading.expanded = reader.number("uncertainty_mm", kSmallUncertainty_mm, Need::required).value_or(0);
}

void read_gauge(KeyReader &reader, const Job &job, Reading &reading) {
  reading.cutter = read_cutter_number(reader, job);
  reading.value = reader.number("diameter_mm", kDiameter_mm, Need::required).value_or(0);
  reading.expanded = reader.number("uncertainty_mm", kSmallUncertainty_mm, Need::required).value_or(0);
}

struct KindKey {
  std::string_view key;
  ReadingKind kind;
  void (*read)(KeyReader &, const Job &, Reading &);
};
constexpr KindKey kKinds[] = {{"reading", ReadingKind::part, read_part},
                              {"pull", ReadingKind::pull, read_pull},
                              {"indicator", ReadingKind::indicator, read_indicator},
                              {"gauge", ReadingKind::gauge, read_gauge}};

void read_readings(KeyReader &root, const Job &job, Measured &measured) {
  for (const KindKey &each : kKinds)
    for (KeyReader &reader : root.tables(each.key)) {
      Reading reading;
      reading.kind = each.kind;
      reading.line = reader.place().line;
      each.read(reader, job, reading);
      reader.text("note", Need::optional);
      reader.finish();
      measured.readings.push_back(reading);
    }
  if (measured.readings.empty())
    root.error("reading", "is missing, and there is no pull, indicator or gauge either",
               "Add what was measured: [[reading]], [[pull]], [[indicator]] or [[gauge]].");
}

} // namespace

std::string Reading::what() const {
  switch (kind) {
  case ReadingKind::pull:
    return fmt::format("spindle nose under {} N [um]", force_N);
  case ReadingKind::indicator:
    return fmt::format("runout of cutter {} [mm]", cutter);
  case ReadingKind::gauge:
    return fmt::format("diameter of cutter {} [mm]", cutter);
  case ReadingKind::part:
    break;
  }
  return number;
}

std::optional<Measured> read_measured(const std::filesystem::path &file, const Job &job, Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  const auto text = read_file(file, kMostBytes, problems);
  const auto table = text ? parse_toml(*text, file.string(), problems) : std::nullopt;
  if (!table)
    return std::nullopt;
  std::vector<std::string> defaults_used;
  ReadLog log{file.string(), problems, defaults_used};
  KeyReader root(*table, "", {1, 1, {}}, log);
  Measured measured;
  measured.file = file;
  read_fit(root, *table, job, measured);
  read_readings(root, job, measured);
  root.finish();
  return problems.error_count() == errors_before ? std::optional(std::move(measured)) : std::nullopt;
}

} // namespace asperity
