// Colours for who made a cell: program line, piece of path or level.
#pragma once

#include "asperity/predict/outcome.h"
#include "asperity/render/draw_request.h"

#include <cstdint>
#include <map>
#include <span>
#include <vector>

namespace asperity {

/// Sixteen colours; neighbours in the list differ in hue and in lightness.
std::span<const Rgb> named_colours();

/// What a piece counts as under line, piece or level.
std::uint32_t name_of_owner(const TimedPath &path, Colouring colouring, std::uint32_t owner);
/// Index into named_colours of a name; names that follow each other get colours far apart.
std::uint8_t colour_of_name(std::uint32_t name);

/// Cells by name, kNobody left out.
using NameCounts = std::map<std::uint32_t, std::size_t>;
NameCounts count_names(const Chart &chart, const TimedPath &path, Colouring colouring);

Legend legend_of(const NameCounts &counts, Colouring colouring);

} // namespace asperity
