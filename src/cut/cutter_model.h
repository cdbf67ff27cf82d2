// One cutter of the job as the cut sees it: grown silhouette, teeth, beam, coefficients, bending nodes.
#pragma once

#include "bent_by_teeth.h"

#include "asperity/cut/deflection.h"
#include "asperity/cut/force.h"
#include "asperity/job/job.h"
#include "asperity/sweep/swept_path.h"

namespace asperity {

struct CutterModel {
  SweptCutter swept;
  ToothGeometry teeth;
  double lag_rad_per_mm = 0, pitch_rad = 0; ///< of the teeth
  CutterBeam beam;
  ForceCoefficients force;
  std::vector<WallTips> wall_tips; ///< of the left wall and of the right one
  double least_chip_mm = 0;
  bool bends = true;
};

/// `stepdown_mm` is where the bending nodes stand densest: along one level's depth above the tip.
CutterModel make_cutter_model(const Job &job, const Cutter &cutter, double stepdown_mm);

} // namespace asperity
