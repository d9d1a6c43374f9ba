// Method:
//   1. Each kind of practice has an ability; a pass shows it, give or take, and brings it nearer to 5. A manoeuvre is
//      practised for minutes, so that it teaches more than a pass.
//   2. What was never met begins a little above 1 for who can do other things.
//   3. The instructor names what went otherwise than most, steps in where it goes at 1 or 2, and says one level of the
//      rest, as one does at a kitchen table.
#include "course/learner.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "loopwright/book/progress.hpp"
#include "loopwright/book/scheme.hpp"

namespace loopwright::test {
namespace {

constexpr double pass_teaches = 0.12,
                 manoeuvre_teaches = 0.5;  // of what is missing to 5, at talent 1
constexpr double all_round_share = 0.06;   // of that, for all that is new
constexpr double kept_days = 10, forgets_a_day = 0.012;
constexpr double highest = 5.2;

}  // namespace

Learner::Learner(const LearnerSort& sort) : sort_(sort), dice_(sort.seed) {}

double& Learner::ability(const book::Practice& what) {
  const auto [place, is_new] = ability_.emplace(what.kind, 1 + (all_round_ - 1) * 0.5);
  return place->second;
}

void Learner::rest(int days) {
  const double at_home = sort_.home_minutes * days / 7.0;
  home_minutes_ += static_cast<int>(at_home);
  for (auto& [kind, able] : ability_) {
    const double lost = forgets_a_day * std::max(days - kept_days, 0.0);
    able = std::max(able - lost * (at_home > 0 ? 0.5 : 1), 1.0);
    // At home one drives what one can already.
    if (able >= 3.5) able += (highest - able) * std::min(at_home / 1500, 0.1) * sort_.talent;
  }
}

int Learner::one_pass(const book::Practice& what) {
  double& able = ability(what);
  const double off =
      sort_.noise * (dice_.share() + dice_.share() + dice_.share() + dice_.share() - 2);
  const double shown = able + off + today_;
  const bool is_manoeuvre = road::form_of(what.kind) == road::KindForm::manoeuvre;
  const double taught =
      (highest - able) * sort_.talent * (is_manoeuvre ? manoeuvre_teaches : pass_teaches);
  able += taught;
  all_round_ = std::min(all_round_ + taught * all_round_share, 4.0);
  return std::clamp(static_cast<int>(std::lround(shown)), book::lowest_level, book::highest_level);
}

/// Skills no map can serve get better with all else; two of them are spoken of in a lesson.
std::string Learner::skills_said() {
  std::vector<std::string_view> codes;
  for (const book::Skill& skill : book::find_scheme("car-27")->skills)
    if (skill.kinds.empty()) codes.push_back(skill.code);
  std::string said;
  for (int n = 0; n < 2; ++n) {
    const std::string code(codes[dice_.below(codes.size())]);
    if (said.find("skill " + code + " ") != std::string::npos) continue;
    const double shown = all_round_ + 1 + sort_.noise * (dice_.share() - 0.5);
    said += "skill " + code + " " +
            std::to_string(std::clamp(static_cast<int>(std::lround(shown)), 1, 5)) + "; ";
  }
  return said;
}

std::string Learner::drive(const std::vector<book::LessonPass>& passes, double minutes) {
  today_ = dice_.share() < sort_.bad_days ? -1 : 0;
  std::map<book::Practice, std::vector<int>> shown;
  std::vector<int> all;
  for (const book::LessonPass& pass : passes) {
    all.push_back(one_pass(pass.what));
    shown[pass.what].push_back(all.back());
  }
  if (all.empty()) return "minutes " + std::to_string(std::lround(minutes));
  const int rest = book::lower_middle(all);
  std::string line;
  for (auto& [what, levels] : shown) {
    const int level = book::lower_middle(levels);
    const bool steps_in = level <= 2 && dice_.share() < 0.4;
    if (level == rest && !steps_in) continue;
    line += words_of(what) + " " + std::to_string(level);
    if (steps_in) line += dice_.share() < 0.7 ? " words" : " pedals";
    line += "; ";
  }
  line += "rest " + std::to_string(rest) + "; " + skills_said();
  line += "minutes " + std::to_string(std::lround(minutes * (1.3 - 0.3 * sort_.talent)));
  if (home_minutes_ > 0) line += "; home " + std::to_string(std::exchange(home_minutes_, 0));
  return line;
}

}  // namespace loopwright::test
