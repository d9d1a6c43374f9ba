#include "command/data_folder.hpp"

#include <cstdlib>
#include <string>
#include <system_error>

#include "loopwright/book/book.hpp"

namespace loopwright::command {
namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::string() : value;
}

}  // namespace

std::filesystem::path data_folder(Folder folder) {
  namespace fs = std::filesystem;
  const fs::path own =
      book::usual_file(environment("XDG_DATA_HOME"), environment("HOME")).parent_path();
  std::error_code error;
  if (folder == Folder::made && !own.empty() && fs::create_directories(own, error))
    fs::permissions(own, fs::perms::owner_all, error);
  return own;
}

}  // namespace loopwright::command
