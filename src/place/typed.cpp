// Postcodes: one or two letters, a digit, perhaps a letter or digit, then a digit and two letters
// (Royal Mail, "Postcode Address File programmers' guide", the six forms of a postcode).
#include "loopwright/place/typed.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "loopwright/base/text.hpp"
#include "place/houses.hpp"

namespace loopwright::place {
namespace {

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_outward(std::string_view word) {
  const std::size_t letters = word.size() > 1 && is_letter(word[1]) ? 2 : 1;
  return word.size() > letters && word.size() <= letters + 2 && is_letter(word[0]) &&
         is_digit(word[letters]) &&
         (word.size() == letters + 1 || is_digit(word.back()) || is_letter(word.back()));
}

bool is_inward(std::string_view word) {
  return word.size() == 3 && is_digit(word[0]) && is_letter(word[1]) && is_letter(word[2]);
}

std::vector<std::string> parts_of(std::string_view text, char separator) {
  std::vector<std::string> parts;
  for (const std::string_view part : split(text, separator)) {
    if (!part.empty()) parts.emplace_back(part);
  }
  return parts;
}

std::string joined(const std::vector<std::string>& words, std::size_t first, std::size_t last) {
  std::string text;
  for (std::size_t i = first; i < last; ++i) text += (i > first ? " " : "") + words[i];
  return text;
}

/// Moves a postcode at the end of the head into a tail of its own.
void cut_postcode(Typed& typed) {
  const std::vector<std::string> words = parts_of(typed.head, ' ');
  const std::size_t count = words.size();
  std::size_t kept = count;
  if (count > 2 && is_inward(words[count - 1]) && is_outward(words[count - 2])) {
    kept = count - 2;
  } else if (count > 1 && words[count - 1].size() > 4 &&
             is_inward(std::string_view(words[count - 1]).substr(words[count - 1].size() - 3)) &&
             is_outward(
                 std::string_view(words[count - 1]).substr(0, words[count - 1].size() - 3))) {
    kept = count - 1;
  }
  if (kept == count) return;
  typed.tails.insert(typed.tails.begin(), joined(words, kept, count));
  typed.head = joined(words, 0, kept);
}

/// Without "corner of", "junction of" …, when it begins so.
std::string_view without_opening(std::string_view head) {
  constexpr std::array<std::string_view, 4> openings{"corner of ", "junction of ", "crossing of ",
                                                     "crossroads of "};
  const std::string small = lower(head);
  for (const std::string_view opening : openings) {
    for (const std::string& start : {std::string(opening), "the " + std::string(opening)}) {
      if (small.starts_with(start)) return trim(head.substr(start.size()));
    }
  }
  return head;
}

}  // namespace

Typed read_typed(std::string_view text) {
  const std::vector<std::string> parts = parts_of(text, ',');
  Typed typed;
  if (parts.empty()) return typed;
  std::size_t used = 1;
  typed.head = parts[0];
  if (parts.size() > 1 && looks_like_house_number(parts[0])) typed.head += " " + parts[used++];
  typed.tails.assign(parts.begin() + static_cast<std::ptrdiff_t>(used), parts.end());
  cut_postcode(typed);
  return typed;
}

std::optional<NumberAndStreet> number_and_street(std::string_view head) {
  const std::vector<std::string> words = parts_of(head, ' ');
  const std::size_t count = words.size();
  if (count < 2) return std::nullopt;
  if (looks_like_house_number(words.front())) {
    // "4 a Lantern Row" is written too; a single letter belongs to the number.
    const std::size_t used = count > 2 && words[1].size() == 1 && is_letter(words[1][0]) ? 2 : 1;
    return NumberAndStreet{joined(words, 0, used), joined(words, used, count)};
  }
  if (looks_like_house_number(words.back())) {
    return NumberAndStreet{words.back(), joined(words, 0, count - 1)};
  }
  return std::nullopt;
}

std::vector<std::pair<std::string, std::string>> two_streets(std::string_view head) {
  const std::string_view text = without_opening(head);
  const std::string small = lower(text);
  std::vector<std::pair<std::string, std::string>> cuts;
  for (const std::string_view sign : {"/", "&", " and "}) {
    for (std::size_t at = small.find(sign); at != std::string::npos;
         at = small.find(sign, at + 1)) {
      const std::string_view one = trim(text.substr(0, at)),
                             other = trim(text.substr(at + sign.size()));
      if (!one.empty() && !other.empty()) cuts.emplace_back(one, other);
    }
  }
  return cuts;
}

bool is_part_of_house(std::string_view text) {
  constexpr std::array<std::string_view, 6> parts{"flat ", "apartment ", "apt ",
                                                  "unit ", "room ",      "suite "};
  const std::string small = lower(text);
  return std::ranges::any_of(parts, [&](std::string_view part) { return small.starts_with(part); });
}

}  // namespace loopwright::place
