// Method: the area is opened, or its place made ready when there is none yet; the page is told where this program lies,
// and its address printed at once; then it answers until it is ended.
#include "loopwright/page/page.hpp"

#include <filesystem>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/data_folder.hpp"
#include "command/desk_area.hpp"
#include "command/files.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::command {
namespace {

namespace fs = std::filesystem;

struct PageTexts {
  AreaTexts area;
  std::string port = "0", book;
};

bool parse_page(const Arguments& words, PageTexts& texts) {
  Options app{"Opens the area and its lessons as a page in the browser of this computer.",
              "loopwright page"};
  app.add_option("AREA", texts.area.area,
                 "area file (default: loopwright/roads.area in your data folder, with "
                 "your notes and your book there); where there is "
                 "none yet, the page takes an extract and builds it there");
  app.add_option("--notes", texts.area.notes,
                 "your notes on its roads (see 'loopwright note --help')");
  add_terms(app, texts.area.terms);
  app.add_option("--book", texts.book,
                 "the book of your pupils, to plan and log for them; made when it isn't there");
  app.add_option("--port", texts.port,
                 "port of this computer to answer on, 1024 to 65535 (default: a free one)");
  return parse(app, words);
}

/// Without AREA all of it is the person's own, in their data folder: the area, the notes, the book (made when it isn't there).
void take_own(PageTexts& texts) {
  const fs::path folder = data_folder(Folder::made);
  if (folder.empty())
    throw UsageError("neither XDG_DATA_HOME nor HOME says where your area is: name it");
  texts.area.area = (folder / "roads.area").string();
  need_folder_of(texts.area.area);
  if (texts.area.notes.empty()) texts.area.notes = (folder / "notes.geojson").string();
  if (!texts.book.empty()) return;
  texts.book = (folder / "pupils.book").string();
  open_book(texts.book, book::Opening::may_make);
}

}  // namespace

Exit page(const Arguments& words) {
  PageTexts texts;
  if (!parse_page(words, texts)) return Exit::done;
  const int wanted = texts.port == "0" ? 0 : whole_number("--port", texts.port, {1024, 65535});
  AreaTexts& area = texts.area;
  if (area.area.empty()) take_own(texts);
  need_folder_of(area.area);
  area.area = absolute_path(area.area).string();
  // A notes file that isn't there yet is made by the first note.
  if (!area.notes.empty()) need_folder_of(area.notes);
  if (!texts.book.empty()) open_book(texts.book, book::Opening::may_make);
  page::Page page(
      {.program = fs::read_symlink("/proc/self/exe"),
       .area = area.area,
       .notes = absolute_path(area.notes),
       .terms = absolute_path(area.terms),
       .book = book::is_address(texts.book) ? fs::path(texts.book) : absolute_path(texts.book),
       .school_terms = terms_in(area.terms),
       .scratch = fs::temp_directory_path(),
       .port = wanted,
       .open = [area] { return open_for_desk(area); }});
  std::cout << page.address()
            << "  open it in a browser of this computer; it is good once. Ctrl-C ends the page\n"
            << std::flush;
  page.run();
  return Exit::done;
}

}  // namespace loopwright::command
