#include <sqlite3.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "book/sample.hpp"
#include "loopwright/book/backup.hpp"
#include "loopwright/book/readable.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/book/traced.hpp"
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
  log_traced(book, {code, number},
             {plan,
              log,
              {plan.start, 2640, 60, 15000, code + " was here", {{}}},
              {{7, 1, 2}, {9, 3, 4, 1, true}}});
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
TEST_CASE("after erasing no byte of a pupil is left, and the others are whole",
          "[book][rights][file]") {
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

TEST_CASE("a file of no lesson is remembered, too", "[book][rights]") {
  ScratchBook at;
  note_written(at.book, "WREN", 0, {"/out/all.json", "aa"});
  CHECK(written_files(at.book, "WREN") == std::vector<WrittenFile>{{"/out/all.json", "aa"}});
  CHECK(export_pupil(at.book, "WREN").find("\"lesson\": null") != std::string::npos);
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

/// What only a school's book, or a day's copy of one, has rows in.
void fill_as_a_school(const std::filesystem::path& file) {
  sqlite3* db = nullptr;
  REQUIRE(sqlite3_open(file.c_str(), &db) == SQLITE_OK);
  CHECK(
      sqlite3_exec(db,
                   "INSERT INTO log_entry (id, lesson, state, mark) SELECT 'e' || id, id, 'kept', "
                   "'' FROM lesson; INSERT INTO proposal SELECT id, '2026-11-30', '2026-11-30 "
                   "02:10 UTC', 'q1', 'm1', 'goal: zebra', 'want zebra=2' FROM pupil",
                   nullptr, nullptr, nullptr) == SQLITE_OK);
  sqlite3_close(db);
}

// UK GDPR articles 15 and 20.
TEST_CASE("an export has every table of the book, and nothing of others", "[book][rights][file]") {
  ScratchBook at;
  Pupil finch = test::wren();
  finch.code = "FINCH";
  add_pupil(at.book, finch);
  fill(at.book, "WREN", "4 Lantern Row");
  fill(at.book, "FINCH", "19 Cooper's Reach");
  fill_as_a_school(at.folder / "b.book");
  const std::string text = export_pupil(at.book, "WREN");
  for (const std::string& table : tables_in(at.folder / "b.book")) {
    INFO(table);
    if (table == "seen" || table == "centre") continue;  // of places, and of no pupil
    const std::size_t start = text.find("\n \"" + table + "\": [");
    REQUIRE(start != std::string::npos);
    CHECK(text[text.find_first_not_of(" \n", start + table.size() + 7)] ==
          '{');  // none is empty in this book
  }
  // The same to be read: a section for each of them, headed in words.
  const auto sections = readable_record(at.book, "WREN");
  CHECK(sections.size() + 2 == tables_in(at.folder / "b.book").size());  // but those
  for (const auto& section : sections) {
    INFO(section.heading);
    CHECK(section.heading.find('_') == std::string::npos);
    CHECK(section.heading[0] >= 'A');
    CHECK(section.heading[0] <= 'Z');
    CHECK_FALSE(section.lines.empty());
    for (const std::string& line : section.lines) {
      INFO(line);
      CHECK(line.find('_') == std::string::npos);  // no column's name
      CHECK(line.find("; ;") == std::string::npos);
    }
  }
  CHECK(text.find("4 Lantern Row") != std::string::npos);
  CHECK(text.find("FINCH") == std::string::npos);
  CHECK(text.find("Cooper") == std::string::npos);
}

TEST_CASE("a remark as long as may be is told whole to who reads the record", "[book][rights]") {
  ScratchBook at;
  plan_lesson(at.book, "WREN", plan_of_two_passes(), {});
  Log log = log_of_two_passes();
  log.remark.clear();
  for (int letter = 0; letter < 1000; ++letter) log.remark += "é";  // as read_log.cpp takes it
  log_lesson(at.book, {"WREN", 1}, log);
  const auto sections = readable_record(at.book, "WREN");
  const auto tells = [&](const auto& section) {
    return std::any_of(section.lines.begin(), section.lines.end(), [&](const std::string& line) {
      return line.find(log.remark) != std::string::npos;
    });
  };
  CHECK(std::any_of(sections.begin(), sections.end(), tells));
}

// A lesson of 28 November 2026 is due a year later. Twelve months: our trade notes, a judgement.
TEST_CASE("the details of who had no lesson for a year are due, and go without a byte",
          "[book][rights]") {
  ScratchBook at;
  Pupil finch = test::wren();
  finch.code = "FINCH";
  finch.home = "19 Cooper's Reach";
  add_pupil(at.book, finch);
  fill(at.book, "WREN", "4 Lantern Row");
  CHECK(due_for_purge(at.book, {2027, 11, 27}, 12).size() == 1);  // FINCH, added on 1 September
  const auto due = due_for_purge(at.book, {2027, 11, 28}, 12);
  REQUIRE(due.size() == 2);
  CHECK(due[1].code == "WREN");
  CHECK(due[1].last == Date{2026, 11, 28});
  purge_pupil(at.book, "WREN");
  for (const char* trace : {"4 Lantern Row", "WREN says so", "WREN was here", "WREN.pdf"})
    CHECK(all_bytes(at.folder.path()).find(trace) == std::string::npos);
  const auto lessons = lessons_of(at.book, "WREN");
  REQUIRE(lessons.size() == 1);
  CHECK(lessons[0].state == LessonState::driven);
  CHECK(lessons[0].plan.length_minutes == 60);
  CHECK(lessons[0].plan.start == plan_of_two_passes().start);
  CHECK(lessons[0].log.passes.empty());
  CHECK(due_for_purge(at.book, {2027, 11, 28}, 12).size() == 1);
  CHECK(street_use(at.book, {{2026, 11, 28}}) == std::vector<wish::StreetUse>{{7, 1, 1}});
  at.book.check();
}

TEST_CASE("a month without the day is counted to its last", "[book][rights]") {
  ScratchBook at;
  Plan plan = plan_of_two_passes();
  plan.start = {1772106000, 0};  // 26 February 2026, 11:40 UTC
  plan_lesson(at.book, "WREN", plan, {});
  CHECK(due_for_purge(at.book, {2026, 8, 25}, 6).empty());
  CHECK(due_for_purge(at.book, {2026, 8, 31}, 6).size() == 1);  // back to 28 February
}

TEST_CASE("a copy brings the book back as it was, and other files are refused",
          "[book][rights][file]") {
  ScratchBook at;
  fill(at.book, "WREN", "4 Lantern Row");
  const std::string before = export_pupil(at.book, "WREN");
  back_up(at.book, at.folder / "copy.book");
  back_up(at.book, at.folder / "copy.book");  // in the place of an older one
  erase_pupil(at.book, "WREN");
  restore(at.book, at.folder / "copy.book");
  CHECK(export_pupil(at.book, "WREN") == before);
  const auto mode = std::filesystem::status(at.folder / "copy.book").permissions();
  CHECK(mode == (std::filesystem::perms::owner_read | std::filesystem::perms::owner_write));
  // No file of the work is left beside them.
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(at.folder.path()))
    files += entry.path().string().ends_with("part") ? 1 : 0;
  CHECK(files == 0);
  test::write_bytes(at.folder / "bad.book", std::string(5000, 'x'));
  CHECK(error_text([&] {
          restore(at.book, at.folder / "bad.book");
        }).starts_with((at.folder / "bad.book").string() + ": is no book"));
  std::string bytes = test::read_bytes(at.folder / "copy.book");
  for (std::size_t k = 4096; k < bytes.size(); ++k) bytes[k] = '\x55';
  test::write_bytes(at.folder / "torn.book", bytes);
  CHECK(error_text([&] {
          restore(at.book, at.folder / "torn.book");
        }).starts_with((at.folder / "torn.book").string() + ": is damaged"));
  CHECK(error_text([&] { back_up(at.book, at.folder / "b.book"); }) ==
        (at.folder / "b.book").string() + ": is the book itself; give the copy another name");
  CHECK(error_text([&] {
          back_up(at.book, at.folder / "none" / "c.book");
        }).find("a copy can't be made there") != std::string::npos);
  test::write_bytes(at.folder / "empty.book", "");
  CHECK(error_text([&] { restore(at.book, at.folder / "empty.book"); }) ==
        (at.folder / "empty.book").string() +
            ": is no copy of a book; 'loopwright pupil backup' makes copies");
  CHECK(export_pupil(at.book, "WREN") == before);
}

TEST_CASE("a copy that is a book in use brings back what stands only in its log yet",
          "[book][rights][file]") {
  ScratchBook at;
  Book other = Book::open(at.folder / "other.book", Opening::may_make);
  Pupil finch = test::wren();
  finch.code = "FINCH";
  add_pupil(other, finch);
  REQUIRE(std::filesystem::file_size(at.folder / "other.book-wal") > 0);
  restore(at.book, at.folder / "other.book");
  REQUIRE(pupils_of(at.book).size() == 1);
  CHECK(pupil_of(at.book, "FINCH").home == finch.home);
}

TEST_CASE("nothing is said to be brought back into a book that another writes",
          "[book][rights][file]") {
  ScratchBook at;
  back_up(at.book, at.folder / "copy.book");
  Pupil finch = test::wren();
  finch.code = "FINCH";
  add_pupil(at.book, finch);
  sqlite3* other = nullptr;
  REQUIRE(sqlite3_open((at.folder / "b.book").c_str(), &other) == SQLITE_OK);
  CHECK(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
  const std::string said = error_text([&] { restore(at.book, at.folder / "copy.book"); });
  sqlite3_close(other);
  CHECK(said.starts_with((at.folder / "b.book").string() + ": is in use by another program"));
  CHECK(pupils_of(at.book).size() == 2);
}

}  // namespace
}  // namespace loopwright::book
