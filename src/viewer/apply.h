// The only place where the state changes.
#pragma once

#include "wish.h"

namespace asperity {

void apply(AppState &state, const Wish &wish);

} // namespace asperity
