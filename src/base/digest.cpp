// SHA-256 and base 64 by nettle.
#include "asperity/base/digest.h"

#include <nettle/base64.h>
#include <nettle/sha2.h>

#include <array>
#include <cstdint>

namespace asperity {

namespace {

std::array<std::uint8_t, SHA256_DIGEST_SIZE> sha256(std::string_view bytes) {
  sha256_ctx context;
  sha256_init(&context);
  sha256_update(&context, bytes.size(), reinterpret_cast<const std::uint8_t *>(bytes.data()));
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  sha256_digest(&context, digest.size(), digest.data());
  return digest;
}

} // namespace

std::string base64(std::string_view bytes) {
  std::string text(BASE64_ENCODE_RAW_LENGTH(bytes.size()), '\0');
  base64_encode_raw(text.data(), bytes.size(), reinterpret_cast<const std::uint8_t *>(bytes.data()));
  return text;
}

std::string sha256_hex(std::string_view bytes) {
  constexpr const char *kDigits = "0123456789abcdef";
  std::string text;
  for (const std::uint8_t byte : sha256(bytes)) {
    text += kDigits[byte >> 4];
    text += kDigits[byte & 15];
  }
  return text;
}

std::string sha256_base64(std::string_view bytes) {
  const auto digest = sha256(bytes);
  return base64({reinterpret_cast<const char *>(digest.data()), digest.size()});
}

} // namespace asperity
