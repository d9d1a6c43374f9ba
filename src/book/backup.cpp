// Method: SQLite's online backup, all pages within one transaction; the copy leaves the mode that needs files beside
// it, is checked, put on the disk and only then renamed.
#include "loopwright/book/backup.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <system_error>

#include "book/sqlite_store.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void tell(const fs::path& file, const std::string& what) {
  throw InputError(file.string() + ": " + what);
}

SqliteStore& file_of(const Book& book) {
  if (auto* store = dynamic_cast<SqliteStore*>(&book.connection())) return *store;
  tell(book.file(), "is a book on a server, which its server's own tools copy");
}

/// A file under another name until it is whole; deleted unless kept.
class Part {
 public:
  explicit Part(const fs::path& file)
      : file_(file), part_(file.string() + "." + std::to_string(::getpid()) + ".part") {
    constexpr mode_t owner_only = 0600;
    const int made = ::open(part_.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, owner_only);
    if (made < 0)
      tell(file_, "a copy can't be made there (" + std::generic_category().message(errno) +
                      "); name another file");
    ::close(made);
  }
  Part(const Part&) = delete;
  Part& operator=(const Part&) = delete;
  ~Part() {
    std::error_code ignored;
    for (const char* beside : {"", "-journal", "-wal", "-shm"})
      fs::remove(part_.string() + beside, ignored);
  }
  [[nodiscard]] const fs::path& path() const { return part_; }
  /// Gives it its name, once its bytes are on the disk.
  void keep() {
    const int opened = ::open(part_.c_str(), O_RDONLY | O_CLOEXEC);
    const bool there = opened >= 0 && ::fsync(opened) == 0;
    if (opened >= 0) ::close(opened);
    std::error_code error;
    if (there) fs::rename(part_, file_, error);
    if (!there || error) tell(file_, "the copy can't be written there; name another file");
  }

 private:
  fs::path file_, part_;
};

std::string integrity_of(SQLite::Database& db) {
  return db.execAndGet("PRAGMA integrity_check(1)").getString();
}

}  // namespace

void back_up(const Book& book, const fs::path& copy) {
  std::error_code ignored;
  if (fs::is_directory(copy, ignored)) tell(copy, "is a folder; name a file in it");
  if (fs::equivalent(copy, book.file(), ignored))
    tell(copy, "is the book itself; give the copy another name");
  Part part(copy);
  try {
    file_of(book).alone([&](SQLite::Database& db) {
      SQLite::Database to(part.path().string(), SQLite::OPEN_READWRITE);
      copy_pages(db, to);
      to.exec("PRAGMA journal_mode = DELETE");
      if (integrity_of(to) != "ok") tell(copy, "the copy can't be read back; name another file");
    });
  } catch (const InputError& error) {
    if (std::string(error.what()).find(book.file().string()) == std::string::npos) throw;
    tell(copy, "the copy can't be made (" + std::string(error.what()) + ")");
  }
  part.keep();
}

void restore(Book& book, const fs::path& copy, const std::function<void()>& before_it) {
  std::error_code ignored;
  if (!fs::exists(copy, ignored))
    tell(copy, "no such file; 'loopwright pupil backup' makes copies");
  if (!fs::is_regular_file(copy, ignored) || fs::file_size(copy, ignored) == 0)
    tell(copy, "is no copy of a book; 'loopwright pupil backup' makes copies");
  if (fs::equivalent(copy, book.file(), ignored)) tell(copy, "is the book itself");
  // The copy is another's file: it is brought to this version in a copy of its own beside the book.
  Part part(book.file().string() + ".restored");
  copy_book_file(copy, part.path());
  try {
    const Book from = Book::open(part.path(), Opening::must_be_there);
    from.check();
    before_it();
    file_of(book).alone([&](SQLite::Database& db) {
      SQLite::Database of(part.path().string(), SQLite::OPEN_READWRITE);
      copy_pages(of, db);
    });
  } catch (const InputError& refused) {
    const std::string text = refused.what(), name = part.path().string();
    const auto at = text.find(name);
    if (at == std::string::npos) throw;
    throw InputError(copy.string() + text.substr(at + name.size()));
  }
  book.check();
}

}  // namespace loopwright::book
