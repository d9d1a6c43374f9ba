// Method: the first word says what to do; the database says who may.
#include <array>
#include <iostream>

#include "command/book_option.hpp"
#include "command/deeds.hpp"
#include "command/folded.hpp"
#include "command/school_book.hpp"
#include "command/school_copy.hpp"
#include "command/school_propose.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/move_book.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::command {
namespace {

Exit prepare(const Arguments& words) {
  Options app{
      "Makes a school's book in a database of its own, or brings it up to date while members go on "
      "working. For the database's owner; nothing that is in it is lost.",
      "loopwright school prepare"};
  std::string address;
  add_book(app, address);
  if (!parse(app, words)) return Exit::done;
  const bool made = book::prepare_school(school_address(address));
  std::cout << address
            << (made ? ": ready; 'loopwright school admit LOGIN' admits instructors\n"
                     : ": is up to date\n");
  for (const std::string& odd : book::odd_rows_for_all(address))
    print_folded(
        std::cout, 0,
        "written by no Loopwright, passed over by every plan, and yours to delete: " + odd);
  return Exit::done;
}

Exit admit(const Arguments& words) {
  Options app{
      "Admits a login of the server to the school: as an instructor, who sees the pupils they "
      "hold, "
      "or as the office, which sees all. For the database's owner.",
      "loopwright school admit"};
  std::string login, address;
  bool office = false, same_person = false;
  app.add_option("LOGIN", login, "a login that whoever runs the server has made")->required();
  app.add_flag("--office", office, "as the office");
  app.add_flag("--same-person", same_person,
               "pupils that a login of this name holds are this instructor's own");
  add_book(app, address);
  if (!parse(app, words)) return Exit::done;
  book::admit(school_address(address), login,
              office ? book::Membership::office : book::Membership::instructor,
              same_person ? book::Before::same_person : book::Before::nobody);
  std::cout << login << ": admitted as " << (office ? "the office\n" : "an instructor\n");
  return Exit::done;
}

Exit leave(const Arguments& words) {
  Options app{
      "Takes a login out of the school: it sees nothing of its book any more, at once. Its pupils "
      "stay, and the office hands them over. For the database's owner.",
      "loopwright school leave"};
  std::string login, address;
  app.add_option("LOGIN", login, "a login that is admitted")->required();
  add_book(app, address);
  if (!parse(app, words)) return Exit::done;
  const int pupils = book::leave(school_address(address), login);
  print_folded(
      std::cout, 0,
      login + ": is no member of the school any more" +
          (pupils == 0
               ? ""
               : "; " + std::to_string(pupils) + (pupils == 1 ? " pupil is" : " pupils are") +
                     " still held by it: the office hands them over ('loopwright school "
                     "hand CODE --to LOGIN')") +
          "; day's copies that it took along are its own to delete");
  return Exit::done;
}

Exit hand(const Arguments& words) {
  Options app{
      "Hands a pupil with all lessons over to another instructor of the school. By who holds the "
      "pupil, or the office; who held it sees it no more.",
      "loopwright school hand"};
  std::string code, login, address;
  app.add_option("CODE", code, "the pupil's code")->required();
  app.add_option("--to", login, "the other instructor's login")->required();
  add_book(app, address);
  if (!parse(app, words)) return Exit::done;
  code = pupil_code("CODE", code);
  book::Book book = open_book(school_address(address), book::Opening::must_be_there);
  book::hand_over(book, code, login);
  print_folded(std::cout, 0,
               code + " is handed over to " + login +
                   "; what was written of the pupil stays on the computer it was written on, and "
                   "the book knows of it no more: delete it there");
  return Exit::done;
}

Exit move(const Arguments& words) {
  Options app{
      "Copies all pupils that you see in one book into another, in one step, and compares what was "
      "written row by row. From a file to a school they are then held by you; from a school to a "
      "file they become your own book. The first book stays as it is: delete it yourself when all "
      "is well.",
      "loopwright school move"};
  std::string from, to;
  app.add_option("FROM", from, "a book: a file or postgresql://…")->required();
  app.add_option("TO", to, "a book: a file or postgresql://…")->required();
  if (!parse(app, words)) return Exit::done;
  const book::Book source = open_book(from, book::Opening::must_be_there);
  NewBook made(to);
  book::Book target = open_book(to, book::Opening::may_make);
  const book::Moved moved = book::move_book(source, target);
  made.keep();
  std::cout << to << ": " << moved.pupils << (moved.pupils == 1 ? " pupil, " : " pupils, ")
            << moved.rows << " rows, each compared with " << from << ": the same\n";
  return Exit::done;
}

constexpr std::array school_deeds{
    Deed{"prepare", "make a school's book on a server, or bring it up to date", prepare},
    Deed{"admit", "admit an instructor or the office", admit},
    Deed{"leave", "take a member out of the school", leave},
    Deed{"hand", "hand a pupil over to another instructor", hand},
    Deed{"move", "copy your pupils from a book into another", move},
    Deed{"take", "take a copy along for a day without a network", school_take},
    Deed{"bring", "hand in what was logged in a day's copy", school_bring},
    Deed{"propose", "propose the next lessons of all pupils, in the night", school_propose},
};

}  // namespace

Exit school(const Arguments& words) {
  return run_deed("school", "Keeps one book for many instructors, on a PostgreSQL server.",
                  school_deeds, words);
}

}  // namespace loopwright::command
