// Colours for who made a cell.
#include "named_colours.h"

#include "surface_grid.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

// CIE LCh: hues 105 to 375 degrees (orange is kept for stock left standing) in golden-section steps,
// lightness 44, 62, 80, 54 in turn, chroma up to 46.
constexpr Rgb kColours[] = {{1, 117, 108},  {220, 116, 161}, {132, 207, 254}, {65, 145, 84},
                            {128, 86, 160}, {0, 166, 180},   {201, 204, 115}, {62, 132, 208},
                            {2, 118, 94},   {209, 121, 181}, {87, 213, 255},  {93, 142, 67},
                            {101, 95, 171}, {16, 167, 166},  {254, 177, 197}, {0, 137, 200}};
constexpr std::size_t kMostEntries = 12;
constexpr double kLevelStep_mm = 0.001;

std::string words_of(std::uint32_t name, Colouring colouring) {
  if (colouring == Colouring::line)
    return fmt::format("line {}", name);
  if (colouring == Colouring::piece)
    return fmt::format("piece {}", name);
  return fmt::format("tip at z {:.3f} mm",
                     kLevelStep_mm * static_cast<double>(static_cast<std::int32_t>(name)));
}

} // namespace

std::span<const Rgb> named_colours() { return kColours; }

std::uint32_t name_of_owner(const TimedPath &path, Colouring colouring, std::uint32_t owner) {
  if (owner >= path.pieces.size())
    return kNobody;
  const PathPiece &piece = path.pieces[owner];
  if (colouring == Colouring::line)
    return piece.line;
  if (colouring == Colouring::piece)
    return owner;
  const double z_mm = std::min(piece.curve.begin.z, piece.curve.end.z);
  return static_cast<std::uint32_t>(static_cast<std::int32_t>(std::lround(z_mm / kLevelStep_mm)));
}

std::uint8_t colour_of_name(std::uint32_t name) {
  // Multiples of the golden section spread evenly over 0..1 (Knuth, sorting and searching, 6.4: Fibonacci
  // hashing).
  const std::uint32_t spread = name * 2654435769u;
  return static_cast<std::uint8_t>(spread >> 28);
}

NameCounts count_names(const Chart &chart, const TimedPath &path, Colouring colouring) {
  NameCounts counts;
  std::uint32_t last_owner = kNobody;
  std::size_t *last = nullptr;
  for (std::size_t cell = 0; cell < cell_count(chart); ++cell) {
    const std::uint32_t owner = owner_of(chart, cell);
    if (owner == kNobody)
      continue;
    if (owner != last_owner || !last) {
      last = &counts[name_of_owner(path, colouring, owner)];
      last_owner = owner;
    }
    ++*last;
  }
  return counts;
}

Legend legend_of(const NameCounts &counts, Colouring colouring) {
  Legend legend;
  legend.title = colouring == Colouring::level  ? "level that made the surface"
                 : colouring == Colouring::line ? "program line that made the surface"
                                                : "piece of path that made the surface";
  std::size_t all = 0;
  for (const auto &[name, count] : counts)
    all += count;
  for (const auto &[name, count] : counts)
    legend.entries.push_back(
        {words_of(name, colouring), kColours[colour_of_name(name)],
         static_cast<double>(count) / static_cast<double>(std::max<std::size_t>(all, 1))});
  std::stable_sort(legend.entries.begin(), legend.entries.end(),
                   [](const LegendEntry &a, const LegendEntry &b) { return a.share > b.share; });
  legend.repeats = counts.size() > std::size(kColours);
  legend.entries.resize(std::min(legend.entries.size(), kMostEntries));
  return legend;
}

} // namespace asperity
