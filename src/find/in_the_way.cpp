// 1. Walls told in the same words are one block; blocks come by their distance from home.
// 2. Is more to be had without any of them? Then the least set of blocks that gives all of it is
//    looked for by halving (U. Junker, QuickXplain, AAAI 2004): few questions when few are to blame.
// 3. Better starts: minute by minute away from the start until the walls to blame are open for as
//    long as the lesson may take; then all that may be shut in that time is made a wall, and the
//    worth is asked there. A start that fails is passed over with some minutes after it; these are
//    gone back to when the next one does.
#include "find/in_the_way.hpp"

#include <algorithm>
#include <map>
#include <span>

#include "loopwright/wish/lesson.hpp"

namespace loopwright::find {
namespace {

using hours::Tri;
using lanes::BreachOf;

// Ours: a question is a search or two over the roads within the minutes.
constexpr int most_questions = 48;
constexpr int most_questions_a_side = 4;
constexpr int minutes_passed_over = 15;
constexpr std::size_t most_named = 3;
constexpr int own_drive_guess = 60;  // when a drive through points has no length yet

/// Walls that are told alike.
struct Block {
  std::string words;
  double off_m = 0;
  std::vector<Wall> walls;
};
using Blocks = std::vector<Block>;

StretchId at(const road::Roads& roads, const Wall& wall) {
  return wall.of == BreachOf::street ? roads.timed_rules[wall.rule].stretch
                                     : roads.path_of(roads.turn_rules[wall.rule]).back();
}

/// May the car pass here, as the wall's rule says for an interval?
hours::Answer free_at(const road::Roads& roads, lanes::Clockwork& clock, const Wall& wall,
                      const lanes::Passing& when) {
  if (wall.of == BreachOf::street) return clock.open(roads.timed_rules[wall.rule], when);
  hours::Answer binds = clock.binds(roads.turn_rules[wall.rule], when);
  if (binds.in_force != Tri::unknown)
    binds.in_force = binds.in_force == Tri::yes ? Tri::no : Tri::yes;
  return binds;
}

/// Why nobody can tell whether a wall is one, when it is settled shut at no minute of the lesson.
std::string doubt(const Ground& ground, lanes::Clockwork& clock, const Wall& wall) {
  const lanes::Passing& window = ground.walls.window();
  std::string why;
  for (std::int64_t s = window.from.unix_s; s <= window.to.unix_s; s += 60) {
    const Instant minute = ground.setting.on_clock({s, 0});
    const hours::Answer free = free_at(ground.roads, clock, wall, {minute, minute});
    if (free.in_force == Tri::no) return "";
    if (free.in_force == Tri::unknown && why.empty()) why = lanes::reason_words(free.reason);
  }
  return why;
}

std::string words_for(const Ground& ground, lanes::Clockwork& clock, const Wall& wall) {
  const road::Roads& roads = ground.roads;
  const std::string why = doubt(ground, clock, wall);
  const std::string hint = why.empty() ? "" : ", the map can't say (" + why + ")";
  const std::string street = lanes::street_words(roads, at(roads, wall));
  const bool turn = wall.of == BreachOf::turn;
  const std::string hours = turn ? lanes::words_of(roads, roads.turn_rules[wall.rule])
                                 : lanes::words_of(roads, roads.timed_rules[wall.rule]);
  const std::string what = turn ? "the turn into " + street : street;
  if (!hint.empty()) return what + (turn ? " may be banned" : " may be shut") + hint + ": " + hours;
  return what + (turn ? " is banned: " : " is ") + hours;
}

Blocks blocks_of(const Ground& ground) {
  lanes::Clockwork clock(ground.roads, ground.setting);
  std::map<std::string, Block> by_words;
  for (const Wall& wall : ground.walls.walls()) {
    const std::string words = words_for(ground, clock, wall);
    const Point there = ground.roads.shape_of(at(ground.roads, wall).piece()).front();
    const double off_m = distance_m(there, ground.wish.home);
    Block& block = by_words.try_emplace(words, Block{words, off_m, {}}).first->second;
    block.off_m = std::min(block.off_m, off_m);
    block.walls.push_back(wall);
  }
  Blocks blocks;
  for (auto& [words, block] : by_words) blocks.push_back(std::move(block));
  std::ranges::stable_sort(blocks, {}, &Block::off_m);
  return blocks;
}

/// Looks for the least set of blocks without which a worth is reached.
class Blame {
 public:
  Blame(const Ground& ground, const Worth& worth)
      : ground_(ground), worth_(worth), blocks_(blocks_of(ground)) {}

  InTheWay run() {
    std::vector<std::size_t> all;
    for (std::size_t k = 0; k < blocks_.size(); ++k) all.push_back(k);
    if (all.empty()) return {};
    wanted_ = without(all);
    if (wanted_ <= worth_(ground_)) return {};
    const std::vector<std::size_t> least = least_of({}, all, false);
    return asked_ > most_questions ? InTheWay{} : told(least);
  }

