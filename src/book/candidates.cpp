// Method:
//   1. Every kind that serves a skill is a candidate: where it can be asked for by left and right, each of these.
//   2. Its level is that of its last day; special forms count for it. Where only its skill was seen, that counts.
//   3. Out fall kinds kept off, what can't be had from the door, what is too hard for the learner, what nobody practised
//      before it (kinds.txt), and what the learner has outgrown without ever being seen at it.
//   4. The rest is weighed.
#include "book/candidates.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <stdexcept>

#include "loopwright/base/table.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::book {
namespace {

using road::Kind;
using road::Movement;

constexpr int enough_passes = 3;
constexpr int enough_level = 3, reached_level = 4;
constexpr double most_overdue = 10;
constexpr int most_waiting = 40, most_later = 5;
constexpr int most_times = 3;  // that a weight counts

struct Lines {
  std::vector<PracticeLine> practices;
  std::vector<SkillLine> skills;
  std::map<Practice, int> stepped_in;  ///< in the last lesson that had the practice
};

bool counts(const PracticeLine& line, const Practice& what) {
  return road::meets(line.what.kind, what.kind) &&
         (what.movement == Movement::none || line.what.movement == what.movement);
}

int level_of(const Lines& lines, const Skill& skill) {
  for (const SkillLine& line : lines.skills)
    if (line.skill == &skill) return line.level();
  return 0;
}

/// Begun, and nothing of it was met for longer than it keeps.
bool is_stale(const Lines& lines, const Skill& skill, Date day) {
  for (const SkillLine& line : lines.skills)
    if (line.skill == &skill && !line.seen.empty())
      return days_since_epoch(day) - days_since_epoch(line.seen.back().day) >
             skill.stale_after_days;
  return false;
}

/// The level of its skill, when nothing that practises the skill was driven: the instructor said so.
int said_level(const Lines& lines, const Skill& skill) {
  for (const PracticeLine& line : lines.practices)
    if (std::find(skill.kinds.begin(), skill.kinds.end(), line.what.kind) != skill.kinds.end())
      return 0;
  return level_of(lines, skill);
}

/// The level of a kind as a prerequisite: the best of its movements and forms. What was driven of its skill beside it tells
/// nothing of it.
int best_level(const Lines& lines, const Record& record, Kind kind) {
  int best = 0;
  for (const PracticeLine& line : lines.practices)
    if (counts(line, {kind, Movement::none})) best = std::max(best, line.level());
  if (best > 0) return best;
  const Skill* skill = record.scheme.skill_of(kind);
  return skill == nullptr ? 0 : said_level(lines, *skill);
}

std::vector<Practice> practices_of(Kind kind) {
  const auto movements = road::movements_of(kind);
  std::vector<Practice> all;
  for (const Movement movement : {Movement::left, Movement::right})
    if (std::find(movements.begin(), movements.end(), movement) != movements.end())
      all.push_back({kind, movement});
  if (all.empty()) all.push_back({kind, Movement::none});
  return all;
}

Candidate standing(const Record& record, const Lines& lines, const Skill& skill,
                   const Practice& what) {
  Candidate now{.what = what, .skill = &skill, .reached = {}};
  const std::int64_t today = days_since_epoch(record.day);
  const PracticeLine* latest = nullptr;
  for (const PracticeLine& line : lines.practices) {
    if (!counts(line, what)) continue;
    now.passes += line.passes;
    if (latest == nullptr || line.last > latest->last ||
        (line.last == latest->last && line.level() != 0 && line.level() < latest->level()))
      latest = &line;
  }
  if (latest == nullptr) {
    now.level = said_level(lines, skill);
    return now;
  }
  now.level = std::max(latest->level(), lowest_level);
  now.last_passes = latest->last_passes;
  now.days_since = static_cast<int>(today - days_since_epoch(latest->last));
  const auto stepped_in = lines.stepped_in.find(latest->what);
  if (stepped_in != lines.stepped_in.end()) now.stepped_in = stepped_in->second;
  return now;
}

bool is_kept_off(const Record& record, Kind kind) {
  const auto& avoids = record.pupil.avoids;
  return std::any_of(avoids.begin(), avoids.end(),
                     [&](Kind avoided) { return road::meets(kind, avoided); });
}

bool is_there(const Record& record, const Practice& what) {
  return record.there == nullptr || record.there->contains(what);
}

/// True of what a learner must know who does well what comes after it: a pupil may come from another instructor.
bool is_outgrown(const Lines& lines, Kind kind) {
  return std::any_of(lines.practices.begin(), lines.practices.end(), [&](const PracticeLine& line) {
    const auto& before = road::kind_row(line.what.kind).before;
    return line.level() >= reached_level &&
           std::find(before.begin(), before.end(), kind) != before.end();
  });
}

/// Motorways are by choice alone, and so is what the map can't promise a place for on any drive.
bool is_by_choice(Kind kind) {
  return kind == Kind::motorway || kind == Kind::ford;
}

void add_once(std::vector<std::string>& all, std::string text) {
  if (std::find(all.begin(), all.end(), text) == all.end()) all.push_back(std::move(text));
}

/// Fills `reached`; false when something that comes before this kind isn't reached. Who was talked through it on the way,
/// or had it too early, needs that as well, until it goes at 3 all the same. What can't be had from the door bars
/// nothing, or a pupil in a town without country roads would never see a dual carriageway: what comes before it does.
bool are_prerequisites_reached(const Record& record, const Lines& lines, Kind kind,
                               Candidate& candidate) {
  const int least = static_cast<int>(proposal_number("least prerequisite"));
  for (const Kind before : road::kind_row(kind).before) {
    const int level = best_level(lines, record, before);
    if (level < least && !is_there(record, {before, Movement::none})) {
      if (!are_prerequisites_reached(record, lines, before, candidate)) return false;
      add_once(candidate.reached, std::string(road::name(before)) + " isn't had from this door");
      continue;
    }
    if (level < least && candidate.level < least) return false;
    if (level > 0)
      add_once(candidate.reached, std::string(road::name(before)) + " at " + std::to_string(level));
  }
  return true;
}

/// What stands first in its skill's row is the skill's own, and goes before what is met by the way.
double off_for_place(const Candidate& candidate) {
  const auto& kinds = candidate.skill->kinds;
  const auto at = std::find(kinds.begin(), kinds.end(), candidate.what.kind) - kinds.begin();
  return proposal_number("later in its skill") *
         static_cast<double>(std::min<std::ptrdiff_t>(at, most_later));
}

/// For a skill that is reached, unless it has become stale; less than nothing for one that is overdue, but not of a further form of it that isn't
/// begun: what is begun of it comes to 4 first.
double off_for_skill(const Candidate& candidate, int lessons) {
  const bool lags = candidate.level > 0 && candidate.level < enough_level;
  if (candidate.skill_level >= reached_level)
    return lags || candidate.skill_stale ? 0 : proposal_number("skill reached");
  if (candidate.level == 0 && candidate.skill_level > 0) return 0;
  double due = proposal_number("lessons a rank") * candidate.skill->rank;
  if (candidate.skill_level > 0) due += proposal_number("lessons to reach");
  return -proposal_number("overdue a lesson") * std::clamp(lessons - due, 0.0, most_overdue);
}

double weight_of(const Candidate& candidate) {
  const auto times = [](int count) { return static_cast<double>(std::min(count, most_times)); };
  if (candidate.level == 0)
    return proposal_number("new") - proposal_number("new by rank") * candidate.skill->rank;
  double weight =
      proposal_number("below independent") * std::max(0, reached_level - candidate.level);
  if (candidate.level < enough_level)
    weight -= proposal_number("met by rank") * candidate.skill->rank;
  weight += proposal_number("stepped in") * times(candidate.stepped_in);
  const int stale_times = candidate.days_since / candidate.skill->stale_after_days;
  if (stale_times > 0)
    weight += proposal_number("stale") + proposal_number("stale again") * times(stale_times - 1);
  weight += proposal_number("waiting a day") * std::min(candidate.days_since, most_waiting);
  if (candidate.just_now && candidate.level >= enough_level)
    weight -= proposal_number("driven just now");
  if (candidate.level == highest_level) weight -= proposal_number("reflected");
  return weight;
}

bool had_enough(const Lesson* lesson, const Practice& what) {
  if (lesson == nullptr) return false;
  const auto driven = std::count_if(
      lesson->log.passes.begin(), lesson->log.passes.end(), [&](const LessonPass& pass) {
        return pass.driven && road::meets(pass.what.kind, what.kind) &&
               (what.movement == Movement::none || pass.what.movement == what.movement);
      });
  return driven >= enough_passes;
}

Lines lines_of(const Record& record) {
  Lines lines{practice_lines(record.lessons), skill_lines(record.scheme, record.lessons), {}};
  for (const PracticeLine& line : lines.practices)
    for (const Lesson& lesson : record.lessons)
      if (lesson.state == LessonState::driven && day_of(lesson) == line.last)
        for (const LessonIntervention& one : lesson.log.interventions)
          if (one.what == line.what) lines.stepped_in[line.what] += one.count;
  return lines;
}

/// What a pupil's candidates are held to.
struct Weighing {
  const Record& record;
  Lines lines;
  const Lesson* last = nullptr;
  int given = 0;    ///< lessons so far
  int hardest = 0;  ///< that may be begun

