// Method:
//   1. Of each planned pass the closest thing said counts: its own kind before a more general one, a movement before
//      none.
//   2. "xN" drives the first N of the passes it speaks of; what it has more of was driven besides the plan.
//   3. What a recorded drive said wasn't driven stays so.
//   4. The passes' levels become levels of their skills.
#include <algorithm>

#include "loopwright/base/error.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/book/mock_test.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::book {
namespace {

/// How closely a word speaks of a pass; 0: not at all.
int closeness(const SaidPractice& said, const Practice& pass) {
  if (!road::meets(pass.kind, said.what.kind)) return 0;
  if (said.what.movement != road::Movement::none && said.what.movement != pass.movement) return 0;
  return 1 + (said.what.movement != road::Movement::none ? 1 : 0) +
         (said.what.kind == pass.kind ? 2 : 0);
}

/// Index of the closest; as many as there are when none speaks of it.
std::size_t closest(const std::vector<SaidPractice>& all, const Practice& pass) {
  std::size_t best = all.size();
  int best_closeness = 0;
  for (std::size_t k = 0; k < all.size(); ++k) {
    const int close = closeness(all[k], pass);
    if (close <= best_closeness) continue;
    best = k;
    best_closeness = close;
  }
  return best;
}

void set(LessonPass& pass, const SaidPractice& said) {
  pass.driven = said.driven;
  if (!said.driven) pass.traced = false;  // the instructor's word, which a later one may take back
  pass.level = said.driven ? said.level : std::nullopt;
  pass.help = said.driven ? said.help : std::nullopt;
}

/// Passes that weren't planned: as many as said, one when none is.
void add_besides(std::vector<LessonPass>& passes, const SaidPractice& said, int planned) {
  const int more = said.passes.value_or(std::max(planned, 1)) - planned;
  for (int n = 0; n < more; ++n) {
    LessonPass pass{said.what, road::hardness_of(said.what.kind, said.what.movement), {}};
    set(pass, said);
    passes.push_back(pass);
  }
}

std::vector<LessonPass> fill_passes(std::vector<LessonPass> passes, const Said& said) {
  std::vector<int> met(said.practices.size(), 0);
  for (LessonPass& pass : passes) {
    const std::size_t k = closest(said.practices, pass.what);
    if (!pass.traced) pass.driven = true;
    pass.level = pass.driven ? said.rest : std::nullopt;
    pass.help.reset();
    if (k == said.practices.size()) continue;
    const SaidPractice& of = said.practices[k];
    if (!pass.driven && of.driven) continue;
    set(pass, of);
    if (of.passes && met[k] >= *of.passes) set(pass, {of.what, false});
    ++met[k];
  }
  for (std::size_t k = 0; k < said.practices.size(); ++k) {
    const SaidPractice& of = said.practices[k];
    if (!of.driven && met[k] == 0)
      throw UsageError("'not " + words_of(of.what) + "': there is none in the plan");
    if (of.driven) add_besides(passes, of, met[k]);
  }
  return passes;
}

void need_skill(const Scheme& scheme, const std::string& code) {
  if (scheme.skill(code) != nullptr) return;
  std::string all;
  for (const Skill& skill : scheme.skills) all.append(all.empty() ? "" : ", ").append(skill.code);
  throw UsageError("'skill " + code + "': the " + std::string(scheme.name) + " has " + all);
}

}  // namespace

void need_mock_meant(const Said& said, const Plan& plan) {
  if (!said.log.mock || said.mock_unplanned || plan.wish.empty() || is_mock_plan(plan)) return;
  throw UsageError(
      "'mock': this lesson wasn't planned as a mock test; say 'mock unplanned' if it was one all "
      "the "
      "same");
}

void need_open_goals(const Said& said, std::vector<std::string> open) {
  open.insert(open.end(), said.log.goals.begin(), said.log.goals.end());
  std::string all;
  for (const std::string& goal : open)
    all.append(all.empty() ? "'" : ", '").append(goal).append("'");
  for (const std::string& reached : said.log.reached)
    if (std::ranges::find(open, reached) == open.end())
      throw UsageError("'reached: " + reached + "': there is no such goal; " +
                       (open.empty() ? "none is open" : "open: " + all));
}

Log filled(const std::vector<LessonPass>& planned, const Said& said, const Scheme& scheme,
           Date day) {
  Log log = said.log;
  log.passes = fill_passes(planned, said);
  for (Observation& seen : log.observations) {
    need_skill(scheme, seen.skill);
    seen.day = day;
  }
  for (Observation& seen : observed(scheme, day, log.passes, log.observations))
    log.observations.push_back(std::move(seen));
  if (log.mock) log.mock->day = day;
  if (log.mock && said.mock_by_faults) log.mock->faults = counted(log.faults);
  return log;
}

}  // namespace loopwright::book
