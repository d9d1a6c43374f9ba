// 1. A random walk of legal turns and the quickest way home, written down as an honest loop.
// 2. Its rows as printed go to the blind driver, who must drive the same stretches and do each row
//    where it is due.
// 3. Times to speak are counted here by themselves: the stretches before a row, at their limits.
#include "say/cards.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "say/blind_driver.hpp"
#include "say/eyes.hpp"
#include "say/random_drive.hpp"
#include "support/honest_loop.hpp"

namespace loopwright::test {
namespace {

constexpr std::size_t walked_stretches = 40;
/// 10 to 12 s for mirrors, signal and slowing (common practice, no source).
constexpr double least_s = 10;

/// Seconds that a row is spoken before it is due, at the limits; parked before the drive counts as
/// early enough.
double spoken_before_s(const wish::Loop& loop, std::size_t joint, double speak_m) {
  double left_m = speak_m, seconds = 0;
  for (std::size_t i = joint; i > 0 && left_m > 0; --i) {
    const double metres = std::min(left_m, loop.stretches[i].metres);
    seconds += metres / loop.stretches[i].limit.metres_per_second();
    left_m -= metres;
  }
  constexpr double parked_s = 100;
  return left_m > 1 ? seconds + parked_s : seconds;
}

/// Whether a row that is spoken before the last one is due, or where the car stands, is spoken in time:
/// from where one of the last three was done, as long as it likely takes.
bool in_time(const wish::Loop& loop, const std::vector<say::Row>& rows, std::size_t k) {
  if (rows[k - 1].kind == say::RowKind::turn_round) return true;
  double metres = 0;
  for (std::size_t back = k; back-- > 0 && k - back <= 3;) {
    metres += rows[back].to_next_m;
    if (metres + 1 < rows[k].speak_m) continue;
    const auto done = back == 0 ? 1 : std::max(rows[back].exit, rows[back].stretch + 1);
    return loop.stretches[rows[k].stretch].arrive_s.likely - loop.stretches[done].arrive_s.likely +
               loop.stretches[rows[k].stretch].metres /
                   loop.stretches[rows[k].stretch].limit.metres_per_second() >=
           least_s;
  }
  return false;
}

/// "200 yd" or "1¼ miles" as metres.
double metres_of(const std::string& text) {
  constexpr double yard_m = 0.9144, mile_m = 1609.344;
  if (text == "under 50 yd" || text == "under 50 m") return 1;
  const double whole = text[0] >= '0' && text[0] <= '9' ? std::stod(text) : 0;
  if (text.ends_with(" yd")) return whole * yard_m;
  if (text.ends_with(" km")) return whole * 1000;
  if (text.ends_with(" m")) return whole;
  const std::array<std::pair<std::string_view, double>, 3> parts{
      {{"¼", 0.25}, {"½", 0.5}, {"¾", 0.75}}};
  double miles = whole;
  for (const auto& [sign, part] : parts)
    if (text.find(sign) != std::string::npos) miles += part;
  return miles * mile_m;
}

std::string at_end_of(const road::Roads& roads, StretchId stretch) {
  const std::int64_t node = roads.nodes[roads.to_node(stretch).index()].osm_id;
  const std::int64_t way = roads.piece(stretch).way;
  return ", come by way/" + std::to_string(way) + " to node/" + std::to_string(node);
}

void replace_all(std::string& text, std::string_view old, std::string_view by) {
  for (auto at = text.find(old); at != std::string::npos; at = text.find(old, at + by.size()))
    text.replace(at, old.size(), by);
}

std::string with_left_and_right(std::string text, bool drives_left) {
  const std::string_view mine = drives_left ? "left" : "right";
  const std::string_view yours = drives_left ? "right" : "left";
  for (const auto& [own, side] :
       {std::pair<std::string_view, std::string_view>{"my side", mine}, {"your side", yours}}) {
    for (const std::string_view before : {"on ", "round to "})
      replace_all(text, std::string(before).append(own),
                  std::string(before).append("the ").append(side));
    replace_all(text, own, side);
  }
  return text;
}

}  // namespace

std::vector<say::Row> as_printed(const road::Roads& roads, const std::vector<say::Row>& rows) {
  const Region& region = roads.info().region;
  std::vector<say::Row> printed;
  for (const say::Row& row : rows) {
    say::Row& line = printed.emplace_back();
    line.kind = row.kind, line.stretch = row.stretch, line.exit = row.exit;
    line.say = with_left_and_right(row.say, region.side == Side::left);
    line.where = row.where, line.to_next_m = row.to_next_m;
    line.joined_to_previous = row.joined_to_previous;
    if (row.speak_m > 0) line.speak_m = metres_of(say::say_distance(row.speak_m, region.unit));
  }
  return printed;
}

std::string astray(const road::Roads& roads, const wish::Loop& loop,
                   const std::vector<say::Row>& rows) {
  const Driven driven = drive_blind(roads, loop.stretches.front().stretch, as_printed(roads, rows),
                                    loop.stretches.size());
  if (!driven.lost.empty()) return driven.lost + at_end_of(roads, driven.stretches.back());
  for (std::size_t i = 0; i < loop.stretches.size(); ++i)
    if (!look_the_same(roads, driven.stretches[i], loop.stretches[i].stretch))
      return "another way at stretch " + std::to_string(i) +
             at_end_of(roads, driven.stretches[i > 0 ? i - 1 : 0]);
  // A place of several nodes is due at any of them.
  for (std::size_t row = 1; row + 1 < rows.size(); ++row)
    if (driven.done.at(row) < rows[row].stretch ||
        driven.done.at(row) > std::max(rows[row].stretch, rows[row].exit - 1))
      return "not where it was due: " + rows[row].say;
  return {};
}

std::string ill_worded(const wish::Loop& loop, const std::vector<say::Row>& rows) {
  for (std::size_t k = 0; k < rows.size(); ++k) {
    const say::Row& row = rows[k];
    if (row.say.empty() || say::spoken_words(row.say) > 9) return "not nine words: " + row.say;
    if (say::spoken_words(row.landmark) > 5) return "not five words: " + row.landmark;
    for (const std::string_view never : {"straight on", "turning", "next road", "{"})
      if (row.say.find(never) != std::string::npos) return "never said: " + row.say;
    // Where the car was turned round it stands, and all is said in time; on the way to what follows
    // close, it is driven as its times say.
    const double gap_m = k > 0 ? rows[k - 1].to_next_m : 0;
    if (k > 0 && row.speak_m >= gap_m && in_time(loop, rows, k)) continue;
    const bool hurried = row.kind != say::RowKind::turn_round && k + 1 < rows.size();
    const bool alone = k > 0 && hurried && !row.joined_to_previous;
    if (alone && spoken_before_s(loop, row.stretch, row.speak_m) < least_s)
      return "spoken " + std::to_string(std::lround(row.speak_m)) + " m before: " + row.say;
  }
  return {};
}

std::size_t crowded_rows(const std::vector<say::Row>& rows) {
  std::size_t crowded = 0;
  for (const say::Row& row : rows)
    for (const std::string& brief : row.briefs)
      if (brief.starts_with("more than three at once")) ++crowded;
  return crowded;
}

Cards::Cards(const road::Roads& roads)
    : roads_(roads), costs_(roads, pace::Pace(roads, {}, {1795878000, 0})) {
  for (std::size_t row = 0; row < roads.state_count(); ++row) {
    const StretchId back = roads.stretch_of(StateId{row}).back();
    for (const road::Turn& turn : roads.turns_from(StateId{row})) {
      const StretchId to = roads.stretch_of(turn.to);
      // Nobody turns round from a road into the same road mapped twice.
      const bool twice = to != back && look_the_same(roads, to, back);
      if (twice) costs_.ban(static_cast<std::size_t>(&turn - roads.turns.data()));
    }
  }
}

wish::Loop Cards::loop(std::uint32_t number) const {
  const find::Drive drive = RandomDrive(roads_, number).loop_of(walked_stretches, costs_);
  return honest_answer(roads_, drive).loops[0];
}

JudgedCard Cards::judge(std::uint32_t number, say::Sides sides) const {
  const wish::Loop driven = loop(number);
  const std::vector<say::Row> rows = say::say_loop(roads_, driven, {nullptr, sides});
  const std::string wrong = astray(roads_, driven, rows);
  return {wrong.empty() ? ill_worded(driven, rows) : wrong, rows.size(), crowded_rows(rows)};
}

std::string Cards::fault_at(const road::Chance& ring) const {
  find::Drive drive;
  for (const StretchId s : roads_.path_of(ring)) drive.states.emplace_back(s.index());
  drive.end_m = roads_.piece(ring.exit).length_m;
  const wish::Loop through = honest_answer(roads_, drive).loops[0];
  return astray(roads_, through, say::say_loop(roads_, through));
}

}  // namespace loopwright::test
