// What each stage reads of a job. Whatever is not named in stage_inputs.cpp counts as read, so that a field
// added later is never forgotten.
#pragma once

#include "asperity/job/job.h"

namespace asperity {

// The path is asked for by its content, not by what it comes from.
bool same_for_cut(const Job &a, const Job &b);
/// The chart before anything is swept.
bool same_for_chart(const Job &a, const Job &b, std::size_t feature);
/// The swept path and the chart are asked for by their content.
bool same_for_roughness(const Job &a, const Job &b, std::size_t feature);
/// The material's own share, which is added to roughness at the end.
bool same_own_roughness(const Job &a, const Job &b);
/// Sizes are measured on the chart alone.
bool same_for_sizes(const Job &a, const Job &b, std::size_t feature);
bool same_for_findings(const Job &a, const Job &b);

} // namespace asperity
