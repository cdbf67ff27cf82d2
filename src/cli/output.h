// What commands say on the two streams, each in one way.
#pragma once

#include "asperity/report/summary_text.h"
#include "exit_status.h"

#include <string>
#include <string_view>

namespace asperity {

/// Fits the terminal, if standard output is one; NO_COLOR and a dumb terminal are respected.
SummaryStyle style_of_output();

/// False if standard output does not take the text.
bool print(const std::string &text);

/// "asperity: error: ..." on the error stream.
ExitStatus fail(std::string_view what);
ExitStatus stopped();
void warn_of_no_font();

} // namespace asperity
