// The words of a wish: options of `loops`, and lines of a wish file (DEVELOPERS.md, WISH FILE).
//
//   WishWords words;   words.add_options(app);   …   words.settle(wish_file);
//   if (const Said* minutes = words.one("minutes")) minutes->read([](std::string_view text) { … });
//
// Rules: of a word that is said once the command line's counts before the file's; of one that may be
// repeated both count, the file's first. A refusal names the option, or the file and the line.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "command/options.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::command {

/// Throws an error of a word as one of the line it stands in; without a line as it is.
[[noreturn]] void throw_in_place(const std::string& from, const UsageError& error);

/// What one word says, and where.
struct Said {
  std::string text;
  std::string from = {};  ///< "lesson.wish, line 3"; empty: the command line

  /// Rules: the reader throws UsageError only.
  template <class Reader>
  auto read(Reader reader) const {
    try {
      return reader(std::string_view(text));
    } catch (const UsageError& error) {
      throw_in_place(from, error);
    }
  }
};

class WishWords {
 public:
  WishWords();
  /// Rules: app must not outlive this.
  void add_options(Options& app);
  /// Once the command line is parsed: adds what the wish file says; none for an empty name. Throws
  /// InputError.
  void settle(const std::filesystem::path& wish_file);
  /// Takes the lines of a wish kept elsewhere; from: where, for refusals. Throws InputError.
  void take_text(std::string_view text, const std::string& from);
  /// Says a word that isn't said yet; of one that may be repeated once more. Rules: all else is settled, and there is
  /// such a word.
  void fill(std::string_view name, const std::string& value, const std::string& from);

  /// Null when it isn't said.
  [[nodiscard]] const Said* one(std::string_view name) const;
  [[nodiscard]] const std::vector<Said>& all(std::string_view name) const;
  /// The names of all that is said, in the order of the help.
  [[nodiscard]] std::vector<std::string> names_said() const;

  /// An error that names a word, "--home: …", as one of the line in which the word stands, if it does.
  [[noreturn]] void throw_in_its_line(const UsageError& error) const;

  /// All that is said but the start, as a wish file. Throws UsageError when a line can't hold it.
  [[nodiscard]] std::string file_text() const;

 private:
  struct Word {
    std::string one;
    bool flag = false;
    std::vector<std::string> many;  // as the command line says them
    std::vector<Said> said;
  };
  void take_line(std::string_view line, const std::string& from);
  std::vector<Word> words_;  // by row of the table in wish_words.cpp
};

}  // namespace loopwright::command
