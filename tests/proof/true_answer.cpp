// 1. Letters become stretches; the first is driven from its middle, the last to its middle.
// 2. Times are added up row by row.
// 3. Junction passes are the chances whose whole path the drive follows; runs are told by asking
//    of each row whether the one before carried the kind.
// 4. Road driven twice is what a row shares with that earlier one which it shares most with.
#include "proof/true_answer.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "loopwright/lanes/lanes.hpp"
#include "loopwright/pace/pace.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::test {
namespace {

// Saturday 28 November 2026, 15:00.
constexpr Instant saturday_at_three{1795878000, 0};

wish::Range range_of(const pace::Spell& spell) {
  const pace::Percentiles p = pace::percentiles_of(spell);
  return {p.low, p.likely, p.high};
}

class Teller {
 public:
  Teller(const BuiltTown& town, std::string_view letters, const wish::Wish& wish)
      : roads_(town.roads()), pace_(roads_, {.level = wish.level}, wish.start), wish_(wish) {
    for (std::size_t i = 0; i + 1 < letters.size(); ++i)
      stretches_.push_back(town.stretch(letters.substr(i, 2)));
  }

  wish::Loop tell() {
    loop_.start = wish_.start;
    for (std::size_t i = 0; i < stretches_.size(); ++i) tell_row(i);
    loop_.seconds = range_of(so_far_);
    tell_twice();
    tell_junctions();
    for (const road::Kind kind : road::all_kinds())
      if (road::is_stretch_like(kind) && kind != road::Kind::single_track) tell_runs(kind);
    loop_.bus_lanes = lanes::bus_lanes_on(roads_, loop_, setting_of(roads_));
    tell_verdicts();
    for (const wish::Want& want : wish_.wants) {
      const auto counts = [&](const wish::Pass& p) { return wish::counts_for(p, want); };
      const auto got = std::count_if(loop_.passes.begin(), loop_.passes.end(), counts);
      loop_.met.push_back({want, static_cast<int>(got)});
    }
    return loop_;
  }

 private:
  /// Of the drawn towns' bus lanes, one to a pass.
  void tell_verdicts() {
    for (wish::Pass& pass : loop_.passes)
      for (const wish::BusLanePass& lane : loop_.bus_lanes)
        if (pass.kind == road::Kind::bus_lane && lane.first == pass.first)
          pass.verdict = lane.verdict;
  }

  void tell_row(std::size_t i) {
    const StretchId s = stretches_[i];
    const road::Piece& piece = roads_.piece(s);
    const bool first = i == 0, last = i + 1 == stretches_.size();
    const double from_m = first ? piece.length_m / 2 : 0;
    const double to_m = last ? piece.length_m / 2 : piece.length_m;
    if (!first) so_far_ += delay(stretches_[i - 1], s);
    wish::LoopStretch row;
    row.way = piece.way;
    row.from = roads_.nodes[roads_.from_node(s).index()].osm_id;
    row.to = roads_.nodes[roads_.to_node(s).index()].osm_id;
    row.from_index = s.against() ? piece.to_index : piece.from_index;
    row.to_index = s.against() ? piece.from_index : piece.to_index;
    row.against = s.against();
    row.metres = to_m - from_m;
    if (first || last) row.partial_m = {from_m, to_m};
    row.limit = pace_.limit(s);
    row.arrive_s = range_of(so_far_);
    row.street = std::string(roads_.text(piece.name.index() == 0 ? piece.ref : piece.name));
    row.stretch = s;
    so_far_ += pace_.along_part(s, from_m, to_m);
    loop_.metres += row.metres;
    loop_.stretches.push_back(row);
  }

  [[nodiscard]] pace::Spell delay(StretchId from, StretchId to) const {
    for (const road::Turn& turn : roads_.turns_from(StateId{from.index()}))
      if (roads_.stretch_of(turn.to) == to) return pace_.at(turn);
    return {};
  }

