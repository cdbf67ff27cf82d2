// The text of a job with some of its values replaced, comments and order kept.
#pragma once

#include "what_if.h"

#include <string>
#include <string_view>

namespace asperity {

/// Replaces the key's value where its line stands, else adds it to its table, else adds the table. The result
/// is read back: where the text is too unusual for that (inline tables, dotted keys), it is written anew from
/// what it says, without comments. `fault` says why when nothing could be written.
std::string with_changes(std::string_view text, const Job &job, const Changes &changes, std::string &fault);

/// The shortest decimal that reads back to the same number, with a point.
std::string toml_number(double value);

} // namespace asperity