 private:
  int without(const std::vector<std::size_t>& lifted) {
    ++asked_;
    std::vector<Wall> left;
    for (std::size_t k = 0; k < blocks_.size(); ++k)
      if (std::ranges::find(lifted, k) == lifted.end())
        left.insert(left.end(), blocks_[k].walls.begin(), blocks_[k].walls.end());
    const ClockWalls walls = ground_.walls.with_only(std::move(left));
    return worth_(Ground(ground_.roads, ground_.wish, ground_.setting, walls));
  }

  /// The least of `open` that does it when `lifted` is lifted already. grown: some was just added to
  /// `lifted`, so that it may do alone.
  std::vector<std::size_t> least_of(const std::vector<std::size_t>& lifted,
                                    std::span<const std::size_t> open, bool grown) {
    if (asked_ > most_questions) return {};
    if (grown && without(lifted) >= wanted_) return {};
    if (open.size() == 1) return {open.front()};
    const auto near = open.first(open.size() / 2), far = open.subspan(open.size() / 2);
    const auto of_far = least_of(joined(lifted, near), far, true);
    auto least = least_of(joined(lifted, of_far), near, !of_far.empty());
    least.insert(least.end(), of_far.begin(), of_far.end());
    return least;
  }

  static std::vector<std::size_t> joined(std::vector<std::size_t> some,
                                         std::span<const std::size_t> more) {
    some.insert(some.end(), more.begin(), more.end());
    return some;
  }

  InTheWay told(const std::vector<std::size_t>& least) const {
    InTheWay way{{}, wanted_, {}, {}};
    for (std::size_t n = 0; n < least.size(); ++n) {
      const Block& block = blocks_[least[n]];
      way.walls.insert(way.walls.end(), block.walls.begin(), block.walls.end());
      if (n < most_named) way.words += (n == 0 ? "" : "; ") + block.words;
    }
    if (least.size() > most_named)
      way.words += "; and " + std::to_string(least.size() - most_named) + " more";
    return way;
  }

  const Ground& ground_;
  const Worth& worth_;
  const Blocks blocks_;
  int wanted_ = 0;
  int asked_ = 0;
};

/// How long the lesson may be on the road from a start.
lanes::Passing lesson_from(const Ground& ground, const InTheWay& way, const Instant& start) {
  const int minutes = way.minutes.value_or(ground.wish.minutes.value_or(own_drive_guess));
  const std::int64_t seconds = std::int64_t{60} * wish::slow_minutes(minutes);
  return lanes::whole_minutes(
      {ground.setting.on_clock(start), ground.setting.on_clock(start.plus_seconds(seconds))});
}

bool has_worth_at(const Ground& ground, const Worth& worth, const InTheWay& way,
                  const Instant& start) {
  wish::Wish then = ground.wish;
  then.start = start;
  ClockWalls walls(ground.roads, then, ground.setting, lesson_from(ground, way, start));
  walls.shut_all();
  return worth(Ground(ground.roads, then, ground.setting, walls)) >= way.worth;
}

std::optional<Instant> better_start(const Ground& ground, const Worth& worth, const InTheWay& way,
                                    int sign) {
  lanes::Clockwork clock(ground.roads, ground.setting);
  int asked = 0, failed = 0;
  bool each = false;  // of the minutes that were passed over
  for (int minutes = 1; minutes <= 60 * most_hours_off; ++minutes) {
    const Instant start =
        ground.setting.on_clock(ground.wish.start.plus_seconds(std::int64_t{60} * sign * minutes));
    const lanes::Passing lesson = lesson_from(ground, way, start);
    const bool open = std::ranges::all_of(way.walls, [&](const Wall& wall) {
      return free_at(ground.roads, clock, wall, lesson).in_force == Tri::yes;
    });
    if (!open || (way.also && !way.also(start))) continue;
    if (has_worth_at(ground, worth, way, start)) {
      if (each || failed == 0) return start;
      each = true;
      minutes = failed;
      continue;
    }
    if (each) continue;
    if (++asked == most_questions_a_side) return std::nullopt;
    failed = minutes;
    minutes += minutes_passed_over - 1;
  }
  return std::nullopt;
}

}  // namespace

InTheWay in_the_way(const Ground& ground, const Worth& worth) {
  return Blame(ground, worth).run();
}

std::vector<Instant> better_starts(const Ground& ground, const Worth& worth, const InTheWay& way) {
  std::vector<Instant> starts;
  if (!way.any()) return starts;
  for (const int sign : {-1, 1})
    if (const auto start = better_start(ground, worth, way, sign)) starts.push_back(*start);
  return starts;
}

}  // namespace loopwright::find
