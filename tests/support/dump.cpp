// loopwright_dump AREA [PAIRS]: an area file as lines of text, so that other programs can check it.
//
//   piece ROW WAY LENGTH_M LAT,LON LAT,LON …      in units of 1e-7 degree
//   node OSM_ID FLAG …                            by the names below
//   place KIND TYPE OSM_ID NODE,NODE,… WAY,WAY,…  ("-" for an empty list)
//   rule RELATION
//   move STATE STATE MS                           turn delay and the whole of the second stretch
//   pair STATE STATE MS                           shortest driving time by room reach, -1: no way
//
// Pairs are drawn with a fixed seed among the states one may drive, at level 3 on a Saturday
// afternoon; the time is from the end of the first stretch to the end of the second.
#include <cstdio>
#include <exception>
#include <limits>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/pace/pace.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::test {
namespace {

const char* name(ObjectType type) {
  switch (type) {
    case ObjectType::node:
      return "node";
    case ObjectType::way:
      return "way";
    case ObjectType::relation:
      break;
  }
  return "relation";
}

void print_pieces(const road::Roads& roads) {
  for (std::size_t p = 0; p < roads.pieces.size(); ++p) {
    const road::Piece& piece = roads.pieces[p];
    std::printf("piece %zu %lld %.6f", p, static_cast<long long>(piece.way), piece.length_m);
    for (const Point& at : roads.shape_of(PieceId{p})) std::printf(" %d,%d", at.lat_e7, at.lon_e7);
    std::printf("\n");
  }
}

void print_nodes(const road::Roads& roads) {
  constexpr std::pair<std::uint32_t, const char*> flags[] = {
      {road::node_flag::wall, "wall"},
      {road::node_flag::signals, "signals"},
      {road::node_flag::signal_crossing, "signal_crossing"},
      {road::node_flag::zebra, "zebra"},
      {road::node_flag::level_crossing, "level_crossing"},
      {road::node_flag::mini_roundabout, "mini_roundabout"},
      {road::node_flag::give_way, "give_way"},
      {road::node_flag::stop, "stop"},
      {road::node_flag::dead_end, "dead_end"}};
  for (const road::Node& node : roads.nodes) {
    std::printf("node %lld", static_cast<long long>(node.osm_id));
    for (const auto& [bit, word] : flags) {
      if ((node.flags & bit) != 0) std::printf(" %s", word);
    }
    std::printf("\n");
  }
}

std::string joined(const std::vector<std::int64_t>& ids) {
  std::string text;
  for (const std::int64_t id : ids) text += (text.empty() ? "" : ",") + std::to_string(id);
  return text.empty() ? "-" : text;
}

void print_places(const road::Roads& roads) {
  for (std::size_t p = 0; p < roads.places.size(); ++p) {
    const road::Place& place = roads.places[p];
    std::vector<std::int64_t> nodes, ways;
    for (const NodeId n : roads.nodes_of(PlaceId{p}))
      nodes.push_back(roads.nodes[n.index()].osm_id);
    for (const PieceId i : roads.pieces_of(PlaceId{p})) ways.push_back(roads.pieces[i.index()].way);
    std::printf("place %s %s %lld %s %s\n", std::string(road::name(place.kind)).c_str(),
                name(place.source.type), static_cast<long long>(place.source.id),
                joined(nodes).c_str(), joined(ways).c_str());
  }
  for (const road::TurnRule& rule : roads.turn_rules) {
    std::printf("rule %lld\n", static_cast<long long>(rule.relation));
  }
}

void print_moves(const road::Roads& roads, const pace::Pace& pace) {
  for (std::size_t s = 0; s < roads.state_count(); ++s) {
    for (const road::Turn& turn : roads.turns_from(StateId{s})) {
      const auto spell = pace.at(turn) + pace.along(roads.stretch_of(turn.to));
      std::printf("move %zu %u %lld\n", s, turn.to.value, static_cast<long long>(spell.likely_ms));
    }
  }
}

void print_pairs(const road::Roads& roads, const pace::Pace& pace, int count) {
  std::vector<StateId> states;
  for (std::size_t s = 0; s < roads.state_count(); ++s) {
    if (roads.drivable(roads.stretch_of(StateId{s}))) states.emplace_back(s);
  }
  std::mt19937 random(20261128);
  const reach::Costs costs(roads, pace);
  reach::Sweep sweep(roads);
  for (int i = 0; i < count && !states.empty(); ++i) {
    const StateId from = states[random() % states.size()];
    const StateId to = states[random() % states.size()];
    const reach::Seed seed{from, 0};
    sweep.run({&seed, 1}, costs, std::numeric_limits<std::int32_t>::max());
    const long long ms = sweep.reached(to) ? static_cast<long long>(sweep.ms(to)) : -1;
    std::printf("pair %u %u %lld\n", from.value, to.value, ms);
  }
}

int dump(const char* file, int pairs) {
  const store::Area area = store::open_area(file);
  const road::Roads& roads = area.roads();
  const Instant saturday_afternoon{1795878000, 0};  // 2026-11-28T15:00:00+00:00
  const pace::Pace pace(roads, pace::Learner{}, saturday_afternoon);
  print_pieces(roads);
  print_nodes(roads);
  print_places(roads);
  print_moves(roads, pace);
  print_pairs(roads, pace, pairs);
  return 0;
}

}  // namespace
}  // namespace loopwright::test

int main(int argc, char** argv) {
  try {
    if (argc < 2) throw std::runtime_error("usage: loopwright_dump AREA [PAIRS]");
    return loopwright::test::dump(argv[1], argc > 2 ? std::stoi(argv[2]) : 0);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 1;
  }
}
