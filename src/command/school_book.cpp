#include "command/school_book.hpp"

#include <system_error>

#include "loopwright/base/error.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::command {

std::string school_address(const std::string& option) {
  if (book::is_address(option)) return option;
  throw UsageError(
      "a school's book is on a server: --book postgresql://HOST/DATABASE or "
      "postgresql:///?service=NAME names it");
}

NewBook::NewBook(const std::string& file) : file_(file) {
  std::error_code ignored;
  kept_ = book::is_address(file) || std::filesystem::exists(file_, ignored);
}

NewBook::~NewBook() {
  if (kept_) return;
  std::error_code ignored;
  for (const char* beside : {"", "-wal", "-shm"})
    std::filesystem::remove(file_.string() + beside, ignored);
}

}  // namespace loopwright::command
