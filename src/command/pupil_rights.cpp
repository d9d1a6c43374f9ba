// Erasing: files the book had written go first, then the pupil. A file that was changed since isn't ours any more and
// is only named, since it may hold something else by now.
#include <filesystem>
#include <iostream>
#include <system_error>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/pupil.hpp"
#include "command/write_for_pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/day_copy.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/readable.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/book/school.hpp"
#include "loopwright/card/progress.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/file/notes_file.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

namespace fs = std::filesystem;

struct PupilJob {
  std::string code, book, output;
  bool yes = false;
};

bool is_as_written(const book::WrittenFile& file) {
  try {
    return file::sha256_of(file::load_text(file.path, {"file", {}})) == file.sha256;
  } catch (const InputError&) {
    return false;  // a folder, or unreadable: not what was written
  }
}

/// As seen from here when it lies below, else whole.
std::string shown(const fs::path& path) {
  std::error_code error;
  const fs::path near = fs::relative(path, error);
  return error || near.empty() || near.begin()->string() == ".." ? path.string() : near.string();
}

/// Of a file of several pupils, such as one PDF of a day: nothing of the erased one may stay in it, so all of it goes.
std::string what_goes_along(const book::Book& book, const std::string& code,
                            const book::WrittenFile& file) {
  const auto others = book::others_of_file(book, code, file.path);
  return others.empty() ? "" : "sheets of " + listed(others);
}

/// Said before anything is deleted: sheets of others that go along.
std::string what_would_go_along(const book::Book& book, const std::string& code) {
  std::string text;
  for (const book::WrittenFile& file : book::written_files(book, code)) {
    const std::string along = what_goes_along(book, code, file);
    std::error_code error;
    if (!along.empty() && fs::exists(file.path, error) && is_as_written(file))
      text += "; with it goes " + shown(file.path) + ", which holds " + along + " as well";
  }
  return text;
}

/// True when nothing of it is left to look at. along: what else it holds; nothing: nothing.
bool delete_file(const book::WrittenFile& file, const std::string& along) {
  std::error_code error;
  if (!fs::exists(fs::symlink_status(file.path, error))) return true;
  if (!is_as_written(file)) {
    std::cerr
        << "loopwright: " << shown(file.path)
        << ": was written for the pupil, but is changed since; it is left, delete it yourself\n";
    return false;
  }
  if (fs::remove(file.path, error)) {
    print_folded(std::cout, 0,
                 shown(file.path) + ": deleted" +
                     (along.empty() ? "" : "; it held " + along + " as well: print those anew"));
    return true;
  }
  std::cerr << "loopwright: " << shown(file.path) << ": can't be deleted (" << error.message()
            << "); delete it yourself\n";
  return false;
}

/// Of a file only what 'pupil restore' put aside: its store overwrites what is deleted.
std::string what_stays(const book::Book& book) {
  if (book::is_address(book.file().string()))
    return "the server's log, replicas and backups keep it until they are renewed: ask who runs "
           "it\n";
  const fs::path aside = book.file().string() + ".before";
  std::error_code error;
  if (!fs::exists(aside, error)) return {};
  return shown(aside) +
         ": what the book had before 'pupil restore' is there as it was; delete it yourself\n";
}

std::string record_page(const book::Book& book, const std::string& code, Date day) {
  wish::ProgressSheet sheet;
  sheet.code = book::pupil_of(book, code).code;
  sheet.day = spoken_day(day);
  sheet.made = road::day_text(day);
  sheet.sections = book::readable_record(book, code);
  return card::write_record(sheet);
}

}  // namespace