  /// None when it falls out (step 3).
  [[nodiscard]] std::optional<Candidate> weighed(const Skill& skill, const Practice& what) const {
    if (is_kept_off(record, what.kind) || is_by_choice(what.kind) || !is_there(record, what))
      return std::nullopt;
    Candidate candidate = standing(record, lines, skill, what);
    const bool too_hard = road::hardness_of(what.kind, what.movement) > hardest;
    if (candidate.level < enough_level && too_hard) return std::nullopt;
    if (candidate.level == 0 && is_outgrown(lines, what.kind)) return std::nullopt;
    if (!are_prerequisites_reached(record, lines, what.kind, candidate)) return std::nullopt;
    candidate.just_now = had_enough(last, what);
    candidate.skill_level = level_of(lines, skill);
    candidate.skill_stale = is_stale(lines, skill, record.day);
    candidate.weight =
        weight_of(candidate) - off_for_place(candidate) - off_for_skill(candidate, given);
    return candidate;
  }
};

}  // namespace

double proposal_number(std::string_view name) {
  static const auto rows = read_table(rule_text("proposal"));
  for (const TableRow& row : rows)
    if (row[0] == name) return number_cell(row, 1);
  throw std::logic_error("proposal.txt: no row '" + std::string(name) + "'");
}

int level_of(const Record& record, const Practice& what) {
  const Skill* skill = record.scheme.skill_of(what.kind);
  return skill == nullptr ? 0 : standing(record, lines_of(record), *skill, what).level;
}

std::vector<Candidate> candidates(const Record& record, std::optional<int> level) {
  const Weighing weighing{record, lines_of(record), last_driven(record.lessons),
                          hours_of(record.lessons).lessons,
                          wish_level(level) + static_cast<int>(proposal_number("above level"))};
  std::vector<Candidate> all;
  for (const Skill& skill : record.scheme.skills)
    for (const Kind kind : skill.kinds)
      for (const Practice& what : practices_of(kind))
        if (auto candidate = weighing.weighed(skill, what)) all.push_back(std::move(*candidate));
  std::stable_sort(all.begin(), all.end(),
                   [](const Candidate& a, const Candidate& b) { return a.weight > b.weight; });
  return all;
}

}  // namespace loopwright::book
