// Method:
//   1. The heaviest candidate is the lesson's topic; nothing new shortly before a test.
//   2. A second comes from another skill, weighs enough, and isn't new when the first is: a manoeuvre that isn't reached
//      yet, when the last lesson had none (common practice: one a lesson), else the next heaviest.
//   3. What no wish can ask for is a hint: light and weather not met, a mock test, skills without a kind that are stale.
#include "loopwright/book/proposal.hpp"

#include <algorithm>
#include <cassert>
#include <initializer_list>
#include <span>

#include "book/candidates.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::book {
namespace {

constexpr int most_ahead = 3, reached_level = 4;
constexpr int seconds_a_day = 24 * 3600;

int days_between(Date from, Date to) {
  return static_cast<int>(days_since_epoch(to) - days_since_epoch(from));
}

std::string count_words(int count, const std::string& one) {
  constexpr int most_in_words = 12;
  return (count > most_in_words ? std::to_string(count) : number_word(count)) + " " + one +
         (count == 1          ? ""
          : one.back() == 's' ? "es"
                              : "s");
}

/// "18 days ago", and of a lesson that was logged before its day "in five days".
std::string days_ago(int days) {
  if (days == 0) return "today";
  return days > 0 ? count_words(days, "day") + " ago" : "in " + count_words(-days, "day");
}

/// "level 2 (helped), three passes on the last day, 18 days ago; you stepped in two times; before it comes emerge at 4"
std::string why_of(const Record& record, const Candidate& of) {
  std::string why;
  if (of.level == 0) {
    why = "not begun yet";
  } else {
    why = "level " + std::to_string(of.level) + " (" +
          std::string(record.scheme.level_name(of.level)) + ")";
    if (of.passes > 0)
      why += ", " + count_words(of.last_passes, "pass") + " on its last day, " +
             days_ago(of.days_since);
    if (of.days_since > of.skill->stale_after_days)
      why += ", longer than the " + std::to_string(of.skill->stale_after_days) + " days it keeps";
    if (of.stepped_in > 0) why += "; you stepped in " + count_words(of.stepped_in, "time");
  }
  if (!of.reached.empty()) why += "; what comes before it: " + listed(of.reached);
  return why;
}

int passes_for(const Candidate& of) {
  if (road::form_of(of.what.kind) == road::KindForm::manoeuvre) {
    if (of.level >= reached_level) return 1;
    const double minutes = road::kind_row(of.what.kind).minutes;
    return std::max(static_cast<int>(proposal_number("manoeuvre minutes") / minutes), 1);
  }
  const std::string sort =
      road::form_of(of.what.kind) == road::KindForm::junction ? "passes to " : "runs to ";
  return static_cast<int>(proposal_number(sort + (of.level < reached_level ? "learn" : "keep")));
}

ProposedTopic topic_of(const Record& record, const Candidate& of) {
  return {of.what, passes_for(of), of.level == 0, of.level, why_of(record, of)};
}

std::string goal_of(const Record& record, const ProposedTopic& topic) {
  const auto named = [&](int level) {
    return std::string(record.scheme.level_name(level)) + " (" + std::to_string(level) + ")";
  };
  if (topic.fresh) return words_of(topic.what) + ": begin it";
  if (topic.level == highest_level) return words_of(topic.what) + ": keep it";
  return words_of(topic.what) + ": from " + named(topic.level) + " to " + named(topic.level + 1);
}

std::optional<int> days_to_test(const Record& record) {
  if (!record.pupil.test_day || *record.pupil.test_day < record.day) return std::nullopt;
  return days_between(record.day, *record.pupil.test_day);
}

bool is_manoeuvre(const Practice& what) {
  return road::form_of(what.kind) == road::KindForm::manoeuvre;
}

bool had_manoeuvre(const Lesson* lesson) {
  return lesson != nullptr &&
         std::any_of(lesson->log.passes.begin(), lesson->log.passes.end(),
                     [](const LessonPass& pass) { return pass.driven && is_manoeuvre(pass.what); });
}

/// Beside the first of them, which must be there; null for none.
const Candidate* second_of(const Record& record, const std::vector<Candidate>& all) {
  const Candidate& first = all.front();
  const bool wants_manoeuvre =
      !is_manoeuvre(first.what) && !had_manoeuvre(last_driven(record.lessons));
  const Candidate* heaviest = nullptr;
  for (const Candidate& second : all) {
    if (second.skill == first.skill || (first.level == 0 && second.level == 0)) continue;
    if (wants_manoeuvre && is_manoeuvre(second.what) && second.skill_level < 4) return &second;
    if (heaviest == nullptr && second.weight >= proposal_number("second share") * first.weight)
      heaviest = &second;
  }
  return heaviest;
}

void choose_topics(const Record& record, Proposal& proposal) {
  std::vector<Candidate> all = candidates(record, proposal.level);
  const auto to_test = days_to_test(record);
  if (to_test && *to_test <= proposal_number("no new days"))
    std::erase_if(all, [](const Candidate& one) { return one.level == 0; });
  if (all.empty()) return;
  const Candidate& first = all.front();
  proposal.topics.push_back(topic_of(record, first));
  if (const Candidate* second = second_of(record, all))
    proposal.topics.push_back(topic_of(record, *second));
}

void hint_exposure(const Record& record, Proposal& proposal) {
  const auto met = [&](std::string Conditions::*what,
                       std::initializer_list<std::string_view> codes) {
    return std::any_of(record.lessons.begin(), record.lessons.end(), [&](const Lesson& lesson) {
      return lesson.state == LessonState::driven &&
             std::find(codes.begin(), codes.end(), lesson.log.conditions.*what) != codes.end();
    });
  };
  constexpr int prompted = 3;  // before that one doesn't look for it
  if (proposal.level.value_or(0) < prompted) return;
  std::vector<std::string> missing;
  if (!met(&Conditions::light, {"dark"})) missing.emplace_back("the dark (a start after sunset)");
  if (!met(&Conditions::weather, {"raining", "showers", "bright-wet", "dull-wet"}))
    missing.emplace_back("a wet road");
  if (!met(&Conditions::traffic, {"heavy"})) missing.emplace_back("heavy traffic");
  if (!missing.empty()) proposal.hints.push_back("not met yet: " + listed(missing));
}

void hint_test(const Record& record, Proposal& proposal) {
  const auto to_test = days_to_test(record);
  if (!to_test) return;
  std::string hint = "the test is in " + count_words(*to_test, "day");
  if (*to_test <= proposal_number("no new days")) hint += ": nothing new is proposed";
  std::optional<Date> last_mock;
  for (const Lesson& lesson : record.lessons)
    if (lesson.log.mock && (!last_mock || *last_mock < lesson.log.mock->day))
      last_mock = lesson.log.mock->day;
  const bool is_due =
      !last_mock || days_between(*last_mock, record.day) > proposal_number("mock again days");
  proposal.mock_due = *to_test <= proposal_number("mock days") && is_due;
  if (proposal.mock_due)
    hint += last_mock ? "; the last mock test was " + days_ago(days_between(*last_mock, record.day))
                      : "; no mock test yet";
  proposal.hints.push_back(hint);
}

/// Skills without a kind of practice: the instructor weaves them in.
void hint_skills(const Record& record, Proposal& proposal) {
  std::vector<std::string> due;
  for (const SkillLine& line : skill_lines(record.scheme, record.lessons)) {
    if (!line.skill->kinds.empty() || line.level() == 0) continue;
    const int days = days_between(line.seen.back().day, record.day);
    if (line.level() < 4 || days > line.skill->stale_after_days)
      due.push_back(std::string(line.skill->name) + " (" + std::to_string(line.level()) + ", " +
                    count_words(days, "day") + " ago)");
  }
  if (!due.empty()) proposal.hints.push_back("to weave in, no map can serve it: " + listed(due));
}

/// Skills of which nothing can be had from the door, by name.
void hint_not_there(const Record& record, Proposal& proposal) {
  if (record.there == nullptr) return;
  std::vector<std::string> missing, too_hard;
  const auto has = [](const std::set<Practice>* there, std::span<const road::Kind> kinds) {
    return there != nullptr && std::any_of(kinds.begin(), kinds.end(), [&](road::Kind kind) {
             return there->contains({kind, road::Movement::none});
           });
  };
  for (const SkillLine& line : skill_lines(record.scheme, record.lessons)) {
    const auto& kinds = line.skill->kinds;
    const bool matters =
        !kinds.empty() && line.level() < 4 && kinds.front() != road::Kind::motorway;
    if (!matters || has(record.there, kinds)) continue;
    (has(record.there_by_name, kinds) ? too_hard : missing).emplace_back(line.skill->name);
  }
  if (!too_hard.empty())
    proposal.hints.push_back(
        "there from this door, but harder than roads of this level: " + listed(too_hard) +
        "; driven when you ask for it by name, such as --want country-road");
  if (!missing.empty())
    proposal.hints.push_back(
        "not to be had from this door in a lesson so long: " + listed(missing) +
        "; a longer one, or one begun elsewhere (--drive-out), may have it");
}

/// The record as it would be, had the lesson gone a level up.
Lesson imagined(const Record& record, const Proposal& proposal) {
  Lesson lesson;
  lesson.state = LessonState::driven;
  lesson.plan.start = {days_since_epoch(record.day) * seconds_a_day, 0};
  const int well = static_cast<int>(proposal_number("went well"));
  for (const ProposedTopic& topic : proposal.topics)
    for (int n = 0; n < topic.passes; ++n)
      lesson.log.passes.push_back(
          {topic.what, 1, {}, true, std::clamp(topic.level + 1, well, highest_level)});
  lesson.log.observations = observed(record.scheme, record.day, lesson.log.passes, {});
  return lesson;
}

}  // namespace

