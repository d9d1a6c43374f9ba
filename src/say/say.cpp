// Method:
// 1. Find the moments at which something is to be said (moments.cpp); each becomes a row.
// 2. Word each by what lies between the last moment and it (approach.cpp, phrasing.cpp).
// 3. Rows too close to speak between are joined, at most three in one breath; a fourth is marked
//    as late.
// 4. What to brief, limits and hardness come from the passes and stretches (briefing.cpp).
#include "loopwright/say/say.hpp"

#include <algorithm>
#include <cassert>

#include "say/briefing.hpp"
#include "say/phrasing.hpp"

namespace loopwright::say {
namespace {

/// More than this in one breath isn't remembered. Our judgement.
constexpr int most_in_one_breath = 3;

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
  Rows(const road::Roads& roads, const wish::Loop& loop)
      : drive_(roads, loop), moments_(moments_of(drive_)) {}

  std::vector<Row> make() {
    for (std::size_t k = 0; k < moments_.size(); ++k) add(k);
    add_briefing(drive_, moments_, words_, rows_);
    mark_close_rows();
    return std::move(rows_);
  }

 private:
  void add(std::size_t k) {
    const Moment& moment = moments_[k];
    const Phrasing phrasing(drive_, words_);
    Row row;
    row.kind = moment.kind, row.stretch = moment.entry, row.exit = moment.exit;
    row.at = drive_.roads().nodes[drive_.roads().to_node(drive_.at(moment.entry)).index()].at;
    if (k == 0) {
      row.say = phrasing.leaving();
    } else {
      Approach approach(drive_, moments_[k - 1], moment);
      row.say = phrasing.of(moment, approach);
      row.joined_to_previous = approach.joined();
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

  /// Limits the rows of one breath, and tells the instructor where one begins.
  void mark_close_rows() {
    int in_breath = 1;
    for (std::size_t k = 1; k < rows_.size(); ++k) {
      Row& row = rows_[k];
      if (!row.joined_to_previous) {
        in_breath = 1;
      } else if (++in_breath > most_in_one_breath) {
        row.joined_to_previous = false, in_breath = 1;
        row.briefs.emplace_back(words_.at("hazard.late"));
      } else if (in_breath == 2 && k > 1) {
        rows_[k - 1].briefs.emplace_back(words_.at("hazard.close"));
      }
    }
  }

  Words words_;
  Drive drive_;
  std::vector<Moment> moments_;
  std::vector<Row> rows_;
};

}  // namespace

std::vector<Row> say_loop(const road::Roads& roads, const wish::Loop& loop) {
  assert(!loop.stretches.empty());
  return Rows(roads, loop).make();
}

}  // namespace loopwright::say