Exit pupil_export(const Arguments& words) {
  Options app{
      "Writes all that is kept on a pupil: as JSON, or to be read when the file ends in .pdf.",
      "loopwright pupil export"};
  PupilJob job;
  std::string today;
  app.add_option("CODE", job.code, "the pupil's code")->required();
  add_book(app, job.book);
  app.add_option("-o,--output", job.output,
                 "file to write, .json or .pdf (default: standard output, JSON)");
  app.add_option("--today", today, "the day the page is of (default: today)");
  if (!parse(app, words)) return Exit::done;
  if (!job.output.empty()) need_folder_of(job.output);
  book::Book book = open_book(job.book, book::Opening::must_be_there);
  if (!job.output.empty()) need_own_file(job.output, {book.file()});
  const std::string code = pupil_code("CODE", job.code);
  const std::string text = fs::path(job.output).extension() == ".pdf"
                               ? record_page(book, code, today_of(today))
                               : book::export_pupil(book, code);
  if (job.output.empty()) {
    std::cout << text;
  } else {
    write_for_pupil(book, {code, 0}, job.output, text);
    std::cout << job.output
              << ": written; it holds all of the pupil, home and all: give it to nobody else\n";
  }
  return Exit::done;
}

Exit pupil_erase(const Arguments& words) {
  Options app{
      "Deletes a pupil: all rows, free pages and side files of the book, and the files that were "
      "written for the pupil: loop files, cards, sheets for home, pages and exports. Copies you "
      "made yourself are yours to delete.",
      "loopwright pupil erase"};
  PupilJob job;
  app.add_option("CODE", job.code, "the pupil's code")->required();
  add_book(app, job.book);
  app.add_flag("--yes", job.yes, "really: nothing can bring it back");
  if (!parse(app, words)) return Exit::done;
  const std::string code = pupil_code("CODE", job.code);
  book::Book book = open_book(job.book, book::Opening::must_be_there);
  book::pupil_of(book, code);    // throws when there is none
  book::need_no_day_copy(book);  // its logs may wait to be handed in
  if (!job.yes)
    throw UsageError("erasing " + code + " can't be undone" + what_would_go_along(book, code) +
                     ": say --yes if it is meant");
  bool all_gone = true;
  for (const book::WrittenFile& file : book::written_files(book, code))
    all_gone &= delete_file(file, what_goes_along(book, code, file));
  book::erase_pupil(book, code);
  std::cout << code << " is erased; the streets driven count on without a name\n"
            << what_stays(book);
  return all_gone ? Exit::done : Exit::could_not;
}

Exit pupil_purge(const Arguments& words) {
  Options app{
      "Shows of whom no lesson was given for so many months, and with --yes deletes their details: "
      "home, ticks, passes, levels, remarks, goals, recordings and the files written for them. "
      "Code "
      "and each lesson's day, length and state stay for your accounts.",
      "loopwright pupil purge"};
  PupilJob job;
  std::string months = "12", today;
  app.add_option("--months", months, "without a lesson (default: 12)");
  app.add_option("--today", today, "the day to count from (default: today)");
  add_book(app, job.book);
  app.add_flag("--yes", job.yes, "really: nothing can bring the details back");
  if (!parse(app, words)) return Exit::done;
  const int count = whole_number("--months", months, {1, 240});
  const Date day = today_of(today);
  book::Book book = open_book(job.book, book::Opening::must_be_there);
  book::need_no_day_copy(book);
  const auto due = book::due_for_purge(book, day, count);
  if (due.empty()) {
    std::cout << "nobody is due: every pupil had a lesson within " << count
              << " months, or is purged\n";
    return Exit::done;
  }
  bool all_gone = true;
  for (const book::DuePupil& one : due) {
    std::cout << one.code << ", last on " << road::day_text(one.last);
    if (!job.yes) {
      std::cout << ": due" << what_would_go_along(book, one.code) << '\n';
      continue;
    }
    std::cout << '\n';
    for (const book::WrittenFile& file : book::written_files(book, one.code))
      all_gone &= delete_file(file, what_goes_along(book, one.code, file));
    book::purge_pupil(book, one.code);
    std::cout << one.code << ": purged; the lessons' days and lengths stay\n";
  }
  std::cout << (job.yes ? what_stays(book) : "nothing is deleted yet: say --yes if it is meant\n");
  return all_gone ? Exit::done : Exit::could_not;
}

}  // namespace loopwright::command
