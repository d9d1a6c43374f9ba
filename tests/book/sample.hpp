// Pupils and lessons of the invented county, for tests of the book.
#pragma once

#include "book/empty_book.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/pupils.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright::test {

inline book::Pupil wren() {
  return {.code = "WREN",
          .scheme = "car-27",
          .added = {2026, 9, 1},
          .home = "4 Lantern Row",
          .test_day = Date{2027, 2, 3},
          .my_your = true,
          .ticks = {{book::Tick::licence_seen, {2026, 9, 1}}},
          .avoids = {road::Kind::level_crossing}};
}

inline book::Practice right_at_roundabout() {
  return {road::Kind::roundabout, road::Movement::right};
}

/// At three on the lesson day of the county.
inline book::Plan plan_of_two_passes() {
  return {.start = {1795878000, 0},
          .length_minutes = 60,
          .area = "/a/quillham.area",
          .notes = {},
          .terms = {},
          .wish = "home 54.2973,2.5988\n",
          .loop_file = R"({"format": "loopwright-loops"})",
          .likely_s = 2700.5,
          .passes = {{right_at_roundabout(), 3, "way/9100000000361"},
                     {{road::Kind::zebra}, 2, "node/5"}},
          .roads = {{"quiet", 5.5}, {"town", 39.5}},
          .limits = {{20, SpeedUnit::mph, 5.5}, {30, SpeedUnit::mph, 39.5}},
          .to_check = {{"A", {"limit along", "way/9100000000361", "30 mph, inferred"}}}};
}

inline book::Log log_of_two_passes() {
  book::Log log;
  log.minutes = 52;
  log.passes = plan_of_two_passes().passes;
  for (book::LessonPass& pass : log.passes) pass.driven = true, pass.level = 4;
  log.passes[0].level = 2;
  log.passes[0].help = book::Help::prompted;
  log.faults = {{"junction-observation", book::Grade::serious, 1, right_at_roundabout()}};
  log.interventions = {{book::Intervention::pedals, 2, right_at_roundabout(), "late for a lorry"}};
  log.observations = {{"roundabouts", {2026, 11, 28}, 2, false},
                      {"mirrors", {2026, 11, 28}, 4, true}};
  log.mock = book::MockTest{{2026, 11, 28}, {4, 1, 0}};
  log.conditions = {"dusk", "dull-wet", "heavy"};
  log.said = "the big ones still scare me";
  log.remark = "shorter brief next time";
  log.goals = {"roundabouts right without pedals"};
  log.private_minutes = 90;
  return log;
}

/// A book that is empty but for WREN: a new file in a folder of its own, or a school's on the server that the test
/// `book_server` names (LOOPWRIGHT_TEST_BOOK), so that each test of the book says the same of both stores. What is told
/// of the file itself is tagged [file] and not run there.
struct ScratchBook {
  ScratchBook() { add_pupil(book, wren()); }
  ScratchFolder folder;
  book::Book book = empty_book(folder / "b.book");
};

}  // namespace loopwright::test
