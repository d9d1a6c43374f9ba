// Method:
// 1. The table is read once; a row is found by its first cell.
// 2. {name} is replaced where it stands, from the left; fillings are not looked through again, so a
//    street called "{n}" does no harm.
#include "loopwright/say/words.hpp"

#include <algorithm>
#include <stdexcept>
#include <vector>

#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::say {
namespace {

std::string replaced(std::string_view text, std::initializer_list<Filling> fillings) {
  std::string result;
  while (!text.empty()) {
    const std::size_t open = text.find('{');
    result.append(text.substr(0, open));
    if (open == std::string_view::npos) break;
    const std::size_t close = text.find('}', open);
    if (close == std::string_view::npos) throw std::logic_error("words: a brace is not closed");
    const std::string_view name = text.substr(open + 1, close - open - 1);
    const auto it = std::find_if(fillings.begin(), fillings.end(),
                                 [&](const Filling& f) { return f.first == name; });
    if (it == fillings.end())
      throw std::logic_error("words: nothing for {" + std::string(name) + "}");
    result.append(it->second);
    text.remove_prefix(close + 1);
  }
  return result;
}

/// The names in braces; a brace that isn't closed is a name that nothing fills.
std::vector<std::string_view> gaps_in(std::string_view text) {
  std::vector<std::string_view> gaps;
  for (auto open = text.find('{'); open != std::string_view::npos; open = text.find('{')) {
    text.remove_prefix(open);
    const std::string_view gap = text.substr(0, text.find('}') + 1);
    gaps.push_back(gap.empty() ? text : gap);
    text.remove_prefix(gap.empty() ? text.size() : gap.size());
  }
  return gaps;
}

/// A gap of one row that the other doesn't have; empty when there is none.
std::string_view unknown_gap(const TableRow& row, const TableRow& ours) {
  std::vector<std::string_view> known;
  for (const std::string_view cell : ours)
    for (const std::string_view gap : gaps_in(cell)) known.push_back(gap);
  for (const std::string_view cell : row)
    for (const std::string_view gap : gaps_in(cell))
      if (std::find(known.begin(), known.end(), gap) == known.end()) return gap;
  return {};
}

}  // namespace

Words::Words(std::string_view table) {
  for (TableRow& row : read_table(table)) {
    if (row.size() < 2) throw std::logic_error("words: no text for " + std::string(row[0]));
    const std::string_view key = row[0];
    if (!rows_.emplace(key, std::move(row)).second)
      throw std::logic_error("words: two rows for " + std::string(key));
  }
}

const TableRow& Words::row(std::string_view key) const {
  const auto it = rows_.find(key);
  if (it == rows_.end()) throw std::logic_error("words: no row " + std::string(key));
  return it->second;
}

std::string_view Words::at(std::string_view key) const {
  return row(key)[1];
}

std::string Words::fill(std::string_view key, std::initializer_list<Filling> fillings) const {
  return replaced(at(key), fillings);
}

std::string Words::count(std::string_view key, std::size_t n) const {
  const TableRow& found = row(key);
  const std::string_view text = n != 1 && found.size() > 2 ? found[2] : found[1];
  return replaced(text, {{"n", std::to_string(n)}});
}

std::string_view Words::item(std::string_view key, std::size_t column) const {
  return row(key).at(column);
}

std::string Words::nth(int n) const {
  const std::string number = std::to_string(n);
  return has("nth." + number) ? std::string(at("nth." + number))
                              : fill("nth.more", {{"n", number}});
}

std::string Words::unfit_for(const Words& ours) const {
  constexpr std::size_t most_told = 5;
  std::vector<std::string> missing;
  for (const auto& [key, row] : ours.rows_) {
    const auto own = rows_.find(key);
    // Only of lists may none be missing: of a number a table may have one text for one and several.
    const bool list = key.starts_with("side.");
    if (own == rows_.end() || (list && own->second.size() < row.size())) missing.emplace_back(key);
  }
  if (!missing.empty()) {
    const std::size_t more = missing.size() - std::min(missing.size(), most_told);
    missing.resize(missing.size() - more);
    if (more > 0) missing.push_back(std::to_string(more) + " more");
    return "it has no words for " + listed(missing);
  }
  for (const auto& [key, row] : rows_) {
    for (const std::string_view cell : row)
      if (printable(cell) != cell) return "the words for " + printable(key) + " can't be printed";
    const auto known = ours.rows_.find(key);
    if (known == ours.rows_.end()) continue;
    if (const std::string_view gap = unknown_gap(row, known->second); !gap.empty())
      return "nothing fills " + printable(gap) + " in the words for " + std::string(key);
  }
  return {};
}

std::size_t spoken_words(std::string_view text) {
  std::size_t words = 0;
  bool inside = false;
  for (const char c : text) {
    if (c != ' ' && !inside) ++words;
    inside = c != ' ';
  }
  return words;
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string spoken_name(std::string_view mapped) {
  // Source: OSM wiki Semi-colon value separator.
  std::vector<std::string> names;
  for (const std::string_view part : split(mapped, ';')) {
    std::string name = printable(part);
    if (!name.empty() && std::ranges::find(names, name) == names.end())
      names.push_back(std::move(name));
  }
  return listed(names);
}

}  // namespace loopwright::say
