// Method: pupils are worked off one by one (book/night.hpp), each as `lesson next --area` would; several of these programs, on
// any machines with the same area file, share the work. A door that the map doesn't know makes a proposal without the map.
#include "command/school_propose.hpp"

#include <iostream>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "command/book_option.hpp"
#include "command/folded.hpp"
#include "command/next_words.hpp"
#include "command/school_book.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/night.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

struct NightWork {
  AreaTexts area;
  Date day;
};

book::NightProposal proposal_for(const book::Book& book, const std::string& code,
                                 const NightWork& work) {
  const book::Pupil pupil = book::pupil_of(book, code);
  const PupilRecord record = record_of(book, code);
  std::optional<WhatIsThere> there;
  std::string why_no_map;
  try {
    if (pupil.home.empty()) throw UsageError("the book has no home of " + code);
    there = there_on(pupil, record, work.area, work.day);
  } catch (const Error& error) {
    why_no_map = error.what();
  }
  const book::Proposal next =
      book::proposed({pupil, scheme_kept(pupil), record.lessons, work.day,
                      there ? &there->easy : nullptr, there ? &there->any_hard : nullptr});
  std::ostringstream says;
  print_proposal(says, code, next, true, "");
  if (!why_no_map.empty())
    print_folded(says, 2, "the map wasn't asked what there is at the door: " + why_no_map);
  std::string wish;
  try {
    wish = wish_file_of(next, pupil, record);
  } catch (const UsageError&) {
    // Its words can't be a wish, such as of a home that is none; what is proposed stands all the same.
  }
  return {book::mark_of(pupil, record.lessons), says.str(), wish};
}

}  // namespace

Exit school_propose(const Arguments& words) {
  Options app{
      "Proposes the next lesson of every pupil you see, as 'lesson next --area' does, and keeps it "
      "in the school's book, where 'lesson next' and the page show it while the record is what it "
      "was. Run it in the night, as the office, on as many computers and as often on each as it "
      "has "
      "processors: they share the pupils, and when one is switched off the others take its own.",
      "loopwright school propose"};
  std::string address, today;
  NightWork work;
  app.add_option("AREA", work.area.area, "area file, the same one on each computer")->required();
  app.add_option("--today", today, "day of the lessons, 2026-11-28 (default: today)");
  add_book(app, address);
  if (!parse(app, words)) return Exit::done;
  work.day = today_of(today);
  const book::Night night{work.day, store::open_area(work.area.area).roads().info().id};
  const book::Book book = open_book(school_address(address), book::Opening::must_be_there);
  const int done = book::work_off(book.file().string(), night, [&](const std::string& code) {
    return proposal_for(book, code, work);
  });
  std::cout << "proposed for " << done << (done == 1 ? " pupil" : " pupils") << ", for "
            << road::day_text(work.day) << "; none is left\n";
  return Exit::done;
}

}  // namespace loopwright::command
