// The job's solids on the graphics card.
#include "solid_things.h"

#include "asperity/render/scene.h"
#include "solids.h"

namespace asperity {

namespace {

constexpr double kBlankAlpha = 0.16;
constexpr double kCutterAlpha = 0.62;

} // namespace

void SolidThings::show(const Outcome &outcome) {
  const Job &job = outcome.job;
  blank_.upload(blank_solid(job.blank));
  rest_.upload(rest_of_part(job));
  holding_.upload(holding_solid(job.holding, job.blank));
  Bounds bounds = surface_bounds(outcome);
  bounds.hold({job.blank.low_mm(), job.blank.z_bottom_mm});
  bounds.hold({job.blank.high_mm(), job.blank.z_top_mm});
  spoilboard_.upload(spoilboard_solid(job.holding, plan(bounds.low), plan(bounds.high)));
  cutters_.clear();
  for (const Cutter &cutter : job.cutters)
    cutters_[cutter.number].upload(cutter_solid(cutter));
}

void SolidThings::draw_opaque(const SolidPass &pass, const Eye &eye, const DrawRequest &request) const {
  if (request.things.spoilboard)
    pass.draw(eye, spoilboard_, {.colour = request.theme.spoilboard});
  if (request.things.holding)
    pass.draw(eye, holding_, {.colour = request.theme.holding});
  if (request.things.rest_of_part)
    pass.draw(eye, rest_, {.colour = request.theme.rest});
}

void SolidThings::draw_translucent(const SolidPass &pass, const Eye &eye, const DrawRequest &request,
                                   const TimedPath &path) const {
  if (request.things.cutter && request.moment_s)
    if (const auto tip = tip_at(path, *request.moment_s))
      if (const auto cutter = cutters_.find(tip->tool); cutter != cutters_.end())
        pass.draw(eye, cutter->second,
                  {.colour = request.theme.cutter, .alpha = kCutterAlpha, .moved_by = tip->tip_mm});
  if (request.things.blank)
    pass.draw(eye, blank_, {.colour = request.theme.blank, .alpha = kBlankAlpha});
}

void SolidThings::draw_pick(const SolidPass &pass, const Eye &eye, const DrawRequest &request) const {
  if (request.things.spoilboard)
    pass.draw_pick(eye, spoilboard_);
  if (request.things.holding)
    pass.draw_pick(eye, holding_);
  if (request.things.rest_of_part)
    pass.draw_pick(eye, rest_);
}

} // namespace asperity
