#include <sqlite3.h>

#include <catch2/catch.hpp>
#include <set>

#include "book/sample.hpp"
#include "loopwright/book/rights.hpp"
#include "support/error_text.hpp"

namespace loopwright::book {
namespace {

using test::error_text;
using test::log_of_two_passes;
using test::plan_of_two_passes;
using test::ScratchBook;

void fill(Book& book, const std::string& code, const std::string& home) {
  Plan plan = plan_of_two_passes();
  plan.wish = "home " + home + "\n";
  // More than a page, so that erasing meets overflow pages too.
  plan.loop_file =
      "{\"home\": \"" + home + "\", \"rest\": \"" + std::string(50'000, 'r') + home + "\"}";
  Log log = log_of_two_passes();
  log.said = code + " says so";
  const int number = plan_lesson(book, code, plan, {{7, 1, 2}, {9, 3, 4, 1, true}});
  log_lesson(book, code, number, log);
  note_written(book, code, number, {"/out/" + code + ".pdf", std::string(64, 'a')});
}

/// Bytes of the book and of all that lies beside it.
std::string all_bytes(const std::filesystem::path& folder) {
  std::string bytes;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    bytes += test::read_bytes(entry.path());
  return bytes;
}

// UK GDPR article 17.
TEST_CASE("after erasing no byte of a pupil is left, and the others are whole", "[book][rights]") {
  ScratchBook at;
  Pupil finch = test::wren();
  finch.code = "FINCH";
  finch.home = "19 Cooper's Reach";
  add_pupil(at.book, finch);
  fill(at.book, "WREN", "4 Lantern Row");
  fill(at.book, "FINCH", "19 Cooper's Reach");
  fill(at.book, "WREN", "4 Lantern Row");
  for (const char* trace : {"WREN", "4 Lantern Row", "WREN says so"})
    CHECK(all_bytes(at.folder.path()).find(trace) != std::string::npos);
  erase_pupil(at.book, "wren");
  for (const char* trace : {"WREN", "Lantern Row", "WREN says so", "WREN.pdf"})
    CHECK(all_bytes(at.folder.path()).find(trace) == std::string::npos);
  CHECK(lessons_of(at.book, "FINCH").size() == 1);
  CHECK(error_text([&] { pupil_of(at.book, "WREN"); }).starts_with("there is no pupil WREN"));
  // Near the door nothing is left of it; the rest counts on, without a name.
  CHECK(street_use(at.book, {{2026, 11, 28}}) ==
        std::vector<wish::StreetUse>{{7, 3, 3}, {9, 1, 1}});
  at.book.check();
}

TEST_CASE("who isn't there can't be erased", "[book][rights]") {
  ScratchBook at;
  CHECK(error_text([&] { erase_pupil(at.book, "FINCH"); }) ==
        "there is no pupil FINCH in the book; 'loopwright pupil list' shows who is");
}

TEST_CASE("a file belongs to who had it written last", "[book][rights]") {
  ScratchBook at;
  Pupil finch = test::wren();
  finch.code = "FINCH";
  add_pupil(at.book, finch);
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  plan_lesson(at.book, "FINCH", plan_of_two_passes(), {});
  note_written(at.book, "WREN", 1, {"/out/lesson.pdf", "aa"});
  note_written(at.book, "FINCH", 1, {"/out/lesson.pdf", "bb"});
  CHECK(written_files(at.book, "WREN").empty());
  REQUIRE(written_files(at.book, "FINCH").size() == 1);
  CHECK(written_files(at.book, "FINCH")[0].sha256 == "bb");
  note_written(at.book, "WREN", 1, {"/out/lesson.pdf", "bb"});  // the same bytes: one file of both
  CHECK(written_files(at.book, "WREN").size() == 1);
  CHECK(written_files(at.book, "FINCH").size() == 1);
}

std::set<std::string> tables_in(const std::filesystem::path& file) {
  sqlite3* db = nullptr;
  REQUIRE(sqlite3_open(file.c_str(), &db) == SQLITE_OK);
  std::set<std::string> names;
  const auto add = [](void* all, int, char** values, char**) {
    static_cast<std::set<std::string>*>(all)->insert(values[0]);
    return 0;
  };
  REQUIRE(sqlite3_exec(db, "SELECT name FROM sqlite_master WHERE type = 'table'", add, &names,
                       nullptr) == SQLITE_OK);
  sqlite3_close(db);
  return names;
}

// UK GDPR articles 15 and 20.
TEST_CASE("an export has every table of the book, and nothing of others", "[book][rights]") {
  ScratchBook at;
  Pupil finch = test::wren();
  finch.code = "FINCH";
  add_pupil(at.book, finch);
  fill(at.book, "WREN", "4 Lantern Row");
  fill(at.book, "FINCH", "19 Cooper's Reach");
  const std::string text = export_pupil(at.book, "WREN");
  for (const std::string& table : tables_in(at.folder / "b.book")) {
    INFO(table);
    const std::size_t start = text.find("\n \"" + table + "\": [");
    REQUIRE(start != std::string::npos);
    CHECK(text[text.find_first_not_of(" \n", start + table.size() + 7)] ==
          '{');  // none is empty in this book
  }
  CHECK(text.find("4 Lantern Row") != std::string::npos);
  CHECK(text.find("FINCH") == std::string::npos);
  CHECK(text.find("Cooper") == std::string::npos);
}

}  // namespace
}  // namespace loopwright::book
