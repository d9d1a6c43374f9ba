#include "loopwright/book/book.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <system_error>

#include "book/server_store.hpp"
#include "book/sqlite_store.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::book {
namespace {

namespace fs = std::filesystem;

/// An empty file that only its owner may read. One that somebody else makes at this moment is as good.
void make(const fs::path& file) {
  constexpr mode_t owner_only = 0600;
  const int made = ::open(file.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, owner_only);
  if (made >= 0) {
    ::close(made);
  } else if (errno != EEXIST) {
    throw InputError(file.string() + ": a book can't be made there (" +
                     std::generic_category().message(errno) + "); name another file with --book");
  }
}

}  // namespace

Book::Book(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Book::~Book() = default;
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;

Book Book::open(const fs::path& file, Opening opening) {
  if (is_address(file.string())) return Book(std::make_unique<ServerStore>(file));
  std::error_code ignored;
  if (fs::is_directory(file, ignored))
    throw InputError(file.string() + ": is a folder; name a file in it with --book");
  if (!fs::exists(file, ignored)) {
    if (opening == Opening::must_be_there)
      throw InputError(
          file.string() +
          ": there is no book; 'loopwright pupil add CODE' makes one, --book FILE names another");
    make(file);
  } else if (opening == Opening::must_be_there && fs::file_size(file, ignored) == 0) {
    throw InputError(
        file.string() +
        ": is empty, no book; 'loopwright pupil add CODE' makes it one, --book FILE names another");
  }
  return Book(std::make_unique<SqliteStore>(file));
}

const fs::path& Book::file() const {
  return connection_->place();
}

void Book::check() const {
  connection_->check();
}

fs::path usual_file(std::string_view xdg_data_home, std::string_view home) {
  const fs::path data = fs::path(xdg_data_home).is_absolute() ? fs::path(xdg_data_home)
                        : fs::path(home).is_absolute()        ? fs::path(home) / ".local" / "share"
                                                              : fs::path();
  return data.empty() ? data : data / "loopwright" / "pupils.book";
}

}  // namespace loopwright::book
