#include "command/plan_job.hpp"

#include <iostream>
#include <utility>

#include "command/files.hpp"
#include "command/ground_marks.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/day_copy.hpp"
#include "loopwright/book/drive.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/kept_drive.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/resolve.hpp"

namespace loopwright::command {
namespace {

book::Plan bare_plan(const PlanJob& job, const road::Roads& roads, const wish::Answer& answer,
                     const std::string& text) {
  const wish::Loop& loop = answer.loops.front();
  return {.start = answer.wish.start,
          .length_minutes = job.length.minutes,
          .area = absolute_path(job.area.area).string(),
          .notes = absolute_path(job.area.notes).string(),
          .terms = absolute_path(job.area.terms).string(),
          .wish = std::string(job.mock ? book::mock_plan_line : "") + job.ask.words.file_text(),
          .loop_file = text,
          .likely_s = loop.seconds.likely + loop.stop_seconds,
          .passes = book::passes_of(loop),
          .roads = book::roads_of(roads, loop),
          .limits = book::limits_of(loop),
          .to_check = {}};
}

/// Its places, its start, and what other lessons drive of quiet streets.
void settle_for(const book::Book& book, PlanJob& job, const Ground& ground, std::ostream& out) {
  if (std::exchange(job.settled, true)) return;
  if (job.number != 0) job.mark = book::mark_of(book::lesson_of(book, job.code, job.number));
  settle(job.ask, ground, out);
  wish::Wish& wish = job.ask.wish;
  wish.street_use = book::street_use(book, {wish.start.civil().date, job.code, job.number});
  keep_quiet(wish.street_use, ground.map());
}

Date day_of(const FoundPlan& found) {
  return found.answer.wish.start.civil().date;
}

}  // namespace

std::vector<card::GroundItem> ground_items_of(const FoundPlan& found) {
  const hours::Setting setting = found.ground->setting_of(found.answer.wish);
  return card::to_check(
      {found.ground->noted().roads, found.answer, found.answer.loops.front(), setting});
}

void tell_look_again(std::ostream& out, const book::Book& book, const FoundPlan& found) {
  tell_look_again(out, ground_items_of(found), book::seen_facts(book), day_of(found));
}

FoundPlan find_plan(const book::Book& book, PlanJob& job, std::ostream& out) {
  book::need_no_day_copy(book);  // before minutes are spent on the search
  FoundPlan found{std::make_unique<Ground>(job.area), {}, {}};
  settle_for(book, job, *found.ground, out);
  found.answer = answer_to(*found.ground, {job.ask, job.area.area}, out);
  found.text = file::write_answer(found.answer);
  found.claims = prove_text(*found.ground, found.text, job.code);
  return found;
}

KeptPlan keep_drive(const book::Book& book, PlanJob& job, const std::string& loop_file) {
  FoundPlan found{std::make_unique<Ground>(job.area), {}, {}};
  Ground& ground = *found.ground;
  wish::Answer kept = file::read_answer(loop_file, job.code);
  settle_for(book, job, ground, std::cout);
  if (kept.area.id != ground.info().id || kept.notes != ground.notes_name())
    return {std::nullopt, "the area or the notes are others than it was planned with"};
  if (kept.loops.size() != 1 || kept.shortfall)
    return {std::nullopt, kept.shortfall
                              ? "it hadn't all that is asked"
                              : "it was planned with variants, which hang on each other"};
  const hours::Setting setting = ground.setting_of(job.ask.wish);
  const road::Roads& roads = ground.for_lesson(wish::lesson_time(job.ask.wish, setting));
  try {
    wish::resolve(roads, kept.loops.front());
  } catch (const InputError&) {
    return {std::nullopt, "your notes shut a road of it that day"};
  }
  find::KeptDrive now = find::kept_drive(roads, job.ask.wish, kept.loops.front(), setting);
  if (!now.loop) return {std::nullopt, now.why_not};
  found.answer.area = kept.area;
  found.answer.notes = kept.notes;
  found.answer.wish = job.ask.wish;
  found.answer.loops.push_back(std::move(*now.loop));
  found.text = file::write_answer(found.answer);
  const TextProof proof = proof_of_text(ground, found.text, job.code);
  if (proof.false_claim) return {std::nullopt, *proof.false_claim};
  found.claims = proof.claims;
  return {std::move(found), {}};
}

book::PlanWithStreets plan_of(const book::Book& book, const PlanJob& job, const FoundPlan& found) {
  const road::Roads& roads = found.ground->noted().roads;
  book::Plan plan = bare_plan(job, roads, found.answer, found.text);
  plan.to_check = letters_for(ground_items_of(found), book::seen_facts(book), day_of(found));
  return {std::move(plan), book::streets_of(roads, found.answer.wish, found.answer.loops.front())};
}

int keep_plan(book::Book& book, const PlanJob& job, const FoundPlan& found) {
  const book::PlanWithStreets all = plan_of(book, job, found);
  if (job.number == 0) return book::plan_lesson(book, job.code, all.plan, all.streets);
  book::replan_lesson(book, {job.code, job.number, job.mark}, all);
  return job.number;
}

}  // namespace loopwright::command
