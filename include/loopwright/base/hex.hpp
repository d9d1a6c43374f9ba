// Bytes as hexadecimal digits: all of them, or those that may not stand in an address as they are.
//
//   hex(digest) == "0fa2…";   percent_encoded("a b/c", "/") == "a%20b/c"
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace loopwright {

/// Two lower-case digits a byte, in order; empty for no bytes.
std::string hex(std::span<const std::uint8_t> bytes);

/// Bytes as they may stand in an address; also_plain: which others than RFC 3986's unreserved ones (2.3: ASCII letters, digits,
/// "-._~") stay as they are.
std::string percent_encoded(std::string_view bytes, std::string_view also_plain = {});

}  // namespace loopwright
