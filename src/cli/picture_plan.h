// From the words of `asperity picture` to what the renderer is asked.
#pragma once

#include "asperity/predict/outcome.h"
#include "asperity/render/caption.h"
#include "asperity/render/cell_quantity.h"
#include "command_picture.h"

namespace asperity {

struct PicturePlan {
  DrawRequest draw;
  SheetLayout sheet;
  Caption caption;   ///< all but the exaggeration, which the renderer may choose
  std::string fault; ///< empty, or what cannot be drawn and what to do
};

/// What can be judged without a prediction: empty, or what is wrong and what to do.
std::string fault_of(const PictureRequest &request, const Job &job);

/// The number the colours stand for, if it is one that has to be laid over the charts first.
std::optional<Measure> measure_of(const PictureRequest &request);

PicturePlan picture_plan(const PictureRequest &request, const Outcome &outcome);

} // namespace asperity
