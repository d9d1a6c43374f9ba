// 1. Each stretch with a lane or gate becomes a drive of that stretch alone, so that bus_lanes_on
//    tells of it as on a lesson; streets and limits come from their rules, turns from theirs.
// 2. Stretches told alike are parted into runs in which one is driven on from into the next.
// 3. A run whose pieces are those of another run, driven the other way, is one with it.
#include "loopwright/lanes/area_things.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <map>
#include <optional>
#include <set>
#include <tuple>

#include "loopwright/lanes/lanes.hpp"

namespace loopwright::lanes {
namespace {

struct Lying {
  TimedThing thing;
  std::vector<StretchId> stretches;
  std::map<StretchId, std::string> map_texts;
};
using Found = std::map<Told, Lying>;

void add(Found& found, const TimedThing& thing, StretchId stretch) {
  Lying& lying = found[told_of(thing)];
  if (lying.stretches.empty()) lying.thing = thing;
  lying.stretches.push_back(stretch);
  lying.map_texts.try_emplace(stretch, thing.map_text);
}

/// The map texts of a run, each once, in driving order.
std::string texts_of(const Lying& lying, const std::vector<StretchId>& run) {
  std::vector<std::string> texts;
  for (const StretchId stretch : run) {
    const std::string& text = lying.map_texts.at(stretch);
    if (std::ranges::find(texts, text) == texts.end()) texts.push_back(text);
  }
  std::string joined;
  for (const std::string& text : texts) joined += (joined.empty() ? "" : "; ") + text;
  return joined;
}

bool legal(const road::Roads& roads, StretchId stretch) {
  constexpr std::uint32_t any = road::stretch_flag::drivable | road::stretch_flag::cut_off;
  return (roads.stretch(stretch).flags & any) != 0;
}

/// Lawful, but on this map no drive leads in and out of it either way, as at the edge of a clip.
bool cut_off(const road::Roads& roads, StretchId stretch) {
  return !roads.drivable(stretch) && !roads.drivable(stretch.back()) &&
         (roads.stretch(stretch).flags & road::stretch_flag::cut_off) != 0;
}

constexpr std::string_view unreached = "no drive on this map leads through it";

void add_lanes(Found& found, const road::Roads& roads, const hours::Setting& setting,
               StretchId stretch) {
  const bool ours = legal(roads, stretch);
  // What is met from the legal side of a one-way road isn't told again from the other.
  if (!ours && legal(roads, stretch.back())) return;
  wish::Loop loop;
  loop.stretches.resize(1);
  loop.stretches[0].stretch = stretch;
  const road::Piece& piece = roads.piece(stretch);
  loop.stretches[0].street = roads.text(roads.text(piece.name).empty() ? piece.ref : piece.name);
  for (const wish::BusLanePass& lane : bus_lanes_on(roads, loop, setting)) {
    TimedThing thing = thing_of_lane(loop, lane);
    if (!ours) {
      thing.never = "cars may not drive through this road";
      const std::string_view tag = roads.text(piece.access_source);
      if (!tag.empty()) thing.map_text += "; " + std::string(tag);
    } else if (cut_off(roads, stretch)) {
      thing.never = unreached;
    }
    add(found, thing, stretch);
  }
}

void add_rules(Found& found, const road::Roads& roads) {
  for (const road::TimedRule& rule : roads.timed_rules) {
    if (rule.about == road::Timed::gate) continue;
    TimedThing thing = thing_of_rule(roads, rule);
    if (rule.about == road::Timed::access && cut_off(roads, rule.stretch)) thing.never = unreached;
    add(found, thing, rule.stretch);
  }
}

/// Stretches told alike, taken out run by run.
class Runs {
 public:
  Runs(const road::Roads& roads, const std::vector<StretchId>& stretches)
      : roads_(roads), left_(stretches.begin(), stretches.end()) {
    for (const StretchId stretch : left_) {
      leaving_.emplace(roads.from_node(stretch), stretch);
      reaching_.emplace(roads.to_node(stretch), stretch);
    }
  }
  [[nodiscard]] bool empty() const { return left_.empty(); }
  /// In driving order.
  std::vector<StretchId> take() {
    const StretchId seed = *left_.begin();
    left_.erase(left_.begin());
    std::deque<StretchId> run{seed};
    while (const auto next = take_at(leaving_, roads_.to_node(run.back()), run.back()))
      run.push_back(*next);
    while (const auto before = take_at(reaching_, roads_.from_node(run.front()), run.front()))
      run.push_front(*before);
    return {run.begin(), run.end()};
  }

