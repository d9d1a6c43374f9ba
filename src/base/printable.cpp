// Method: the text is cut into the characters of UTF-8 one by one; each is kept, or replaced by what
// can do no harm on a terminal. A byte that begins no whole character is replaced by itself.
#include <algorithm>
#include <array>

#include "loopwright/base/printable.hpp"

namespace loopwright {
namespace {

/// One character of UTF-8: its bytes and its number.
struct Character {
  std::size_t bytes = 1;
  char32_t number = 0;
};
constexpr char32_t broken = 0xfffd;

unsigned byte_at(std::string_view text, std::size_t at) {
  return at < text.size() ? static_cast<unsigned char>(text[at]) : 0U;
}

/// Bytes of the character that a byte begins; none for one that begins none.
std::size_t length_of(unsigned first) {
  if (first < 0x80) return 1;
  if (first < 0xc2 || first > 0xf4) return 0;
  return first < 0xe0 ? 2 : first < 0xf0 ? 3 : 4;
}

Character character_of(std::string_view rest) {
  const unsigned first = byte_at(rest, 0);
  const std::size_t bytes = length_of(first);
  if (bytes < 2) return {1, bytes == 1 ? char32_t{first} : broken};
  char32_t number = first & (0x7fU >> bytes);
  for (std::size_t k = 1; k < bytes; ++k) {
    const unsigned next = byte_at(rest, k);
    if ((next & 0xc0U) != 0x80) return {1, broken};
    number = number << 6 | (next & 0x3fU);
  }
  constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = number >= 0xd800 && number <= 0xdfff;
  if (number < least[bytes] || number > 0x10ffff || surrogate) return {1, broken};
  return {bytes, number};
}

bool is_line_end(char32_t c) {
  return (c >= 0x09 && c <= 0x0d) || c == 0x85 || c == 0x2028 || c == 0x2029;
}

bool is_control(char32_t c) {
  const bool turns_direction =
      (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069) || c == 0x200e || c == 0x200f;
  return c < 0x20 || (c >= 0x7f && c <= 0x9f) || turns_direction;
}

// U+E000 is the first character of private use; those of a shield lie so far behind it as in ASCII.
constexpr char32_t shield = 0xe000;

bool is_shielded(char32_t c) {
  return c >= shield + 0x20 && c < shield + 0x7f;
}

}  // namespace

std::string shielded(std::string_view text, std::string_view characters) {
  std::string result;
  for (const char c : text) {
    if (characters.find(c) == characters.npos) {
      result += c;
    } else {
      const auto byte = static_cast<unsigned char>(c);
      result += '\xee';
      result += static_cast<char>(0x80U | (byte >> 6U));
      result += static_cast<char>(0x80U | (byte & 0x3fU));
    }
  }
  return result;
}

std::string printable(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  while (!text.empty()) {
    const auto [bytes, number] = character_of(text);
    if (is_line_end(number)) {
      safe += ' ';
    } else if (is_shielded(number)) {
      safe += static_cast<char>(number - shield);
    } else if (number == broken || is_control(number)) {
      safe += "\ufffd";
    } else {
      safe += text.substr(0, bytes);
    }
    text.remove_prefix(bytes);
  }
  return safe;
}

}  // namespace loopwright
