#include "loopwright/base/hex.hpp"

namespace loopwright {
namespace {

/// RFC 3986, 2.3.
bool is_unreserved(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '.' || c == '_' || c == '~';
}

}  // namespace

std::string hex(std::span<const std::uint8_t> bytes) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string text;
  text.reserve(2 * bytes.size());
  for (const std::uint8_t byte : bytes) {
    text += digits[byte >> 4U];
    text += digits[byte & 0xFU];
  }
  return text;
}

std::string percent_encoded(std::string_view bytes, std::string_view also_plain) {
  // 2.1 of the RFC: upper-case digits are the usual form.
  constexpr std::string_view digits = "0123456789ABCDEF";
  std::string text;
  for (const char c : bytes) {
    const auto byte = static_cast<std::uint8_t>(c);
    if (is_unreserved(c) || also_plain.find(c) != std::string_view::npos)
      text += c;
    else
      text.append("%").append(1, digits[byte >> 4U]).append(1, digits[byte & 0xFU]);
  }
  return text;
}

}  // namespace loopwright
