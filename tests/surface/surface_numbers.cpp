// Reads a profile and writes our mean line and parameters of its roughness as JSON, for outside_reference.py.
// Input: spacing, cutoff, 1 for a closed profile or 0, then the heights [mm].
#include "asperity/surface/gaussian_filter.h"
#include "asperity/surface/profile_parameters.h"

#include <cstdio>
#include <fstream>
#include <vector>

using namespace asperity;

int main(int count, char **arguments) {
  if (count != 2)
    return 2;
  std::ifstream file(arguments[1]);
  double spacing_mm = 0, cutoff_mm = 0;
  int closed = 0;
  if (!(file >> spacing_mm >> cutoff_mm >> closed))
    return 2;
  std::vector<double> heights;
  for (double z; file >> z;)
    heights.push_back(z);

  const ProfileEnds ends = closed ? ProfileEnds::closed : ProfileEnds::open;
  const GaussianFilter filter(cutoff_mm, spacing_mm);
  const ProfileParameters p = profile_parameters(filter.roughness(heights, ends), spacing_mm);
  std::printf(
      "{\"ra\": %.17g, \"rq\": %.17g, \"rsk\": %.17g, \"rku\": %.17g, \"rt\": %.17g, \"mean_line\": [",
      p.ra_mm, p.rq_mm, p.rsk, p.rku, p.rt_mm);
  const char *separator = "";
  for (const double z : filter.mean_line(heights, ends)) {
    std::printf("%s%.17g", separator, z);
    separator = ", ";
  }
  std::printf("]}\n");
}
