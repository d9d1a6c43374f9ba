// The words of src/rules/words.txt: everything that is spoken, and everything printed on a sheet.
//
//   Words words;   words.fill("turn.sharp", {{"side", "left"}});   // "turn sharp left"
//
// Rules: a key the table doesn't have is our own mistake (std::logic_error). Texts start in lower
// case; a sheet makes the first letter a capital. Views live as long as the table's text.
// Why: one readable table, so that another wording or language is another file: a table of someone
// else's is read first, then asked whether it may stand for ours (unfit_for).
#pragma once

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "loopwright/base/table.hpp"

namespace loopwright::say {

/// What stands for one {name} in a text.
using Filling = std::pair<std::string_view, std::string>;

class Words {
 public:
  explicit Words(std::string_view table = rule_text("words"));

  [[nodiscard]] bool has(std::string_view key) const { return rows_.contains(key); }
  [[nodiscard]] std::string_view at(std::string_view key) const;
  /// The text with every {name} filled in. Rules: each name in it has a filling.
  [[nodiscard]] std::string fill(std::string_view key,
                                 std::initializer_list<Filling> fillings) const;
  /// The text for one, or that for several with {n} filled in (the same when there is only one).
  [[nodiscard]] std::string count(std::string_view key, std::size_t n) const;
  /// Cell `column` of a row that is a list: 1 is the first word after the key.
  [[nodiscard]] std::string_view item(std::string_view key, std::size_t column) const;
  /// "third"; a number that has no word of its own in figures.
  [[nodiscard]] std::string nth(int n) const;
  /// Why this table can't take the place of another, in one line: rows it lacks, names in braces that
  /// nothing would fill. Empty when it can.
  [[nodiscard]] std::string unfit_for(const Words& ours) const;

 private:
  [[nodiscard]] const TableRow& row(std::string_view key) const;
  std::map<std::string_view, TableRow> rows_;
};

/// Words as a listener counts them: what blanks part.
std::size_t spoken_words(std::string_view text);

/// The text with its first letter a capital, when that is a plain Latin one.
std::string capitalised(std::string text);

/// A name or number of a road as one says it: "A48 and A449" of the map's "A48;A449"; what would harm
/// a terminal made harmless (base/printable.hpp).
std::string spoken_name(std::string_view mapped);

}  // namespace loopwright::say
