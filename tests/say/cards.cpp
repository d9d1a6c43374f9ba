// 1. A random walk of legal turns and the quickest way home, written down as an honest loop.
// 2. Its rows as printed go to the blind driver, who must drive the same stretches and do each row
//    where it is due.
// 3. Times to speak are counted here by themselves: the stretches before a row, at their limits.
#include "say/cards.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "say/blind_driver.hpp"
#include "say/random_drive.hpp"
#include "support/honest_loop.hpp"

namespace loopwright::test {
namespace {

constexpr std::size_t walked_stretches = 40;

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
  if (!driven.lost.empty()) return driven.lost;
  for (std::size_t i = 0; i < loop.stretches.size(); ++i)
    if (driven.stretches[i] != loop.stretches[i].stretch)
      return "another way at stretch " + std::to_string(i);
  for (std::size_t row = 1; row + 1 < rows.size(); ++row)
    if (driven.done.at(row) != rows[row].stretch) return "not where it was due: " + rows[row].say;
  return {};
}

std::string ill_worded(const road::Roads& roads, const wish::Loop& loop,
                       const std::vector<say::Row>& rows) {
  // TRADE practice (no source): 10 to 12 s for mirrors, signal and slowing.
  constexpr double least_s = 10;
  (void)roads;
  for (std::size_t k = 0; k < rows.size(); ++k) {
    const say::Row& row = rows[k];
    if (row.say.empty() || say::spoken_words(row.say) > 9) return "not nine words: " + row.say;
    if (say::spoken_words(row.landmark) > 5) return "not five words: " + row.landmark;
    for (const std::string_view never : {"straight on", "turning", "next road", "{"})
      if (row.say.find(never) != std::string::npos) return "never said: " + row.say;
    const bool alone = k > 0 && k + 1 < rows.size() && !row.joined_to_previous;
    if (alone && spoken_before_s(loop, row.stretch, row.speak_m) < least_s)
      return "spoken " + std::to_string(std::lround(row.speak_m)) + " m before: " + row.say;
  }
  return {};
}

Cards::Cards(const road::Roads& roads)
    : roads_(roads), costs_(reach::costs_of(roads, pace::Pace(roads, {}, {1795878000, 0}))) {}

wish::Loop Cards::loop(std::uint32_t number) const {
  const find::Drive drive = RandomDrive(roads_, number).loop_of(walked_stretches, costs_);
  return honest_answer(roads_, drive).loops[0];
}

std::string Cards::fault_of(std::uint32_t number, say::Sides sides) const {
  const wish::Loop driven = loop(number);
  const std::vector<say::Row> rows = say::say_loop(roads_, driven, {nullptr, sides});
  const std::string wrong = astray(roads_, driven, rows);
  return wrong.empty() ? ill_worded(roads_, driven, rows) : wrong;
}

}  // namespace loopwright::test
