// 1. Key: plain letters, cut into words, short forms spelled out (src/rules/street_words.txt), one
//    space between words.
// 2. "St" is a street as the last word, or before a last "North", "Upper" …; else a saint.
// 3. Edits: optimal string alignment distance (Damerau 1964, restricted to swaps of neighbours): the
//    four slips it counts are those of a keyboard. Three rows of the matrix are enough.
#include "loopwright/place/spelling.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"
#include "place/letters.hpp"

namespace loopwright::place {
namespace {

constexpr std::array<std::string_view, 6> ends_after_street{"north", "south", "east",
                                                            "west",  "upper", "lower"};

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words = split(text, ' ');
  std::erase(words, std::string_view());
  return words;
}

/// Short forms and the words they stand for.
using StreetWords = std::map<std::string_view, std::string_view>;

StreetWords read_street_words() {
  StreetWords words;
  for (const TableRow& row : read_table(rule_text("street_words"))) {
    for (const std::string_view form : words_of(row[0])) words[form] = row[1];
  }
  return words;
}

const StreetWords& street_words() {
  static const StreetWords words = read_street_words();
  return words;
}

/// The word a short form stands for; the form itself when it is none.
std::string_view spelled_out(std::string_view form) {
  const auto found = street_words().find(form);
  return found == street_words().end() ? form : found->second;
}

bool says_sort_of_street(std::string_view word) {
  return std::ranges::any_of(street_words(),
                             [word](const auto& row) { return row.second == word; });
}

bool is_end_of_street(const std::vector<std::string_view>& words, std::size_t at) {
  if (at == 0) return false;
  if (at + 1 == words.size()) return true;
  return at + 2 == words.size() &&
         std::ranges::find(ends_after_street, words[at + 1]) != ends_after_street.end();
}

std::string_view word_at(const std::vector<std::string_view>& words, std::size_t at) {
  if (words[at] == "st") return is_end_of_street(words, at) ? "street" : "saint";
  if (at == 0) return words[0] == "mt" ? "mount" : words[0];
  return spelled_out(words[at]);
}

}  // namespace

std::string key_of(std::string_view text) {
  const std::string plain = plain_letters(text);
  std::vector<std::string_view> words = words_of(plain);
  if (words.size() > 1 && words[0] == "the") words.erase(words.begin());
  std::string key;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) key += ' ';
    key += word_at(words, i);
  }
  return key;
}

std::string squeezed(std::string_view key) {
  std::string text(key);
  std::erase(text, ' ');
  return text;
}

int edits_between(std::string_view a, std::string_view b) {
  std::vector<int> before(b.size() + 1), above(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::swap(before, above), std::swap(above, row);
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int changed = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({changed, above[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
  }
  return row[b.size()];
}

int allowed_edits(std::string_view key) {
  std::size_t telling = 0, all = 0;
  for (const std::string_view word : words_of(key)) {
    all += word.size();
    if (!says_sort_of_street(word)) telling += word.size();
  }
  return std::clamp(static_cast<int>(telling > 0 ? telling : all) / 4, 1, 3);
}

bool is_part_of(std::string_view part, std::string_view key) {
  const std::string words = " " + std::string(key) + " ";
  return !part.empty() && words.find(" " + std::string(part) + " ") != std::string::npos;
}

std::vector<std::string> trigrams(std::string_view key) {
  const std::string padded = " " + std::string(key) + " ";
  const auto letters = characters(padded);
  std::set<std::string> found;
  for (std::size_t i = 0; i + 2 < letters.size(); ++i) {
    found.insert(std::string(letters[i]).append(letters[i + 1]).append(letters[i + 2]));
  }
  return {found.begin(), found.end()};
}

}  // namespace loopwright::place
