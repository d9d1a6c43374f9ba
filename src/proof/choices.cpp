// 1. A row is inside a junction when it lies on a roundabout, or when a pass with a movement has it
//    between its entry and its exit. A choice spans the rows between two that are outside.
// 2. At each node that is passed there every road that leaves it is a way one could go, unless it is the
//    way one came by or goes by, part of the junction, service or private, or one-way against traffic.
//    Off roundabouts, neither is a road that leads back beside the one driven.
// 3. The road ahead: within 45 degrees, all others at least 30 degrees farther off, and no road of the
//    class one comes by goes round a bend where the way taken is a smaller one.
// 4. A direction that goes by a street's name doesn't when a road not taken bears it since the last.
#include "proof/choices.hpp"

#include <algorithm>
#include <cmath>

#include "loopwright/base/text.hpp"
#include "loopwright/wish/independent.hpp"

namespace loopwright::proof {
namespace {

using road::RoadClass;

bool has(const road::Piece& piece, std::uint32_t flags) {
  return (piece.flags & flags) != 0;
}

bool on_roundabout(const Drive& drive, std::size_t row) {
  return has(drive.roads.piece(drive.stretches[row]), road::piece_flag::ring);
}

/// Traffic may drive it this way, whatever holds for lessons.
bool takes_traffic(const road::Roads& roads, StretchId way) {
  const auto open = [&](StretchId s) {
    const std::uint32_t flags = roads.stretch(s).flags;
    return (flags & road::stretch_flag::drivable) != 0 ||
           (flags & road::stretch_flag::cut_off) != 0;
  };
  if (open(way) || !has(roads.piece(way), road::piece_flag::one_way)) return true;
  return !way.against() && !open(way.back());
}

bool is_road_to_take(const road::Roads& roads, StretchId way) {
  const road::Piece& piece = roads.piece(way);
  return piece.road_class != RoadClass::service &&
         !has(piece, road::piece_flag::ring | road::piece_flag::no_access |
                         road::piece_flag::minor_service) &&
         takes_traffic(roads, way);
}

double turned_deg(const Drive& drive, std::size_t from, StretchId into) {
  return heading_change_deg(road::bearing_in_deg(drive.roads, drive.stretches[from]),
                            road::bearing_out_deg(drive.roads, into));
}

bool belongs_to(const Drive& drive, const Choice& choice, StretchId way) {
  for (std::size_t row = choice.from + 1; row < choice.to; ++row)
    if (drive.stretches[row].piece() == way.piece()) return true;
  return way == drive.stretches[choice.to] || way == drive.stretches[choice.from].back();
}

bool is_round(const Drive& drive, const Choice& choice) {
  return choice.to - choice.from > 1 && on_roundabout(drive, choice.from + 1);
}

/// Back beside the road one comes by, or by the other half of it.
bool turns_back(const Drive& drive, const Choice& choice, StretchId way) {
  const double turned = std::abs(turned_deg(drive, choice.from, way));
  const auto same_text = [&](TextId a, TextId b) {
    return drive.roads.text(a) == drive.roads.text(b);
  };
  const road::Piece& ours = drive.roads.piece(drive.stretches[choice.from]);
  const road::Piece& theirs = drive.roads.piece(way);
  const bool half_of_ours = has(theirs, road::piece_flag::one_way) &&
                            same_text(ours.name, theirs.name) && same_text(ours.ref, theirs.ref);
  return turned >= wish::back_deg || (half_of_ours && turned >= wish::other_half_deg);
}

void add_other_ways(const Drive& drive, Choice& choice) {
  for (std::size_t row = choice.from; row < choice.to; ++row)
    for (const StretchId way : drive.roads.leaving(drive.roads.to_node(drive.stretches[row]))) {
      if (belongs_to(drive, choice, way) || !is_road_to_take(drive.roads, way)) continue;
      if (is_round(drive, choice) || !turns_back(drive, choice, way))
        choice.other_ways.push_back(way);
    }
}

bool passes_mini(const Drive& drive, const Choice& choice) {
  for (std::size_t row = choice.from; row < choice.to; ++row) {
    const NodeId node = drive.roads.to_node(drive.stretches[row]);
    if ((drive.roads.nodes[node.index()].flags & road::node_flag::mini_roundabout) != 0)
      return true;
  }
  return false;
}

bool bends_off(const Drive& drive, const Choice& choice, StretchId other) {
  const auto importance = [&](StretchId s) { return road::rank(drive.roads.piece(s).road_class); };
  const int ours = importance(drive.stretches[choice.from]);
  return importance(other) == ours && importance(drive.stretches[choice.to]) > ours &&
         std::abs(turned_deg(drive, choice.from, other)) < 180 - wish::ahead_deg;
}

bool is_road_ahead(const Drive& drive, const Choice& choice) {
  const StretchId out = drive.stretches[choice.to];
  if (is_round(drive, choice) || passes_mini(drive, choice)) return false;
  if (out == drive.stretches[choice.from].back()) return false;
  if (choice.other_ways.empty()) return true;
  const double ours = std::abs(turned_deg(drive, choice.from, out));
  if (ours > wish::ahead_deg) return false;
  for (const StretchId other : choice.other_ways) {
    if (std::abs(turned_deg(drive, choice.from, other)) < ours + wish::plain_by_deg) return false;
    if (bends_off(drive, choice, other)) return false;
  }
  return true;
}

std::string street_of(const road::Roads& roads, StretchId way) {
  const road::Piece& piece = roads.piece(way);
  const std::string_view name = roads.text(piece.name);
  return std::string(name.empty() ? roads.text(piece.ref) : name);
}

/// Walks back from a choice to the last at which something is told: a road not taken has that name.
bool is_met_before(const Drive& drive, std::span<const Choice> before, std::string_view street) {
  for (auto choice = before.rbegin(); choice != before.rend() && choice->road_ahead; ++choice)
    for (const StretchId other : choice->other_ways)
      if (street_of(drive.roads, other) == street) return true;
  return false;
}

std::string told_at(const Drive& drive, const Choice& choice, std::span<const Choice> before) {
  const StretchId in = drive.stretches[choice.from], out = drive.stretches[choice.to];
  wish::Direction told;
  told.roundabout = is_round(drive, choice);
  told.mini = !told.roundabout && passes_mini(drive, choice);
  if (told.roundabout || told.mini)
    for (auto found = drive.passes.rbegin(); found != drive.passes.rend(); ++found)
      if (found->pass.first == choice.from && found->pass.last == choice.to && found->pass.exit > 0)
        told.exit = found->pass.exit;
  told.back = out == in.back();
  told.angle_deg = turned_deg(drive, choice.from, out);
  told.road_ends = std::abs(told.angle_deg) > wish::ahead_deg;
  for (const StretchId other : choice.other_ways)
    told.road_ends &= std::abs(turned_deg(drive, choice.from, other)) > wish::ahead_deg;
  told.street = drive.loop.stretches[choice.to].street;
  told.same_street = told.street == drive.loop.stretches[choice.from].street;
  told.met_before = is_met_before(drive, before, told.street);
  return wish::direction_text(told);
}

/// Road numbers that British signs give by rule (Traffic Signs Manual chapter 2, from memory).
std::string signed_number(const road::Roads& roads, const road::Piece& piece) {
  switch (piece.road_class) {
    case RoadClass::motorway:
    case RoadClass::trunk:
    case RoadClass::primary:
    case RoadClass::secondary:
      return std::string(split(roads.text(piece.ref), ';').front());
    default:
      return {};
  }
}

}  // namespace

std::vector<bool> inside_junctions(const Drive& drive) {
  std::vector<bool> inside(drive.stretches.size());
  for (std::size_t row = 0; row < inside.size(); ++row) inside[row] = on_roundabout(drive, row);
  for (const FoundPass& found : drive.passes) {
    const bool moves = found.pass.movement != road::Movement::none;
    if (!moves || road::form_of(found.pass.kind) != road::KindForm::junction) continue;
    for (std::size_t row = found.pass.first + 1; row < found.pass.last; ++row) inside[row] = true;
  }
  return inside;
}

std::vector<Choice> choices_of(const Drive& drive) {
  const std::vector<bool> inside = inside_junctions(drive);
  std::vector<std::size_t> outside;
  for (std::size_t row = 0; row < inside.size(); ++row)
    if (!inside[row]) outside.push_back(row);
  std::vector<Choice> choices;
  for (std::size_t k = 1; k < outside.size(); ++k) {
    Choice choice{outside[k - 1], outside[k], true, {}, {}};
    add_other_ways(drive, choice);
    choice.road_ahead = is_road_ahead(drive, choice);
    if (!choice.road_ahead) choice.told = told_at(drive, choice, choices);
    choices.push_back(std::move(choice));
  }
  return choices;
}

std::vector<std::string> led_to(const road::Roads& roads, StretchId stretch) {
  std::vector<std::string> names{signed_number(roads, roads.piece(stretch))};
  for (const road::SignedTo& sign : roads.signs_of(stretch)) {
    for (const std::string_view place : split(roads.text(sign.destination), ';'))
      names.emplace_back(place);
    for (const std::string_view number : split(roads.text(sign.ref), ';'))
      names.emplace_back(number);
  }
  std::erase(names, "");
  return names;
}

bool leads_to(const road::Roads& roads, StretchId stretch, std::string_view name) {
  const std::vector<std::string> names = led_to(roads, stretch);
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace loopwright::proof
