// Method: the area is opened, the page told where this program lies, and its address printed at once; then it answers
// until it is ended.
#include "loopwright/page/page.hpp"

#include <filesystem>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/ground.hpp"

namespace loopwright::command {
namespace fs = std::filesystem;

Exit page(const Arguments& words) {
  Options app{"Opens the area and its lessons as a page in the browser of this computer.",
              "loopwright page"};
  AreaTexts texts;
  std::string port = "0", book_file;
  add_area(app, texts);
  app.add_option("--book", book_file, "the book of your pupils, to plan and log for them");
  app.add_option("--port", port,
                 "port of this computer to answer on, 1024 to 65535 (default: a free one)");
  if (!parse(app, words)) return Exit::done;
  const int wanted = port == "0" ? 0 : whole_number("--port", port, {1024, 65535});
  AreaTexts now = texts;  // a notes file that isn't there yet is made by the first note
  if (!texts.notes.empty() && !fs::exists(texts.notes)) {
    need_folder_of(texts.notes);
    now.notes.clear();
  }
  const Ground ground(now);
  if (!book_file.empty()) open_book(book_file, book::Opening::must_be_there);
  page::Page page(ground.map(), {.program = fs::read_symlink("/proc/self/exe"),
                                 .area = absolute_path(texts.area),
                                 .notes = absolute_path(texts.notes),
                                 .terms = absolute_path(texts.terms),
                                 .book = absolute_path(book_file),
                                 .school_terms = ground.terms(),
                                 .scratch = fs::temp_directory_path(),
                                 .port = wanted});
  std::cout << page.address()
            << "  open it in a browser of this computer; it is good once. Ctrl-C ends the page\n"
            << std::flush;
  page.run();
  return Exit::done;
}

}  // namespace loopwright::command