  void tell_twice() {
    const auto part = [&](std::size_t i) {
      const double length_m = roads_.piece(stretches_[i]).length_m;
      const double from_m = i == 0 ? length_m / 2 : 0;
      const double to_m = from_m + loop_.stretches[i].metres;
      return stretches_[i].against() ? std::pair(length_m - to_m, length_m - from_m)
                                     : std::pair(from_m, to_m);
    };
    for (std::size_t later = 0; later < stretches_.size(); ++later) {
      double again_m = 0;
      for (std::size_t earlier = 0; earlier < later; ++earlier) {
        if (stretches_[earlier].piece() != stretches_[later].piece()) continue;
        const auto [a, b] = part(earlier);
        const auto [c, d] = part(later);
        again_m = std::max(again_m, std::min(b, d) - std::max(a, c));
      }
      loop_.metres_twice += again_m;
    }
    loop_.certificate.value = -std::llround(loop_.metres_twice);
  }

  void tell_junctions() {
    for (const road::Chance& chance : roads_.chances) {
      if (road::form_of(chance.kind) != road::KindForm::junction) continue;
      const auto path = roads_.path_of(chance);
      for (std::size_t i = 0; i + path.size() <= stretches_.size(); ++i) {
        if (!std::equal(path.begin(), path.end(), stretches_.begin() + static_cast<long>(i)))
          continue;
        loop_.passes.push_back({chance.kind, chance.movement, chance.exit_number, i,
                                i + path.size() - 1, chance.hardness, chance.confidence,
                                chance.source, std::string(roads_.text(chance.tag)), 0});
      }
    }
  }

  void tell_runs(road::Kind kind) {
    std::optional<wish::Pass> open;
    double metres = 0, single_m = 0;
    for (std::size_t i = 0; i <= stretches_.size(); ++i) {
      const std::uint64_t kinds = road::with_special_forms(kind);
      const bool carries =
          i < stretches_.size() && (roads_.stretch(stretches_[i]).runs & kinds) != 0;
      if (!carries) {
        if (open && metres >= road::least_run_m(kind)) loop_.passes.push_back(*open);
        open.reset(), metres = single_m = 0;
        continue;
      }
      if (!open)
        open = wish::Pass{.kind = kind, .first = i, .hardness = 0, .source = {}, .tag = {}};
      open->last = i;
      metres += loop_.stretches[i].metres;
      const bool single = (roads_.stretch(stretches_[i]).runs & bit(road::Kind::single_track)) != 0;
      single_m = single ? single_m + loop_.stretches[i].metres : 0;
      if (single_m >= 100) open->kind = road::Kind::single_track;
      for (const road::RunFact& fact : roads_.run_facts_of(stretches_[i])) {
        if ((road::bit(fact.kind) & kinds) == 0) continue;
        open->hardness = std::max<int>(open->hardness, fact.hardness);
        open->confidence = road::less_sure(open->confidence, fact.confidence);
        if (!open->tag.empty()) continue;
        open->tag = std::string(roads_.text(fact.tag));
        open->source = {roads_.piece(stretches_[i]).way, ObjectType::way, {}};
      }
    }
  }

  road::Roads roads_;
  pace::Pace pace_;
  const wish::Wish& wish_;
  std::vector<StretchId> stretches_;
  pace::Spell so_far_;
  wish::Loop loop_;
};

int minutes_filled_by(const wish::Loop& loop) {
  const double minutes = std::ceil(loop.seconds.likely / 60);
  if (loop.seconds.likely < 0.95 * 60 * minutes)
    throw std::invalid_argument("true answer: " + std::to_string(loop.seconds.likely) +
                                " s don't fill whole minutes");
  return static_cast<int>(minutes);
}

Point middle_of_piece(const road::Roads& roads, PieceId piece) {
  return point_along(roads.shape_of(piece), roads.pieces[piece.index()].length_m / 2);
}

}  // namespace

wish::Loop true_loop(const BuiltTown& town, std::string_view letters, const wish::Wish& wish) {
  return Teller(town, letters, wish).tell();
}

wish::Answer true_answer(const BuiltTown& town, std::string_view letters, wish::Wish wish) {
  const road::Roads roads = town.roads();
  if (wish.start.unix_s == 0) wish.start = saturday_at_three;
  wish.home = middle_of_piece(roads, town.stretch(letters.substr(0, 2)).piece());
  wish::Answer answer;
  const road::AreaInfo& info = roads.info();
  answer.area = {"town.area",        info.id, info.region.code, std::string(name(info.region.side)),
                 info.map_timestamp, ""};
  answer.loops.push_back(true_loop(town, letters, wish));
  if (wish.through.empty()) wish.minutes = minutes_filled_by(answer.loops.front());
  answer.wish = wish;
  return answer;
}

}  // namespace loopwright::test