 private:
  using ByNode = std::multimap<NodeId, StretchId>;
  /// One that is left at a node and isn't the way back.
  std::optional<StretchId> take_at(const ByNode& by_node, NodeId node, StretchId come_by) {
    const auto [first, last] = by_node.equal_range(node);
    for (auto it = first; it != last; ++it) {
      if (it->second == come_by.back() || left_.erase(it->second) == 0) continue;
      return it->second;
    }
    return std::nullopt;
  }

  const road::Roads& roads_;
  std::set<StretchId> left_;
  ByNode leaving_, reaching_;
};

std::vector<PieceId> pieces_of(const std::vector<StretchId>& run) {
  std::vector<PieceId> pieces;
  for (const StretchId stretch : run) pieces.push_back(stretch.piece());
  std::ranges::sort(pieces);
  return pieces;
}

AreaThing one_of(const road::Roads& roads, const TimedThing& thing, std::vector<StretchId> run) {
  AreaThing one{thing, std::move(run), {}, 0, false};
  for (const StretchId stretch : one.stretches) {
    one.length_m += roads.piece(stretch).length_m;
    one.ways.push_back(roads.piece(stretch).way);
  }
  std::ranges::sort(one.ways);
  one.ways.erase(std::unique(one.ways.begin(), one.ways.end()), one.ways.end());
  one.thing.source.id = one.ways.front();
  const bool gate = thing.thing == Thing::bus_gate || thing.thing == Thing::bus_only_street;
  if (gate) one.thing.thing = thing_of(road::Timed::gate, one.length_m);
  return one;
}

/// Runs of one kind, those of both directions made one.
void add_runs(std::vector<AreaThing>& all, const road::Roads& roads, const Lying& lying) {
  Runs runs(roads, lying.stretches);
  std::map<std::vector<PieceId>, std::size_t> by_pieces;
  while (!runs.empty()) {
    std::vector<StretchId> run = runs.take();
    const auto [known, is_new] = by_pieces.try_emplace(pieces_of(run), all.size());
    if (is_new) {
      TimedThing thing = lying.thing;
      thing.map_text = texts_of(lying, run);
      all.push_back(one_of(roads, thing, std::move(run)));
    } else {
      all[known->second].both_ways = true;
    }
  }
}

void add_turns(std::vector<AreaThing>& all, const road::Roads& roads) {
  for (const road::TurnRule& rule : roads.turn_rules) {
    if (roads.text(rule.condition).empty()) continue;
    const auto path = roads.path_of(rule);
    all.push_back({thing_of_turn(roads, rule), {path.begin(), path.end()}, {}, 0, false});
  }
}

}  // namespace

std::vector<AreaThing> things_in(const road::Roads& roads, const hours::Setting& setting) {
  Found found;
  for (std::size_t piece = 0; piece < roads.pieces.size(); ++piece)
    for (const bool against : {false, true})
      add_lanes(found, roads, setting, StretchId(PieceId{piece}, against));
  add_rules(found, roads);
  std::vector<AreaThing> all;
  for (const auto& [told, lying] : found) add_runs(all, roads, lying);
  add_turns(all, roads);
  std::ranges::stable_sort(all, {}, [](const AreaThing& one) {
    return std::tuple(one.thing.thing, one.thing.street, one.thing.source.id);
  });
  return all;
}

std::string_view heading_words(const road::Roads& roads, const AreaThing& one) {
  if (one.both_ways || one.thing.thing == Thing::turn) return {};
  constexpr std::array<std::string_view, 8> names{"north", "north-east", "east", "south-east",
                                                  "south", "south-west", "west", "north-west"};
  const Point from = roads.nodes[roads.from_node(one.stretches.front()).index()].at;
  const Point to = roads.nodes[roads.to_node(one.stretches.back()).index()].at;
  const double bearing =
      from == to ? road::bearing_out_deg(roads, one.stretches.front()) : bearing_deg(from, to);
  constexpr double sector_deg = 45;
  return names[static_cast<std::size_t>(std::lround(bearing / sector_deg)) % names.size()];
}

}  // namespace loopwright::lanes
