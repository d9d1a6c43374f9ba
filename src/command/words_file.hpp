// A table of words of someone's own, read from a file: another wording or language of the card.
#pragma once

#include <filesystem>
#include <string>

#include "loopwright/say/words.hpp"

namespace loopwright::command {

/// Rules: its words are views of its text, so it is neither copied nor moved.
class WordsFile {
 public:
  /// Throws InputError when it is no table, lacks a row of ours, or has a gap that nothing fills.
  explicit WordsFile(const std::filesystem::path& file);
  WordsFile(const WordsFile&) = delete;
  WordsFile& operator=(const WordsFile&) = delete;
  WordsFile(WordsFile&&) = delete;
  WordsFile& operator=(WordsFile&&) = delete;
  ~WordsFile() = default;

  [[nodiscard]] const say::Words& words() const { return words_; }

 private:
  std::string text_;
  say::Words words_;
};

}  // namespace loopwright::command
