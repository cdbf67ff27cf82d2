// Fingerprints of bytes, and bytes as text.
#pragma once

#include <string>
#include <string_view>

namespace asperity {

/// SHA-256 (FIPS 180-4) in small hexadecimal digits.
std::string sha256_hex(std::string_view bytes);
/// The same in base 64, as content security policies write it.
std::string sha256_base64(std::string_view bytes);
/// RFC 4648 base 64 with padding.
std::string base64(std::string_view bytes);

} // namespace asperity
