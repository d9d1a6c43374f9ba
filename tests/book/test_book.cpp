#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <fstream>

#include "book/sample.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/migrations.hpp"
#include "loopwright/book/rights.hpp"
#include "support/error_text.hpp"
#include "support/in_child.hpp"

namespace loopwright::book {
namespace {

using test::error_text;
using test::ScratchBook;
using test::ScratchFolder;

void run_in(const std::filesystem::path& file, const std::string& sql) {
  sqlite3* db = nullptr;
  REQUIRE(sqlite3_open(file.c_str(), &db) == SQLITE_OK);
  REQUIRE(sqlite3_exec(db, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
  sqlite3_close(db);
}

TEST_CASE("a new book is empty and its owner's alone", "[book][file]") {
  const ScratchFolder folder;
  const Book book = Book::open(folder / "b.book", Opening::may_make);
  CHECK(pupils_of(book).empty());
  struct stat status {};
  for (const char* name : {"b.book", "b.book-wal", "b.book-shm"}) {
    REQUIRE(::stat((folder / name).c_str(), &status) == 0);
    CHECK((status.st_mode & 0777) == 0600);
  }
  book.check();
}

TEST_CASE("a book that isn't there is made only where that is meant", "[book][file]") {
  const ScratchFolder folder;
  CHECK(error_text([&] { Book::open(folder / "b.book", Opening::must_be_there); }) ==
        (folder / "b.book").string() +
            ": there is no book; 'loopwright pupil add CODE' makes one, --book FILE names another");
  CHECK_FALSE(std::filesystem::exists(folder / "b.book"));
}

TEST_CASE("an empty file is made a book only where that is meant", "[book][file]") {
  const ScratchFolder folder;
  const auto file = folder / "b.book";
  std::ofstream{file};
  CHECK(error_text([&] { Book::open(file, Opening::must_be_there); }) ==
        file.string() +
            ": is empty, no book; 'loopwright pupil add CODE' makes it one, --book FILE names "
            "another");
  CHECK(std::filesystem::file_size(file) == 0);
  CHECK(pupils_of(Book::open(file, Opening::may_make)).empty());
}

TEST_CASE("the usual book lies in the user's data folder", "[book][file]") {
  CHECK(usual_file("/data", "/home/me") == "/data/loopwright/pupils.book");
  CHECK(usual_file("", "/home/me") == "/home/me/.local/share/loopwright/pupils.book");
  // XDG Base Directory Specification: a relative path is to be ignored.
  CHECK(usual_file("data", "/home/me") == "/home/me/.local/share/loopwright/pupils.book");
  CHECK(usual_file("", "").empty());
}

TEST_CASE("a book of every older version is brought up to date with what is in it",
          "[book][migration][file]") {
  for (std::size_t version = 0; version < migrations().size(); ++version) {
    const ScratchFolder folder;
    std::string sql;
    for (std::size_t k = 0; k < version; ++k) sql += migrations()[k];
    if (version > 0)
      sql +=
          "INSERT INTO pupil (id, code, scheme, added, home, test_day, my_your) VALUES (1, 'WREN', "
          "'car-27', '2026-09-01', '4 Lantern Row', NULL, 0);";
    if (version > 1)
      sql +=
          "INSERT INTO lesson (id, pupil, number, state, start, start_s, length_minutes, area, "
          "notes, "
          "terms, wish, loop_file, likely_s, minutes, light, weather, traffic, said, remark, "
          "private_minutes) VALUES (1, 1, 1, 'driven', '2026-11-28T15:00:00+00:00', 1795878000, "
          "60, '', '', '', "
          "'', '', 0, 52, '', '', '', 'nearly', '', 0);";
    if (version > 2)
      sql += version < 8 ? "INSERT INTO written_file VALUES ('/out/wren.pdf', 1, 'aa');"
                         : "INSERT INTO written_file VALUES ('/out/wren.pdf', 1, 1, 'aa');";
    sql += "PRAGMA application_id = " + std::to_string(version > 0 ? 0x4c77626b : 0) +
           "; PRAGMA user_version = " + std::to_string(version);
    run_in(folder / "b.book", sql);
    Book book = Book::open(folder / "b.book", Opening::must_be_there);
    INFO(version);
    CHECK(pupils_of(book).size() == (version > 0 ? 1 : 0));
    if (version > 1) CHECK(lessons_of(book, "WREN").at(0).log.said == "nearly");
    if (version > 1) CHECK(lessons_of(book, "WREN").at(0).plan.limits.empty());
    if (version > 2)
      CHECK(written_files(book, "WREN") == std::vector<WrittenFile>{{"/out/wren.pdf", "aa"}});
    if (version == 0) add_pupil(book, test::wren());
    plan_lesson(book, "WREN", test::plan_of_two_passes(), {{7, 1, 2}});
    CHECK(street_use(book, {.day = {2026, 11, 28}}).size() == 1);
  }
}

TEST_CASE("a book of a newer program is refused untouched", "[book][migration][file]") {
  const ScratchFolder folder;
  { Book::open(folder / "b.book", Opening::may_make); }
  run_in(folder / "b.book", "PRAGMA user_version = 99");
  CHECK(error_text([&] { Book::open(folder / "b.book", Opening::may_make); }) ==
        (folder / "b.book").string() +
            ": was written by a newer Loopwright (book version 99; this program knows " +
            std::to_string(migrations().size()) + "); use that one");
}

TEST_CASE("what is no book is told", "[book][file]") {
  const ScratchFolder folder;
  const auto said = [&](const char* name) {
    return error_text([&] { Book::open(folder / name, Opening::may_make); });
  };
  test::write_bytes(folder / "notes.txt", std::string(5000, 'x'));
  CHECK(said("notes.txt") ==
        (folder / "notes.txt").string() +
            ": is no book, or is damaged at its beginning; take your copy of it (file is not a "
            "database)");
  run_in(folder / "other.db", "CREATE TABLE t (a)");
  CHECK(said("other.db") ==
        (folder / "other.db").string() +
            ": is a database of another program, no book; name another file with --book");
  CHECK(said("") == (folder / "").string() + ": is a folder; name a file in it with --book");
  CHECK(said("none/b.book") ==
        (folder / "none/b.book").string() +
            ": a book can't be made there (No such file or directory); name another file with "
            "--book");
}

TEST_CASE("a damaged book is told, and nothing is written into it", "[book][file]") {
  const ScratchFolder folder;
  {
    Book book = Book::open(folder / "b.book", Opening::may_make);
    add_pupil(book, test::wren());
  }
  std::string bytes = test::read_bytes(folder / "b.book");
  for (std::size_t at = 4096; at < bytes.size(); ++at) bytes[at] = '\x55';
  test::write_bytes(folder / "b.book", bytes);
  const std::string said = error_text([&] {
    Book book = Book::open(folder / "b.book", Opening::must_be_there);
    add_pupil(book, test::wren());
  });
  CHECK(said.starts_with((folder / "b.book").string() + ": is damaged; take your copy of it ("));
  CHECK(test::read_bytes(folder / "b.book") == bytes);
}

TEST_CASE("who writes into a book that another holds is told to wait", "[book][file]") {
  ScratchBook at;
  sqlite3* other = nullptr;
  REQUIRE(sqlite3_open((at.folder / "b.book").c_str(), &other) == SQLITE_OK);
  REQUIRE(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
  CHECK(pupils_of(at.book).size() == 1);  // who reads needn't wait
  const std::string said = error_text([&] { change_pupil(at.book, test::wren()); });
  CHECK(said == (at.folder / "b.book").string() +
                    ": is in use by another program; nothing is written, try again when that one "
                    "is done (database is "
                    "locked)");
  sqlite3_close(other);
  change_pupil(at.book, test::wren());
}

// A limit on how large a file may grow stands for a full disk, which a test can't make without rights
// (tests/command/test_book.py fills a real one where it may).
TEST_CASE("a book that can't grow keeps what it had, and says so", "[book][file]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", test::plan_of_two_passes(), {});
  const test::Ended ended = test::in_child([&] {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit most{200'000, 200'000};
    ::setrlimit(RLIMIT_FSIZE, &most);
    Plan large = test::plan_of_two_passes();
    large.start = large.start.plus_seconds(3600);
    large.loop_file = std::string(2'000'000, 'x');
    const std::string said = error_text([&] {
      Book book = Book::open(at.folder / "b.book", Opening::must_be_there);
      plan_lesson(book, "WREN", large, {});
    });
    ::write(STDERR_FILENO, said.data(), said.size());
  });
  CHECK(ended.said.starts_with((at.folder / "b.book").string() + ": the disk "));
  CHECK(ended.said.find("nothing is written") != std::string::npos);
  CHECK(lessons_of(at.book, "WREN").size() == 1);
  at.book.check();
}

}  // namespace
}  // namespace loopwright::book
