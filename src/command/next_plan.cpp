// Method:
//   1. The map is asked what a lesson so long can have from the door: only that is proposed.
//   2. The proposal is planned. A topic that no drive passes even once, be it for its minutes, its hours, the learner's
//      level or streets that are worn out, gives way, and the rest is proposed anew.
//   3. After six tries the one is kept that passes its first topic, then most topics; of several the earliest, for it
//      weighed most.
#include "command/next_plan.hpp"

#include <algorithm>
#include <iostream>
#include <optional>
#include <sstream>
#include <utility>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/folded.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/places.hpp"
#include "command/there.hpp"
#include "command/wish_of_words.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/lesson_times.hpp"
#include "loopwright/book/progress.hpp"

namespace loopwright::command {
namespace {

constexpr int most_tries = 6;

void need_no_topic(const WishWords& words) {
  for (const char* said : {"want", "part", "through"})
    if (!words.all(said).empty())
      throw UsageError("--next proposes what to practise; leave it out, or --" + std::string(said));
}

std::optional<WrittenTime> start_said(const WishWords& words) {
  const Said* start = words.one("start");
  if (start == nullptr) return std::nullopt;
  return time_of("--start", start->text);
}

/// One way of what there is to drive: half of the minutes for the wheels.
int minutes_there(const NextAsk& ask) {
  constexpr int ways = 2;
  const Said* said = ask.words.one("minutes");
  if (said != nullptr) return whole_number("--minutes", said->text, minutes_of_drive) / ways;
  return book::lesson_times(length_said(ask.length), book::Topic::fresh).wheels / ways;
}

/// Where the learner begins: where the instructor drives to first, else the door.
Point begin_of(const NextAsk& ask, const road::Roads& roads) {
  std::ostringstream nobody;  // the search tells what the words were taken for
  Places places(roads, nobody);
  if (const Said* out = ask.words.one("drive-out"))
    return places.find(read_place("--drive-out", out->text));
  const Said* home = ask.words.one("home");
  return places.find(read_place("--home", home_said(home == nullptr ? "" : home->text, ask.pupil)));
}

/// Such a lesson has no stretch on which the learner finds the way (lesson_words.cpp).
bool is_in_sections(const WishWords& words) {
  return words.one("easy-first") != nullptr || words.one("drive-out") != nullptr ||
         words.one("drive-back") != nullptr;
}

PlanJob job_of(const NextAsk& ask, const PupilRecord& record, const book::Proposal& proposal) {
  WishWords words = ask.words;
  for (const book::WishWord& word : book::wish_words(proposal))
    if (word.name != "independent" || !is_in_sections(words))
      words.fill(word.name, word.value, "the proposal");
  const LessonLength length = fill_from_book(words, ask.pupil, record, ask.length);
  PlanJob job{ask.pupil.code, ask.area, length, ask_of(std::move(words))};
  job.ask.effort = ask.effort;
  if (job.ask.start)
    job.number = planned_then(record.lessons, start_there(job.ask.start, job.area.area));
  return job;
}

/// How often the topic is passed on the loop.
int passes_of_topic(const wish::Loop& loop, const book::ProposedTopic& topic) {
  for (const wish::Met& met : loop.met)
    if (met.want.kind == topic.what.kind && met.want.movement == topic.what.movement)
      return met.got;
  return 0;
}

/// Those that aren't passed at all; without a loop the last, for it is the least urgent.
std::vector<book::Practice> not_passed(const NextPlan& plan) {
  const auto& topics = plan.proposal.topics;
  if (plan.found.answer.loops.empty()) return {topics.back().what};
  std::vector<book::Practice> none;
  for (const book::ProposedTopic& topic : topics)
    if (passes_of_topic(plan.found.answer.loops.front(), topic) == 0) none.push_back(topic.what);
  return none;
}

std::string why_passed_over(const NextPlan& plan, const book::Practice& what) {
  const auto& shortfall = plan.found.answer.shortfall;
  std::string why = "the search found no place for it in this lesson";
  if (!shortfall) return words_of(what) + ": " + why;
  for (const wish::Missing& missing : shortfall->missing)
    if (missing.want.kind == what.kind && missing.want.movement == what.movement &&
        !missing.why.empty())
      return words_of(what) + ": " + missing.why;
  if (!shortfall->why.empty()) why += ": " + shortfall->why;
  return words_of(what) + ": " + why;
}

void take_out(std::set<book::Practice>& there, const book::Practice& what) {
  if (what.movement != road::Movement::none) {
    there.erase(what);
    return;
  }
  std::erase_if(there, [&](const book::Practice& one) { return one.kind == what.kind; });
}

NextPlan tried(const book::Book& book, const NextAsk& ask, const PupilRecord& record,
               book::Proposal proposal) {
  PlanJob job = job_of(ask, record, proposal);
  std::ostringstream told;
  FoundPlan found = find_plan(book, job, told);
  return {std::move(proposal), std::move(job), std::move(found), {}, told.str()};
}

bool is_better(const NextPlan& plan, const std::optional<NextPlan>& than) {
  if (!than) return true;
  if (than->found.answer.loops.empty() || plan.found.answer.loops.empty())
    return than->found.answer.loops.empty() && !plan.found.answer.loops.empty();
  const auto lacks = [](const NextPlan& one) {
    const auto none = not_passed(one);
    const bool lacks_first = !none.empty() && none.front() == one.proposal.topics.front().what;
    return std::pair(lacks_first, none.size());
  };
  return lacks(plan) < lacks(*than);
}

}  // namespace

Date day_meant(const WishWords& words) {
  const auto start = start_said(words);
  return start ? start->civil.date : today_of("");
}

WhatIsThere practices_for(const NextAsk& ask, const PupilRecord& record) {
  Ground ground(ask.area);
  wish::Wish wish;
  wish.home = begin_of(ask, ground.map());
  wish.start = moment(start_said(ask.words), ground.info());
  wish.terms = ground.terms();
  const Said* level = ask.words.one("level");
  wish.level = level != nullptr
                   ? whole_number("--level", level->text, {1, 5})
                   : book::wish_level(book::level_now(scheme_kept(ask.pupil), record.lessons));
  wish.level_given = true;  // over roads that aren't too hard
  for (const Said& said : ask.words.all("avoid"))
    wish.avoids.push_back(said.read(wish::read_avoid));
  for (const road::Kind kind : ask.pupil.avoids) wish.avoids.push_back({kind});
  WhatIsThere there{practices_there(ground, wish, minutes_there(ask)), {}};
  wish.level_given = false;
  there.any_hard = practices_there(ground, wish, minutes_there(ask));
  // Without any the search says what of the roads round the door is too hard.
  if (there.easy.empty()) there.easy = there.any_hard;
  return there;
}

NextPlan plan_next(const book::Book& book, const NextAsk& ask) {
  need_no_topic(ask.words);
  const PupilRecord record = record_of(book, ask.pupil.code);
  auto [there, any_hard] = practices_for(ask, record);
  const book::Record of{
      ask.pupil, scheme_kept(ask.pupil), record.lessons, day_meant(ask.words), &there, &any_hard};
  std::optional<NextPlan> best;
  std::vector<std::string> passed_over;
  for (int n = 0; n < most_tries; ++n) {
    book::Proposal proposal = book::proposed(of);
    if (proposal.topics.empty()) break;
    NextPlan plan = tried(book, ask, record, std::move(proposal));
    plan.passed_over = passed_over;
    const std::vector<book::Practice> none = not_passed(plan);
    for (const book::Practice& what : none) {
      passed_over.push_back(why_passed_over(plan, what));
      take_out(there, what);
    }
    if (is_better(plan, best)) best = std::move(plan);
    if (none.empty()) break;
  }
  if (!best) throw UsageError("--next: nothing that a map can serve is due; say --want");
  return std::move(*best);
}

void print_topics(std::ostream& out, const book::Proposal& proposal) {
  for (const book::ProposedTopic& topic : proposal.topics)
    print_folded(out, 2,
                 words_of(topic.what) + ", " + std::to_string(topic.passes) + ": " + topic.why);
  if (proposal.independent_minutes > 0 && !proposal.topics.empty())
    print_folded(out, 2,
                 "finding the way, " + std::to_string(proposal.independent_minutes) +
                     " min: from level " + std::to_string(book::independent_level()) +
                     " on a part of the drive is left to the learner");
}

void tell_proposal(std::ostream& out, const NextPlan& next) {
  print_folded(out, 0, "goal: " + next.proposal.goal);
  print_topics(out, next.proposal);
  for (const std::string& one : next.passed_over) print_folded(out, 2, "passed over: " + one);
  out << next.told;
}

}  // namespace loopwright::command
