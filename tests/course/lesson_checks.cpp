#include "course/lesson_checks.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "command/book_option.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::test {
namespace {

using book::Practice;
using road::Kind;

constexpr int least_before = 3;
constexpr double most_wheels = 45;  // of an hour: TRADE.md section 7 (8), common practice

class LessonCheck {
 public:
  explicit LessonCheck(const PlannedByProposal& of)
      : of_(of), wish_(of.plan.found.answer.wish), loop_(of.plan.found.answer.loops.front()) {}

  std::vector<std::string> run() {
    reasons();
    order();
    hardness();
    minutes();
    kept_off();
    counts();
    return std::move(faults_);
  }

 private:
  void need(bool holds, const std::string& fault) {
    if (!holds) faults_.push_back(fault);
  }

  void reasons() {
    const auto& topics = of_.plan.proposal.topics;
    need(!of_.plan.proposal.goal.empty(), "no goal");
    need(!topics.empty() && topics.size() <= 2, std::to_string(topics.size()) + " topics");
    for (const auto& topic : topics) need(!topic.why.empty(), words_of(topic.what) + ": no reason");
    need(
        std::count_if(topics.begin(), topics.end(), [](const auto& one) { return one.fresh; }) <= 1,
        "two new topics");
    need(of_.plan.found.claims > 0, "nothing was proved");
  }

  /// The level of the kind's last day, the best of its movements and forms; 0: never driven.
  [[nodiscard]] int level_before(Kind kind) const {
    std::map<Practice, std::pair<std::int64_t, std::vector<int>>> days;
    for (const book::Lesson& lesson : of_.before) {
      for (const book::LessonPass& pass : lesson.log.passes) {
        if (lesson.state != book::LessonState::driven || !pass.driven || !pass.level) continue;
        if (!road::meets(pass.what.kind, kind)) continue;
        const std::int64_t day = days_since_epoch(day_of(lesson));
        auto& [last, levels] = days[pass.what];
        if (day > last) last = day, levels.clear();
        if (day == last) levels.push_back(*pass.level);
      }
    }
    int best = 0;
    for (auto& [what, day] : days) best = std::max(best, book::lower_middle(day.second));
    return best;
  }

  /// Of what is new: what comes before it is at 3, or was never driven and has nothing before it that isn't.
  void order() {
    for (const auto& topic : of_.plan.proposal.topics)
      if (topic.fresh) order_of(topic.what.kind, topic.what.kind, topic.why);
  }
  void order_of(Kind fresh, Kind kind, const std::string& why) {
    for (const Kind before : road::kind_row(kind).before) {
      const int level = level_before(before);
      if (level >= least_before) continue;
      const std::string name(road::name(before));
      const bool is_told = why.find(name + " isn't had from this door") != std::string::npos;
      need(level == 0 && is_told, std::string(road::name(fresh)) + " is begun with " + name +
                                      " at " + std::to_string(level));
      if (level == 0 && is_told) order_of(fresh, before, why);
    }
  }

  [[nodiscard]] bool is_asked_for(Kind kind) const {
    return std::any_of(wish_.wants.begin(), wish_.wants.end(),
                       [&](const wish::Want& want) { return road::meets(kind, want.kind); });
  }
  void hardness() {
    const auto& scheme = command::scheme_kept(of_.pupil);
    const int level = std::max(book::level_now(scheme, of_.before).value_or(1), 2);
    need(wish_.level == level && wish_.level_given, "the wish isn't of the learner's level");
    for (const auto& topic : of_.plan.proposal.topics)
      need(!topic.fresh || road::hardness_of(topic.what.kind, topic.what.movement) <= level + 1,
           words_of(topic.what) + " is too hard to begin at level " + std::to_string(level));
    for (const wish::Pass& pass : loop_.passes)
      need(pass.hardness <= level + 1 || is_asked_for(pass.kind) || road::is_of_choice(pass.kind),
           std::string(road::name(pass.kind)) + " of hardness " + std::to_string(pass.hardness) +
               " at level " + std::to_string(level));
  }

  /// Seconds of planned stops that aren't on the drive: these stay free, and are told.
  [[nodiscard]] double stops_without_place() const {
    const auto& stops = wish_.stops;
    double missing = 60.0 * (stops.talk_minutes +
                             stops.brief_minutes * static_cast<double>(stops.new_kinds.size()));
    for (const wish::PullUp& pull_up : loop_.pull_ups) missing -= pull_up.seconds;
    return of_.plan.found.answer.shortfall ? std::max(missing, 0.0) : 0;
  }

  void minutes() {
    constexpr double most_off = 0.95;
    const double window = 60.0 * (wish_.minutes.value_or(0) - wish_.reserve_minutes);
    const double away = loop_.seconds.likely + loop_.stop_seconds;
    need(away <= window && away + stops_without_place() >= most_off * window,
         "away " + std::to_string(away / 60) + " min of " + std::to_string(window / 60));
    need(std::abs(wish_.pace - of_.pace) <= 0.005, "planned by another pace than the pupil's");
    const double wheels = loop_.seconds.likely / 60;
    need(wheels <= most_wheels + 0.5,  // minutes are whole
         "the wheels turn " + std::to_string(wheels) + " min of an hour");
  }

  void kept_off() {
    for (const wish::Pass& pass : loop_.passes)
      for (const Kind avoided : of_.pupil.avoids)
        need(!road::meets(pass.kind, avoided) || is_asked_for(pass.kind),
             std::string(road::name(pass.kind)) + " is kept off and driven");
  }

  /// How often a place counts is the proof's to check.
  void counts() {
    for (const wish::Met& met : loop_.met) {
      const auto driven =
          std::count_if(loop_.passes.begin(), loop_.passes.end(),
                        [&](const wish::Pass& pass) { return wish::counts_for(pass, met.want); });
      need(met.got <= driven, write_want(met.want) + ": " + std::to_string(met.got) + " told, " +
                                  std::to_string(driven) + " driven");
    }
  }

  const PlannedByProposal& of_;
  const wish::Wish& wish_;
  const wish::Loop& loop_;
  std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> faults_of(const PlannedByProposal& of) {
  return LessonCheck(of).run();
}

}  // namespace loopwright::test
