// Erasing: files the book had written go first, then the pupil. A file that was changed since isn't ours any more and
// is only named, since it may hold something else by now.
#include <filesystem>
#include <iostream>
#include <system_error>

#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/file/notes_file.hpp"
#include "loopwright/store/area.hpp"

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

/// True when nothing of it is left to look at.
bool delete_file(const book::WrittenFile& file) {
  std::error_code error;
  if (!fs::exists(fs::symlink_status(file.path, error))) return true;
  if (!is_as_written(file)) {
    std::cerr
        << "loopwright: " << shown(file.path)
        << ": was written for the pupil, but is changed since; it is left, delete it yourself\n";
    return false;
  }
  if (fs::remove(file.path, error)) {
    std::cout << shown(file.path) << ": deleted\n";
    return true;
  }
  std::cerr << "loopwright: " << shown(file.path) << ": can't be deleted (" << error.message()
            << "); delete it yourself\n";
  return false;
}

}  // namespace

Exit pupil_export(const Arguments& words) {
  Options app{"Writes all that is kept on a pupil, as JSON.", "loopwright pupil export"};
  PupilJob job;
  app.add_option("CODE", job.code, "the pupil's code")->required();
  add_book(app, job.book);
  app.add_option("-o,--output", job.output, "file to write (default: standard output)");
  if (!parse(app, words)) return Exit::done;
  if (!job.output.empty()) need_folder_of(job.output);
  const book::Book book = open_book(job.book, book::Opening::must_be_there);
  if (!job.output.empty()) need_own_file(job.output, {book.file()});
  const std::string text = book::export_pupil(book, pupil_code("CODE", job.code));
  if (job.output.empty()) {
    std::cout << text;
  } else {
    store::write_whole(job.output, text);
    std::cout << job.output
              << ": written; it holds all of the pupil, home and all: give it to nobody else\n";
  }
  return Exit::done;
}

Exit pupil_erase(const Arguments& words) {
  Options app{
      "Deletes a pupil: all rows, free pages and side files of the book, and the loop and card "
      "files that were "
      "written for the pupil. Copies you made yourself are yours to delete.",
      "loopwright pupil erase"};
  PupilJob job;
  app.add_option("CODE", job.code, "the pupil's code")->required();
  add_book(app, job.book);
  app.add_flag("--yes", job.yes, "really: nothing can bring it back");
  if (!parse(app, words)) return Exit::done;
  const std::string code = pupil_code("CODE", job.code);
  book::Book book = open_book(job.book, book::Opening::must_be_there);
  book::pupil_of(book, code);  // throws when there is none
  if (!job.yes) throw UsageError("erasing " + code + " can't be undone: say --yes if it is meant");
  bool all_gone = true;
  for (const book::WrittenFile& file : book::written_files(book, code))
    all_gone &= delete_file(file);
  book::erase_pupil(book, code);
  std::cout << code << " is erased; the streets driven count on without a name\n";
  return all_gone ? Exit::done : Exit::could_not;
}

}  // namespace loopwright::command
