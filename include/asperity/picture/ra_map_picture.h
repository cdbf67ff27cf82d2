// One picture of one feature: its local roughness as a map, the roughest place marked.
#pragma once

#include "asperity/picture/chart_picture.h"
#include "asperity/texture/feature_roughness.h"

namespace asperity {

/// `feature` indexes job.features; roughness and chart belong to it. range_um of the options is the Ra at the
/// upper end of the colours; 0 = chosen from the map.
ChartPicture ra_map_picture(const FeatureRoughness &roughness, const Chart &chart, const Job &job,
                            std::size_t feature, const PictureOptions &options = {});

} // namespace asperity
