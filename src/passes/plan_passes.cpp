// All passes of a job, one after the other.
#include "asperity/passes/plan_passes.h"

#include "planning.h"
#include "program_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

/// Rapids go this far above everything that stands on the table [mm; common practice, no published source].
constexpr double kSafeAbove_mm = 10.0;
/// ... and down to this far above the blank [mm; common practice, no published source].
constexpr double kNearAbove_mm = 2.0;

double blank_top_mm(const Job &job) {
  double top_mm = job.blank.z_top_mm;
  for (const RoundFeature &round : job.blank.rounds)
    if (!round.is_hole)
      top_mm = std::max(top_mm, round.z_top_mm);
  return top_mm;
}

Heights heights_of(const Job &job) {
  return {safe_height_mm(job), job.between_passes.near_mm.value_or(blank_top_mm(job) + kNearAbove_mm)};
}

bool heights_are_fine(const Job &job, const Heights &heights, Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  for (const KeepOut &keep_out : job.holding.keep_outs)
    if (keep_out.z_top_mm >= heights.safe_mm)
      problems.error(job.file.string(), 0, 0,
                     fmt::format("between_passes.safe_mm = {:g} is not above \"{}\", whose top is at {:g} mm",
                                 heights.safe_mm, keep_out.name, keep_out.z_top_mm),
                     "Raise safe_mm, or leave it out.");
  if (heights.near_mm <= blank_top_mm(job) || heights.safe_mm < heights.near_mm)
    problems.error(
        job.file.string(), 0, 0,
        fmt::format("rapids would go down to {:g} mm and across at {:g} mm, but the blank's top is at "
                    "{:g} mm",
                    heights.near_mm, heights.safe_mm, blank_top_mm(job)),
        "Under [between_passes] put near_mm above the blank and safe_mm not below near_mm.");
  return problems.error_count() == errors_before;
}

bool plan_pass(Planning &planning) {
  const std::size_t first = planning.route.strokes().size();
  const bool is_planned = planning.pass.kind == PassKind::floor  ? plan_floor(planning)
                          : planning.pass.kind == PassKind::dome ? plan_dome(planning)
                                                                 : plan_wall(planning);
  return is_planned && keeps_out(planning, first);
}

double cut_length_mm(const Route &route, std::size_t first) {
  double length_mm = 0.0;
  for (std::size_t i = first; i < route.strokes().size(); ++i)
    if (route.strokes()[i].cuts())
      length_mm += route.strokes()[i].length_mm();
  return length_mm;
}

} // namespace

double safe_height_mm(const Job &job) {
  if (job.between_passes.safe_mm)
    return *job.between_passes.safe_mm;
  double top_mm = std::max(blank_top_mm(job), job.between_passes.near_mm.value_or(-1e9));
  for (const KeepOut &keep_out : job.holding.keep_outs)
    top_mm = std::max(top_mm, keep_out.z_top_mm);
  return top_mm + kSafeAbove_mm;
}

std::optional<PassPlan> plan_passes(const Job &job, Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  PassPlan plan;
  const Heights heights = heights_of(job);
  if (!heights_are_fine(job, heights, problems))
    return std::nullopt;
  int cutter_in_use = 0;
  double rpm_in_use = 0.0;
  for (const PlannedPass &pass : job.passes) {
    const Cutter *cutter = job.cutter(pass.cutter);
    if (!cutter)
      continue;
    if (pass.cutter != cutter_in_use || pass.rpm != rpm_in_use) {
      plan.route.change_cutter(pass.cutter, pass.rpm);
      plan.route.rapid_to_height(heights.safe_mm);
    }
    cutter_in_use = pass.cutter;
    rpm_in_use = pass.rpm;
    const std::size_t first = plan.route.strokes().size();
    plan.route.note(pass.name);
    Planning planning{job, pass, *cutter, heights, plan.route, problems};
    if (plan_pass(planning))
      plan.passes.push_back({pass.name, pass.cutter, planning.levels, cut_length_mm(plan.route, first)});
  }
  if (problems.error_count() != errors_before)
    return std::nullopt;
  plan.text = program_text(job, plan.route);
  return plan;
}

} // namespace asperity
