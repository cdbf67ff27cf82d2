// The path on the graphics card.
#include "path_pass.h"

#include "path_lines.h"

namespace asperity {

namespace {

constexpr double kNearer = 2e-4;
constexpr double kPicked_px = 5.0; ///< how near is near enough
/// By PathKind: what comes rarely is drawn thicker.
constexpr double kWidth_px[] = {1.5, 1.1, 2.6, 2.2};

} // namespace

void PathPass::show(const TimedPath &path) {
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind)
    kinds_[kind].upload(path_stretches(path, static_cast<PathKind>(kind)));
}

void PathPass::draw(const LinePass &pass, const Eye &eye, const DrawRequest &request) const {
  const double moment = request.moment_s.value_or(1e30);
  for (std::size_t kind : {1u, 0u, 3u, 2u}) // rapids lie under the rest
    if (request.shows_path_kind[kind])
      pass.draw(eye, kinds_[kind],
                {.colour = request.theme.path[kind],
                 .width_px = kWidth_px[kind],
                 .dash_mm = dash_of(static_cast<PathKind>(kind)),
                 .moment_s = moment,
                 .nearer = kNearer});
  if (request.chosen_piece < 0)
    return;
  for (const LinesOnCard &lines : kinds_)
    pass.draw(eye, lines,
              {.colour = request.theme.chosen,
               .width_px = 4.0,
               .only_piece = request.chosen_piece,
               .nearer = 2.0 * kNearer});
}

void PathPass::draw_pick(const LinePass &pass, const Eye &eye, const DrawRequest &request) const {
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind)
    if (request.shows_path_kind[kind])
      pass.draw_pick(eye, kinds_[kind], kPicked_px);
}

} // namespace asperity
