#include "command/plan_job.hpp"

#include <utility>

#include "command/ground_marks.hpp"
#include "loopwright/book/drive.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::command {
namespace {

namespace fs = std::filesystem;

std::string absolute(const std::string& file) {
  return file.empty() ? file : fs::absolute(file).lexically_normal().string();
}

book::Plan plan_of(const PlanJob& job, const road::Roads& roads, const wish::Answer& answer,
                   const std::string& text) {
  const wish::Loop& loop = answer.loops.front();
  return {.start = answer.wish.start,
          .length_minutes = job.length.minutes,
          .area = absolute(job.area.area),
          .notes = absolute(job.area.notes),
          .terms = absolute(job.area.terms),
          .wish = job.ask.words.file_text(),
          .loop_file = text,
          .likely_s = loop.seconds.likely + loop.stop_seconds,
          .passes = book::passes_of(loop),
          .roads = book::roads_of(roads, loop),
          .limits = book::limits_of(loop),
          .to_check = {}};
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

FoundPlan find_plan(const book::Book& book, PlanJob& job) {
  FoundPlan found{std::make_unique<Ground>(job.area), {}, {}};
  settle(job.ask, *found.ground);
  wish::Wish& wish = job.ask.wish;
  wish.street_use = book::street_use(book, {wish.start.civil().date, job.code, job.number});
  keep_quiet(wish.street_use, found.ground->map());
  found.answer = answer_to(*found.ground, job.ask, job.area.area);
  found.text = file::write_answer(found.answer);
  found.claims = prove_text(*found.ground, found.text, job.code);
  return found;
}

int keep_plan(book::Book& book, const PlanJob& job, const FoundPlan& found) {
  const road::Roads& roads = found.ground->noted().roads;
  book::Plan plan = plan_of(job, roads, found.answer, found.text);
  plan.to_check = letters_for(ground_items_of(found), book::seen_facts(book), day_of(found));
  const auto streets = book::streets_of(roads, found.answer.wish, found.answer.loops.front());
  if (job.number == 0) return book::plan_lesson(book, job.code, plan, streets);
  book::replan_lesson(book, job.code, job.number, plan, streets);
  return job.number;
}

}  // namespace loopwright::command
