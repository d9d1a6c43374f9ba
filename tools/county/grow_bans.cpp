// The turns that a one-way street forbids, as mappers like to write them down: into the end it is left
// by, a ban on the left turn from one side and on the right turn from the other.
//
// 1. The roads that run on through such ends are cut there, for a ban binds whole ways; what relations
//    say of a road that is cut goes with the part it was said of.
// 2. A ban for each two-way road that ends there and from which the street would be a turn.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "county/grow_cut.hpp"
#include "county/grow_dress.hpp"
#include "county/grow_ground.hpp"

namespace loopwright::county {
namespace {

constexpr double least_turn = std::numbers::pi / 4;  // less is the way ahead

std::vector<std::size_t> roads_at(const Drawing& county, Spot at) {
  std::vector<std::size_t> found;
  for (std::size_t n = 0; n < county.lines.size(); ++n) {
    const Line& line = county.lines[n];
    if (line.kind == LineKind::road && rank(line) >= 1 && std::ranges::count(line.points, at) > 0)
      found.push_back(n);
  }
  return found;
}

bool ends_at(const Line& line, Spot at) {
  return line.points.front() == at || line.points.back() == at;
}

bool holds_via(const Drawing& county, const Relation& relation, std::size_t line) {
  return std::ranges::any_of(relation.members, [&](const Member& member) {
    const auto* via = std::get_if<Spot>(&member.what);
    return via != nullptr && ends_at(county.lines[line], *via);
  });
}

/// A ban binds the part that still ends at its junction; a route takes both parts.
void keep_relations(Drawing& county, std::size_t line, std::size_t rest) {
  for (Relation& relation : county.relations) {
    const auto member = std::ranges::find_if(relation.members, [&](const Member& m) {
      const auto* way = std::get_if<std::size_t>(&m.what);
      return way != nullptr && *way == line;
    });
    if (member == relation.members.end()) continue;
    if (member->role.empty()) {
      relation.members.insert(member + 1, {rest, ""});
    } else if (!holds_via(county, relation, line) && holds_via(county, relation, rest)) {
      member->what = rest;
    }
  }
}

void cut_at_end(Drawing& county, Spot at) {
  for (const std::size_t n : roads_at(county, at))
    if (!ends_at(county.lines[n], at)) keep_relations(county, n, cut(county, n, at));
}

/// How far one turns when coming along a road to its end there and going on against the street.
double turn_into(const Line& from, const Line& street) {
  const Spot at = street.points.back();
  const bool last = from.points.back() == at;
  const Spot before = last ? from.points[from.points.size() - 2] : from.points[1];
  return turn_at(before, at, street.points[street.points.size() - 2]);
}

void ban_turns_into(Drawing& county, std::size_t street) {
  const Spot at = county.lines[street].points.back();
  for (const std::size_t from : roads_at(county, at)) {
    if (from == street || county.lines[from].tags.contains("oneway")) continue;
    const double turn = turn_into(county.lines[from], county.lines[street]);
    if (std::abs(turn) < least_turn) continue;
    county.relations.push_back(
        {.members = {{from, "from"}, {at, "via"}, {street, "to"}},
         .tags = {{"type", "restriction"},
                  {"restriction", turn > 0 ? "no_left_turn" : "no_right_turn"}}});
  }
}

}  // namespace

void ban_turns(Drawing& county, Dice& dice) {
  constexpr std::size_t one_in = 2;  // other mappers leave them out: the street says it
  std::vector<std::size_t> streets;
  for (std::size_t n = 0; n < county.lines.size(); ++n) {
    const Line& line = county.lines[n];
    const auto oneway = line.tags.find("oneway");
    if (!line.grown || line.kind != LineKind::road || oneway == line.tags.end()) continue;
    if (oneway->second == "yes" && dice.below(one_in) == 0) streets.push_back(n);
  }
  for (const std::size_t street : streets) cut_at_end(county, county.lines[street].points.back());
  for (const std::size_t street : streets) ban_turns_into(county, street);
}

}  // namespace loopwright::county
