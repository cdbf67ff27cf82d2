// From readings of a job's part and machine to the values behind them.
#include "asperity/calibrate/calibration.h"

#include "asperity/number/key_number.h"
#include "asperity/predict/chart_plan.h"
#include "asperity/tolerance/coarser_job.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Where the job states no uncertainty of a value to be fitted, it is looked for this far away.
constexpr double kUnknownShare = 1.0, kUnknown_mm = 0.1;

struct FitName {
  std::string_view key;
  InputKind kind;
};
constexpr FitName kFitNames[] = {{"force_share", InputKind::force},
                                 {"cutting_force_share", InputKind::cutting_force},
                                 {"edge_force_share", InputKind::edge_force},
                                 {"stiffness_share", InputKind::stiffness},
                                 {"runout_share", InputKind::runout},
                                 {"cutter_diameter_mm", InputKind::cutter_diameter},
                                 {"x_zero_mm", InputKind::x_zero},
                                 {"y_zero_mm", InputKind::y_zero},
                                 {"z_zero_mm", InputKind::z_zero}};

UncertainInput input_of(const Job &job, const FitWanted &wanted) {
  for (const FitName &name : kFitNames)
    if (name.key == wanted.key)
      return uncertain_input(job, name.kind, wanted.cutter,
                             wanted.key.ends_with("_mm") ? kUnknown_mm : kUnknownShare);
  return {};
}

/// The same value, or a part of it: force holds both kinds of coefficients.
bool overlaps(const UncertainInput &fitted, const UncertainInput &held) {
  const bool is_force = held.kind == InputKind::cutting_force || held.kind == InputKind::edge_force;
  return (fitted.kind == held.kind && fitted.cutter == held.cutter) ||
         (fitted.kind == InputKind::force && is_force);
}

/// Those to fit first, then all others that are uncertain.
std::vector<UncertainInput> inputs_of(const Job &job, const Measured &measured) {
  std::vector<UncertainInput> inputs;
  for (const FitWanted &wanted : measured.fit)
    inputs.push_back(input_of(job, wanted));
  const std::size_t fitted = inputs.size();
  for (const UncertainInput &held : uncertain_inputs(job))
    if (std::none_of(inputs.begin(), inputs.begin() + static_cast<std::ptrdiff_t>(fitted),
                     [&](const auto &each) { return overlaps(each, held); }))
      inputs.push_back(held);
  return inputs;
}

bool is_of_roughness(const Reading &reading) {
  const std::size_t slash = reading.number.rfind('/');
  const std::string_view tail =
      std::string_view(reading.number).substr(slash == std::string::npos ? 0 : slash + 1);
  return tail.starts_with("ra_") || tail.starts_with("rz_");
}

/// What the readings should be; nothing where a number does not apply to the job so moved.
class ReadingsOfJob {
public:
  ReadingsOfJob(const Job &job, const Program &program, const Measured &measured,
                std::vector<UncertainInput> inputs, double coarser)
      : job_(coarser_job(job, coarser)), program_(program), measured_(measured), inputs_(std::move(inputs)) {
    for (const Reading &reading : measured.readings) {
      needs_part_ = needs_part_ || reading.kind == ReadingKind::part;
      needs_roughness_ = needs_roughness_ || is_of_roughness(reading);
    }
  }

  std::vector<KeyNumber> numbers_of(const Job &job) const {
    if (!needs_part_)
      return {};
    const Outcome outcome = predict(job, program_, {.threads = 1, .roughness = needs_roughness_}, Progress{});
    return outcome.status == Status::done ? key_numbers(outcome) : std::vector<KeyNumber>{};
  }
  const Job &job() const { return job_; }

  std::optional<std::vector<double>> operator()(std::span<const double> deviates) const {
    const Job moved = job_with(job_, inputs_, deviates);
    const std::vector<KeyNumber> numbers = numbers_of(moved);
    std::vector<double> values;
    for (const Reading &reading : measured_.readings) {
      const auto value = value_of(reading, moved, numbers);
      if (!value)
        return std::nullopt;
      values.push_back(*value);
    }
    return values;
  }

private:
  static std::optional<double> value_of(const Reading &reading, const Job &job,
                                        const std::vector<KeyNumber> &numbers) {
    const Cutter *cutter = job.cutter(reading.cutter);
    switch (reading.kind) {
    case ReadingKind::pull:
      return reading.force_N / job.machine.stiffness_xy_N_per_um;
    case ReadingKind::indicator:
      return cutter ? std::optional(cutter->runout_mm) : std::nullopt;
    case ReadingKind::gauge:
      return cutter ? std::optional(cutter->diameter_mm + cutter->diameter_error_mm) : std::nullopt;
    case ReadingKind::part:
      break;
    }
    const KeyNumber *number = find_number(numbers, reading.number);
    return number ? std::optional(number->value) : std::nullopt;
  }

