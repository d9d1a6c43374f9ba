// Method:
//   1. Of each practice that was driven: its level, its last day, and whether the instructor stepped in at it then.
//   2. What is kept off: every kind of road and junction, whole or by movement, that isn't among those left.
#include "loopwright/book/at_home.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

int number_in(const std::map<std::string_view, double>& numbers, std::string_view name) {
  const auto found = numbers.find(name);
  if (found == numbers.end())
    throw std::logic_error("at_home.txt: no number '" + std::string(name) + "'");
  return static_cast<int>(found->second);
}

Date day_cell(const TableRow& row, std::size_t column) {
  if (const auto day = read_date(row.at(column))) return *day;
  throw std::logic_error("at_home.txt: '" + std::string(row.at(column)) + "' is no day");
}

bool names_region(std::string_view cell, std::string_view region) {
  const auto all = split(cell, ' ');
  return std::find(all.begin(), all.end(), region) != all.end();
}

/// What was said of a general form, or without a movement, is of its special forms and movements too.
bool is_said_of(const Practice& said, const Practice& what) {
  return road::meets(what.kind, said.kind) &&
         (said.movement == Movement::none || said.movement == what.movement);
}

const Lesson* last_lesson_with(const Practice& what, std::span<const Lesson> lessons) {
  const Lesson* last = nullptr;
  for (const Lesson& lesson : lessons) {
    const auto& passes = lesson.log.passes;
    const bool has = lesson.state == LessonState::driven &&
                     std::any_of(passes.begin(), passes.end(), [&](const LessonPass& pass) {
                       return pass.driven && pass.what == what;
                     });
    if (has && (last == nullptr || lesson.plan.start.unix_s >= last->plan.start.unix_s))
      last = &lesson;
  }
  return last;
}

bool stepped_in_last(const Practice& what, std::span<const Lesson> lessons) {
  const Lesson* last = last_lesson_with(what, lessons);
  if (last == nullptr) return false;
  const auto& all = last->log.interventions;
  return std::any_of(all.begin(), all.end(), [&](const LessonIntervention& one) {
    return one.what && is_said_of(*one.what, what);
  });
}

int level_of_skill(const Record& record, Kind kind) {
  const Skill* skill = record.scheme.skill_of(kind);
  for (const SkillLine& line : skill_lines(record.scheme, record.lessons))
    if (line.skill == skill) return line.level();
  return 0;
}

NotAtHome why_not(const Record& record, const PracticeAtHome& one, const AtHomeRules& rules) {
  const auto& avoids = record.pupil.avoids;
  const bool kept_off = std::any_of(avoids.begin(), avoids.end(),
                                    [&](Kind kind) { return road::meets(one.what.kind, kind); });
  if (kept_off || one.what.kind == Kind::motorway) return NotAtHome::kept_off;
  if (one.level < rules.least_level) return NotAtHome::below;
  if (stepped_in_last(one.what, record.lessons)) return NotAtHome::stepped_in;
  const auto days = days_since_epoch(record.day) - days_since_epoch(one.last);
  return days > rules.seen_within_days ? NotAtHome::long_ago : NotAtHome::no;
}

/// A road asks for it, and nobody chooses it.
bool is_on_roads(Kind kind) {
  return road::form_of(kind) != road::KindForm::manoeuvre && !road::is_of_choice(kind);
}

bool has(const std::vector<Practice>& alone, Kind kind, Movement movement) {
  return std::any_of(alone.begin(), alone.end(), [&](const Practice& one) {
    return road::meets(one.kind, kind) && one.movement == movement;
  });
}

}  // namespace

AtHomeRules at_home_rules() {
  std::map<std::string_view, double> numbers;
  AtHomeRules rules;
  for (const TableRow& row : read_table(rule_text("at_home"))) {
    if (row[0] == "number") numbers[row.at(1)] = number_cell(row, 2);
    if (row[0] == "quiet") rules.quiet = row.at(1);
  }
  const auto number = [&](std::string_view name) { return number_in(numbers, name); };
  rules.least_level = number("least level"), rules.seen_within_days = number("seen within");
  rules.usual_minutes = number("usual minutes"), rules.least_minutes = number("least minutes");
  rules.most_minutes = number("most minutes"), rules.shorter_by_minutes = number("shorter by");
  rules.loops = number("loops");
  rules.from_door_m = number("from door"), rules.most_from_door_m = number("at most from door");
  rules.to_corner_m = number("to corner"), rules.room_m = number("room");
  rules.places = number("places"), rules.places_apart_m = number("places apart");
  rules.days_ahead = number("days ahead"), rules.most_kept_off = number("keep off most");
  return rules;
}

std::vector<AtHomeLaw> laws_at_home(std::string_view region, Date day) {
  std::vector<AtHomeLaw> laws, elsewhere;
  for (const TableRow& row : read_table(rule_text("at_home"))) {
    if (row[0] != "law" || day < day_cell(row, 2)) continue;
    const AtHomeLaw law{"law." + std::string(row.at(3)), static_cast<int>(number_cell(row, 4)),
                        static_cast<int>(number_cell(row, 5))};
    if (names_region(row.at(1), region)) laws.push_back(law);
    if (row.at(1) == "-") elsewhere.push_back(law);
  }
  return laws.empty() ? elsewhere : laws;
}

std::vector<PracticeAtHome> practices_at_home(const Record& record) {
  const AtHomeRules rules = at_home_rules();
  std::vector<PracticeAtHome> all;
  for (const PracticeLine& line : practice_lines(record.lessons)) {
    if (!is_on_roads(line.what.kind)) continue;
    PracticeAtHome one{line.what, line.level(), line.last, NotAtHome::no};
    if (one.level == 0) one.level = level_of_skill(record, line.what.kind);
    one.why_not = why_not(record, one, rules);
    all.push_back(one);
  }
  return all;
}

std::vector<Practice> alone_of(const std::vector<PracticeAtHome>& practices) {
  std::vector<Practice> alone;
  for (const PracticeAtHome& one : practices)
    if (one.why_not == NotAtHome::no) alone.push_back(one.what);
  return alone;
}

std::vector<PracticeAtHome> nearest_of(const std::vector<PracticeAtHome>& practices,
                                       std::size_t most) {
  std::vector<PracticeAtHome> nearest;
  for (const PracticeAtHome& one : practices)
    if (one.why_not != NotAtHome::no && one.why_not != NotAtHome::kept_off) nearest.push_back(one);
  std::stable_sort(
      nearest.begin(), nearest.end(),
      [](const PracticeAtHome& a, const PracticeAtHome& b) { return a.level > b.level; });
  if (nearest.size() > most) nearest.resize(most);
  return nearest;
}

std::vector<wish::Avoid> all_but(const std::vector<Practice>& alone) {
  std::vector<wish::Avoid> avoids;
  for (const Kind kind : road::all_kinds()) {
    if (!is_on_roads(kind)) continue;
    std::vector<wish::Avoid> by_movement;
    const auto movements = road::movements_of(kind);
    for (const Movement movement : movements)
      if (!has(alone, kind, movement)) by_movement.push_back({kind, movement});
    const bool none = by_movement.size() == movements.size();  // also of a kind without movements
    if (none && !(movements.empty() && has(alone, kind, Movement::none)))
      avoids.push_back({kind});
    else
      avoids.insert(avoids.end(), by_movement.begin(), by_movement.end());
  }
  return avoids;
}

}  // namespace loopwright::book