int independent_level() {
  return static_cast<int>(proposal_number("independent level"));
}

Proposal proposed(const Record& record) {
  Proposal proposal;
  proposal.level = level_now(record.scheme, record.lessons);
  choose_topics(record, proposal);
  if (!proposal.topics.empty()) proposal.goal = goal_of(record, proposal.topics.front());
  if (proposal.level.value_or(0) >= independent_level())
    proposal.independent_minutes = static_cast<int>(proposal_number("independent minutes"));
  hint_test(record, proposal);
  hint_exposure(record, proposal);
  hint_skills(record, proposal);
  hint_not_there(record, proposal);
  return proposal;
}

std::vector<Proposal> proposed_ahead(const Record& record, int how_many) {
  assert(how_many >= 1 && how_many <= most_ahead);
  std::vector<Lesson> lessons(record.lessons.begin(), record.lessons.end());
  std::vector<Proposal> all;
  Date day = record.day;
  for (int n = 0; n < how_many; ++n) {
    const Record then{record.pupil, record.scheme, lessons,
                      day,          record.there,  record.there_by_name};
    all.push_back(proposed(then));
    lessons.push_back(imagined(then, all.back()));
    day = date_from_days(days_since_epoch(day) + static_cast<int>(proposal_number("days between")));
  }
  return all;
}

int wish_level(const std::optional<int>& level) {
  return std::max(level.value_or(lowest_level),
                  static_cast<int>(proposal_number("least wish level")));
}

std::vector<WishWord> wish_words(const Proposal& proposal) {
  std::vector<WishWord> words;
  for (const ProposedTopic& topic : proposal.topics) {
    std::string want(road::name(topic.what.kind));
    if (topic.what.movement != road::Movement::none)
      want.append(":").append(road::name(topic.what.movement));
    words.push_back({"want", want + "=" + std::to_string(topic.passes)});
    if (topic.fresh && road::form_of(topic.what.kind) != road::KindForm::manoeuvre)
      words.push_back({"new", std::string(road::name(topic.what.kind))});
  }
  words.push_back({"level", std::to_string(wish_level(proposal.level))});
  if (proposal.independent_minutes > 0)
    words.push_back({"independent", std::to_string(proposal.independent_minutes)});
  return words;
}

}  // namespace loopwright::book
