// SHA-256 [FIPS 180-4]: a fingerprint of a study's inputs.
#pragma once

#include <string>
#include <string_view>

namespace asperity {

/// 64 hexadecimal digits in small letters.
std::string sha256_text(std::string_view bytes);

} // namespace asperity
