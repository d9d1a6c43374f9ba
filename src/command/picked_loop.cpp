// Method:
//   1. The file is proved as it stands, as `proof` does it.
//   2. Its wish becomes words again, which the book keeps for `lesson again`; they are read back and must ask the same.
//   3. The loop alone is written under the wish with the book's ledger and the pupil's kept-off kinds, and proved again. How
//      good it is stays true: whoever may drive less finds nothing better.
#include "command/picked_loop.hpp"

#include <algorithm>
#include <ostream>
#include <sstream>
#include <utility>

#include "command/files.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/to_mind.hpp"
#include "command/words_of_wish.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/streets.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::command {
namespace {

constexpr double same_door_m = 50;  // ours: a house number as against its degrees

void need_true(const Ground& ground, const LoopPick& pick) {
  const wish::Answer answer = file::load_answer(pick.file);
  const TextProof proof = proof_of_text(ground, file::write_answer(answer), pick.file);
  if (proof.false_claim)
    throw Error(Exit::false_claim, pick.file.string() + ": " + *proof.false_claim);
}

/// Where the lesson begins, in words. Throws UsageError when the loops begin elsewhere.
std::string home_of(const Ground& ground, const wish::Wish& wish, const LoopPick& pick) {
  const std::string home = home_said(pick.home, pick.pupil);
  std::ostringstream nobody;
  const Point door = Places(ground.map(), nobody).find(read_place("--home", home));
  const double off_m = distance_m(door, wish.home);
  if (off_m <= same_door_m) return home;
  const std::string far = std::to_string(static_cast<long>(off_m)) + " m from ";
  throw UsageError("--loops: " + pick.file.string() + " begins " + far +
                   (pick.home.empty() ? "the home of " + pick.pupil.code +
                                            "; look for loops from there, or name the place they "
                                            "begin at with --home if that is meant"
                                      : "where --home says"));
}

/// The kinds that the book keeps off for the pupil, and this wish doesn't yet.
void keep_off_too(wish::Wish& wish, const book::Pupil& pupil) {
  const std::vector<wish::Want> wants = wish::all_wants(wish);
  for (const road::Kind kind : pupil.avoids) {
    const wish::Avoid avoid{.kind = kind};
    if (beats(wants, kind) == nullptr && std::ranges::find(wish.avoids, avoid) == wish.avoids.end())
      wish.avoids.push_back(avoid);
  }
}

/// Of each street the greater use: the file may have been made with a ledger, too.
std::vector<wish::StreetUse> joined(std::vector<wish::StreetUse> use,
                                    const std::vector<wish::StreetUse>& other) {
  use.insert(use.end(), other.begin(), other.end());
  std::ranges::stable_sort(use, {}, &wish::StreetUse::way);
  std::vector<wish::StreetUse> all;
  for (const wish::StreetUse& one : use) {
    if (all.empty() || all.back().way != one.way) {
      all.push_back(one);
      continue;
    }
    all.back().today = std::max(all.back().today, one.today);
    all.back().month = std::max(all.back().month, one.month);
  }
  return all;
}

/// All of it but what areas are called: their corners say the same in other words.
std::string wish_text(wish::Wish wish) {
  for (wish::KeepOff& off : wish.keep_offs) off.name.clear();
  wish::Answer only_wish;
  only_wish.wish = std::move(wish);
  return file::write_answer(only_wish);
}

/// The words that the book keeps must ask for the same. Throws UsageError.
void need_same_wish(LoopAsk& ask, const Ground& ground, const wish::Wish& wish) {
  std::ostringstream nobody;
  settle(ask, ground, nobody);
  wish::Wish read = ask.wish;
  // What no words say.
  read.home = wish.home, read.start = wish.start, read.terms = wish.terms;
  read.street_use = wish.street_use;
  if (wish_text(read) != wish_text(wish))
    throw UsageError(
        "--loops: a place that its wish keeps off, or takes, isn't where its name leads to now; "
        "look "
        "for the loops again");
}

/// A kind that the loop passes and the pupil is kept off; empty: none.
std::string passes_kept_off(const wish::Loop& loop, const wish::Wish& wish,
                            const book::Pupil& pupil) {
  const std::vector<wish::Want> wants = wish::all_wants(wish);
  for (const road::Kind kind : pupil.avoids) {
    if (beats(wants, kind) != nullptr) continue;
    const auto passes = std::ranges::count_if(loop.passes, [&](const wish::Pass& pass) {
      return wish::is_avoided({.kind = kind}, pass.kind, pass.movement);
    });
    if (passes > 0)
      return "it passes what the book keeps " + pupil.code +
             " off: " + std::string(road::name(kind)) + " " + std::to_string(passes);
  }
  return {};
}

/// That loop, and no other.
wish::Answer only_loop(const TiedLoops& tied, const LoopPick& pick) {
  wish::Answer answer = tied.answer;
  answer.loops = {loop_numbered(tied.answer, pick.loop, pick.file)};
  answer.loops.front().id = 1;
  answer.loops.front().variant.clear();
  answer.fewer_because.clear();
  answer.wish.alternatives = 1;
  return answer;
}

}  // namespace

KeptPlan picked_loop(const book::Book& book, PlanJob& job, const LoopPick& pick) {
  FoundPlan found{std::make_unique<Ground>(job.area), {}, {}};
  Ground& ground = *found.ground;
  const TiedLoops tied = loops_of(ground, pick.file);
  need_true(ground, pick);
  found.answer = only_loop(tied, pick);
  wish::Wish& wish = found.answer.wish;
  const std::string home = home_of(ground, wish, pick);
  const std::string kept_off = passes_kept_off(found.answer.loops.front(), wish, pick.pupil);
  if (!kept_off.empty()) return {std::nullopt, kept_off};
  job.number = planned_then(pick.record.lessons, wish.start);
  auto use = book::street_use(book, {wish.start.civil().date, job.code, job.number});
  keep_quiet(use, ground.map());
  wish.street_use = joined(std::move(wish.street_use), use);
  keep_off_too(wish, pick.pupil);
  job.ask = ask_of(words_of(wish, home, pick.file.string()));
  need_same_wish(job.ask, ground, wish);
  job.ask.wish = wish;
  job.settled = true;
  found.text = file::write_answer(found.answer);
  const TextProof proof = proof_of_text(ground, found.text, job.code);
  if (proof.false_claim) return {std::nullopt, *proof.false_claim};
  found.claims = proof.claims;
  return {std::move(found), {}};
}

}  // namespace loopwright::command
