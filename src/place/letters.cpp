// 1. Cut the text into UTF-8 characters.
// 2. ASCII: capitals become small, apostrophes go, '&' is a word, other signs are spaces.
// 3. U+00C0 to U+017F (Latin-1 letters, Latin Extended-A; Unicode charts): a table of runs of code
//    points that are forms of one letter. Combining marks (U+0300 to U+036F) go.
#include "place/letters.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

namespace loopwright::place {
namespace {

/// All code points up to `last`, from the end of the run before, are forms of `base`.
struct Run {
  std::uint32_t last;
  std::string_view base;
};

constexpr std::uint32_t first_accented = 0xc0, last_accented = 0x17f;
constexpr std::array<Run, 48> runs{
    {{0xc5, "a"},  {0xc6, "ae"}, {0xc7, "c"},  {0xcb, "e"},  {0xcf, "i"},   {0xd0, "d"},
     {0xd1, "n"},  {0xd6, "o"},  {0xd7, " "},  {0xd8, "o"},  {0xdc, "u"},   {0xdd, "y"},
     {0xde, "th"}, {0xdf, "ss"}, {0xe5, "a"},  {0xe6, "ae"}, {0xe7, "c"},   {0xeb, "e"},
     {0xef, "i"},  {0xf0, "d"},  {0xf1, "n"},  {0xf6, "o"},  {0xf7, " "},   {0xf8, "o"},
     {0xfc, "u"},  {0xfd, "y"},  {0xfe, "th"}, {0xff, "y"},  {0x105, "a"},  {0x10d, "c"},
     {0x111, "d"}, {0x11b, "e"}, {0x123, "g"}, {0x127, "h"}, {0x133, "i"},  {0x135, "j"},
     {0x138, "k"}, {0x142, "l"}, {0x14b, "n"}, {0x151, "o"}, {0x153, "oe"}, {0x159, "r"},
     {0x161, "s"}, {0x167, "t"}, {0x173, "u"}, {0x175, "w"}, {0x178, "y"},  {0x17e, "z"}}};

std::size_t bytes_of_character(unsigned char lead) {
  if (lead >= 0xf0) return 4;
  if (lead >= 0xe0) return 3;
  return lead >= 0xc0 ? 2 : 1;
}

bool continues(char byte) {
  return (static_cast<unsigned char>(byte) & 0xc0U) == 0x80U;
}

std::uint32_t code_point(std::string_view character) {
  const auto lead = static_cast<unsigned char>(character[0]);
  if (character.size() == 1) return lead;
  std::uint32_t code = lead & (0xffU >> (character.size() + 1));
  for (const char byte : character.substr(1)) {
    code = (code << 6U) | (static_cast<unsigned char>(byte) & 0x3fU);
  }
  return code;
}

std::string_view base_of(std::uint32_t code) {
  const auto run = std::ranges::find_if(runs, [code](const Run& r) { return code <= r.last; });
  return run != runs.end() ? run->base : "s";  // U+017F is the long s
}

void add_ascii(std::string& out, char c) {
  if (c >= 'A' && c <= 'Z') {
    out += static_cast<char>(c - 'A' + 'a');
  } else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
    out += c;
  } else if (c == '&') {
    out += " and ";
  } else if (c != '\'' && c != '`') {
    out += ' ';
  }
}

bool is_apostrophe_or_mark(std::uint32_t code) {
  constexpr std::uint32_t left_quote = 0x2018, right_quote = 0x2019, acute = 0xb4, prime = 0x2032;
  return code == left_quote || code == right_quote || code == acute || code == prime ||
         (code >= 0x300 && code <= 0x36f);
}

bool is_other_sign(std::uint32_t code) {  // Latin-1 signs and general punctuation
  return (code >= 0x80 && code < first_accented) || (code >= 0x2000 && code <= 0x206f);
}

}  // namespace

std::vector<std::string_view> characters(std::string_view text) {
  std::vector<std::string_view> found;
  while (!text.empty()) {
    std::size_t length =
        std::min(bytes_of_character(static_cast<unsigned char>(text[0])), text.size());
    if (!std::ranges::all_of(text.substr(1, length - 1), continues)) length = 1;
    found.push_back(text.substr(0, length));
    text.remove_prefix(length);
  }
  return found;
}

std::string plain_letters(std::string_view text) {
  std::string out;
  for (const std::string_view character : characters(text)) {
    const std::uint32_t code = code_point(character);
    if (code < 0x80) {
      add_ascii(out, character[0]);
    } else if (is_apostrophe_or_mark(code)) {
      continue;
    } else if (character.size() == 1 || is_other_sign(code)) {
      out += ' ';
    } else if (code >= first_accented && code <= last_accented) {
      out += base_of(code);
    } else {
      out += character;
    }
  }
  return out;
}

}  // namespace loopwright::place