  Job job_;
  const Program &program_;
  const Measured &measured_;
  std::vector<UncertainInput> inputs_;
  bool needs_part_ = false, needs_roughness_ = false;
};

/// Empty, or the first reading of a number that the job does not have, with those it has.
std::string unknown_number(const ReadingsOfJob &model, const Measured &measured) {
  const std::vector<KeyNumber> numbers = model.numbers_of(model.job());
  for (const Reading &reading : measured.readings) {
    if (reading.kind != ReadingKind::part || find_number(numbers, reading.number))
      continue;
    std::string known;
    for (const KeyNumber &each : numbers)
      if (!each.feature.empty())
        known += "\n  " + each.id;
    return fmt::format("{}:{}: \"{}\" is not a number of this job's prediction. It has:{}",
                       measured.file.string(), reading.line, reading.number, known);
  }
  return {};
}

FittedValue value_of(const UncertainInput &input, double deviate, double standard_error) {
  const double by = input.standard_uncertainty * deviate;
  return {input, input.is_share ? std::exp(by) : by,
          expanded_uncertainty_of(input.standard_uncertainty * standard_error, input.is_share),
          input.expanded};
}

FitTask task_of(const ReadingsOfJob &model, const Measured &measured,
                const std::vector<UncertainInput> &inputs, const CalibrationOptions &options,
                const Progress &progress) {
  FitTask task;
  task.model = [&model, &progress](std::span<const double> deviates) {
    return progress.cancelled() ? std::nullopt : model(deviates);
  };
  for (const Reading &reading : measured.readings) {
    task.readings.push_back(reading.value);
    task.standard_uncertainty.push_back(standard_uncertainty_of(reading.expanded, false));
  }
  for (const UncertainInput &input : inputs)
    task.values.push_back({input.what, input.measure});
  task.fitted = measured.fit.size();
  task.threads = options.threads;
  return task;
}

void put_readings(Calibration &calibration, const Measured &measured, const FitOfReadings &fit) {
  for (std::size_t i = 0; i < measured.readings.size(); ++i) {
    const Reading &reading = measured.readings[i];
    calibration.readings.push_back(
        {reading.what(), reading.value, reading.expanded, fit.before[i], fit.after[i],
         (fit.after[i] - reading.value) / standard_uncertainty_of(reading.expanded, false)});
  }
}

} // namespace

Calibration calibrate(const Job &job, const Program &program, const Measured &measured,
                      const CalibrationOptions &options, const Progress &progress) {
  Calibration calibration;
  progress.at("predicting the stated values", 0.0);
  const std::vector<UncertainInput> inputs = inputs_of(job, measured);
  const ReadingsOfJob model(job, program, measured, inputs, options.coarser);
  calibration.why = unknown_number(model, measured);
  if (!calibration.why.empty())
    return calibration;
  progress.at("fitting", 0.1);
  FitOfReadings fit = fit_readings(task_of(model, measured, inputs, options, progress));
  if (progress.cancelled()) {
    calibration.status = Status::cancelled;
    return calibration;
  }
  calibration.why = std::move(fit.refusal);
  if (!calibration.why.empty())
    return calibration;

  const std::size_t fitted = measured.fit.size();
  for (std::size_t i = 0; i < fitted; ++i)
    calibration.fitted.push_back(value_of(inputs[i], fit.deviates[i], fit.standard_errors[i]));
  put_readings(calibration, measured, fit);
  calibration.chi_squared = fit.chi_squared;
  calibration.chi_squared_limit = fit.chi_squared_limit;
  calibration.freedom = fit.freedom;
  calibration.job = job_with(job, std::span(inputs).first(fitted), std::span(fit.deviates).first(fitted));
  return calibration;
}

} // namespace asperity
