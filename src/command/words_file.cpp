#include "command/words_file.hpp"

#include <stdexcept>

#include "loopwright/base/error.hpp"
#include "loopwright/file/load_text.hpp"

namespace loopwright::command {
namespace {

constexpr std::string_view advice = "; src/rules/words.txt has every row";

[[noreturn]] void refuse(const std::filesystem::path& file, const std::string& why) {
  throw InputError(file.string() + ": " + why + std::string(advice));
}

/// In our own table an odd row is our mistake; in this one it is its writer's.
say::Words words_in(const std::string& text, const std::filesystem::path& file) {
  try {
    return say::Words(text);
  } catch (const std::logic_error& odd) {
    refuse(file, odd.what());
  }
}

}  // namespace

WordsFile::WordsFile(const std::filesystem::path& file)
    : text_(file::load_text(file, {"table of words", {}})), words_(words_in(text_, file)) {
  if (const std::string why = words_.unfit_for(say::Words()); !why.empty()) refuse(file, why);
}

}  // namespace loopwright::command
