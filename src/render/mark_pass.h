// Rings round the places of findings.
#pragma once

#include "asperity/predict/outcome.h"
#include "eye.h"
#include "gl_object.h"

#include <vector>

namespace asperity {

/// Where the findings lie in the picture: those of the drawn features and those that belong to none.
std::vector<PlacedMark> placed_marks(const Outcome &outcome, const DrawRequest &request, const Eye &eye);

class MarkPass {
public:
  explicit MarkPass(std::string &fault);
  void draw(const Outcome &outcome, const DrawRequest &request, const std::vector<PlacedMark> &marks) const;

private:
  ShaderProgram program_;
  VertexArray array_;
  Buffer rings_;
};

} // namespace asperity
