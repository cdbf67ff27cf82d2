// Numbers as bytes, little end first, whatever the machine.
#pragma once

#include <bit>
#include <cstdint>
#include <string>

namespace asperity {

inline void put_u16(std::string &bytes, std::uint16_t value) {
  bytes += static_cast<char>(value & 0xFFu);
  bytes += static_cast<char>(value >> 8);
}

inline void put_u32(std::string &bytes, std::uint32_t value) {
  for (int shift = 0; shift < 32; shift += 8)
    bytes += static_cast<char>((value >> shift) & 0xFFu);
}

inline void put_float(std::string &bytes, float value) {
  put_u32(bytes, std::bit_cast<std::uint32_t>(value));
}

} // namespace asperity
