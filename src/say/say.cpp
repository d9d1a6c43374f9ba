// Method:
// 1. Find the moments at which something is to be said (moments.cpp); each becomes a row.
// 2. Word each by what lies between the last moment and it (approach.cpp, phrasing.cpp).
// 3. Rows too close to speak between are joined, at most three in one breath. What follows as close is
//    spoken as soon as the row three before it is done: three are kept in mind. Only where even that
//    is too late is it said with the others, which begin earlier then, and marked so.
// 4. What to brief, limits and hardness come from the passes and stretches (briefing.cpp).
#include "loopwright/say/say.hpp"

#include <algorithm>
#include <cassert>

#include "say/briefing.hpp"
#include "say/landmark.hpp"
#include "say/lane.hpp"
#include "say/phrasing.hpp"
#include "say/signed_to.hpp"

namespace loopwright::say {
namespace {

/// More than this at once isn't remembered. Our judgement.
constexpr std::size_t most_in_mind = 3;

/// Name and number of the road a moment leads to: the first that has one before the next moment.
std::string where_to(const Drive& drive, const Moment& moment, std::size_t next_entry) {
  const road::Roads& roads = drive.roads();
  for (std::size_t i = moment.exit; i <= std::max(moment.exit, next_entry); ++i) {
    const road::Piece& piece = roads.piece(drive.at(i));
    std::string where = spoken_name(roads.text(piece.name));
    const std::string number = spoken_name(roads.text(piece.ref));
    if (!number.empty()) where.append(where.empty() ? "" : ", ").append(number);
    if (!where.empty()) return where;
  }
  return {};
}

class Rows {
 public:
  Rows(const road::Roads& roads, const wish::Loop& loop, const Words& words, Sides sides)
      : words_(words), sides_(sides), drive_(roads, loop), moments_(moments_of(drive_)) {}

  std::vector<Row> make() {
    for (std::size_t k = 0; k < moments_.size(); ++k) add(k);
    add_briefing(drive_, moments_, words_, rows_);
    mark_close_rows();
    return std::move(rows_);
  }

 private:
  void add(std::size_t k) {
    const Moment& moment = moments_[k];
    const Phrasing phrasing(drive_, words_, sides_);
    Row row;
    row.kind = moment.kind, row.stretch = moment.entry, row.exit = moment.exit;
    row.landmark = landmark_for(drive_, moment, words_);
    row.lane = lane_for(drive_, moment, words_);
    row.signed_to = signed_to(drive_, moment);
    row.at = drive_.roads().nodes[drive_.roads().to_node(drive_.at(moment.entry)).index()].at;
    if (k == 0) {
      row.say = phrasing.leaving();
    } else {
      Approach approach(drive_, moments_[k - 1], moment);
      row.say = phrasing.of(moment, approach);
      row.joined_to_previous = approach.joined();
      if (approach.standing()) rows_.back().briefs.emplace_back(words_.at("hazard.standing"));
      if (counts_unlike_signs(moment, row.say))
        row.briefs.emplace_back(words_.at("brief.count_every"));
      // How far beyond the last corner the door is, is not for a sheet to tell.
      const bool told = !approach.joined() && moment.kind != RowKind::pull_up;
      if (told) row.speak_m = approach.speak_m(), row.counts = approach.counts();
    }
    const bool leads_on = k > 0 && moment.kind != RowKind::warn;
    const bool last = k + 1 == moments_.size();
    if (leads_on) row.where = where_to(drive_, moment, last ? moment.exit : moments_[k + 1].entry);
    if (!last) {
      const std::size_t next = moments_[k + 1].entry;
      row.to_next_m = drive_.position_m(next) - drive_.position_m(moment.entry);
      row.to_next_s = drive_.time_s(next) - drive_.time_s(moment.entry);
    }
    rows_.push_back(std::move(row));
  }

  /// At a ring whose exits the words count as the eye does, and the signs otherwise.
  [[nodiscard]] bool counts_unlike_signs(const Moment& moment, const std::string& text) const {
    if (moment.kind != RowKind::roundabout && moment.kind != RowKind::mini) return false;
    const std::string street = drive_.street(drive_.at(moment.exit));
    const bool named = !street.empty() && text.ends_with(street);
    return !named && exit_seen(drive_, moment).count != moment.pass->exit;
  }

  /// Limits the rows of one breath, and tells the instructor where one begins. At the kerb the way to
  /// set off is no burden, since the car points there.
  void mark_close_rows() {
    std::size_t in_breath = 0, head = 0;
    for (std::size_t k = 1; k < rows_.size(); ++k) {
      if (!rows_[k].joined_to_previous) {
        in_breath = 1, head = k;
      } else if (++in_breath > most_in_mind) {
        speak_ahead(k, head);
      } else if (in_breath == 2 && k > 1) {
        rows_[k - 1].briefs.emplace_back(words_.at("hazard.close"));
      }
    }
  }

  /// Row k is spoken as soon as the third before it is done. Pulling up has no place, and a road
  /// that ends stops the car by itself: there is no hurry.
  void speak_ahead(std::size_t k, std::size_t head) {
    const Moment& done = moments_[k - most_in_mind];
    const std::size_t from = done.kind == RowKind::leave ? 0 : end_joint(done);
    const std::size_t due = moments_[k].entry;
    Row& row = rows_[k];
    const bool stops = row.kind == RowKind::pull_up || row.kind == RowKind::turn_round;
    if (!stops && drive_.seconds_between(from, due) < least_before_s) {
      row.briefs.emplace_back(words_.at("hazard.crowded"));
      speak_earlier(head);
      return;
    }
    row.joined_to_previous = false;
    if (stops) return;
    row.speak_m = drive_.position_m(due) - drive_.position_m(from);
    static_assert(most_in_mind == 3, "the words name the two rows between");
    // Of several in a row only the first tells why.
    const bool goes_on = spoken_ahead_ + 1 == k;
    spoken_ahead_ = k;
    row.briefs.push_back(
        words_.fill(goes_on ? "hazard.ahead_too" : "hazard.ahead",
                    {{"n", std::to_string(k - 2)},
                     {"between", std::to_string(k - 1) + " and " + std::to_string(k)}}));
  }

  /// A breath that holds one row more begins by so much earlier, unless its first row counts from where
  /// it is spoken.
  void speak_earlier(std::size_t head) {
    Row& row = rows_[head];
    if (head == 0 || row.counts || row.speak_m <= 0) return;
    constexpr double words_s = 3;
    const Moment& before = moments_[head - 1];
    const double floor_m = before.kind == RowKind::leave ? 0 : drive_.position_m(end_joint(before));
    const double due_m = drive_.position_m(moments_[head].entry);
    const double mps = drive_.loop().stretches[moments_[head].entry].limit.metres_per_second();
    row.speak_m = std::max(row.speak_m, std::min(row.speak_m + words_s * mps, due_m - floor_m));
  }

  const Words& words_;
  Sides sides_;
  Drive drive_;
  std::vector<Moment> moments_;
  std::vector<Row> rows_;
  std::size_t spoken_ahead_ = 0;  ///< the last row that is; 0: none yet
};

}  // namespace

std::vector<Row> say_loop(const road::Roads& roads, const wish::Loop& loop, const Manner& manner) {
  assert(!loop.stretches.empty());
  if (manner.words != nullptr) return Rows(roads, loop, *manner.words, manner.sides).make();
  const Words own;
  return Rows(roads, loop, own, manner.sides).make();
}

}  // namespace loopwright::say
