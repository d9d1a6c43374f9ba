// A piece of road: what it is and how wide; then for each direction whether a learner may drive it,
// the limit on the day, how steep it is, what there is to practise, its bus lanes and the turn rules
// that begin on it.
#include <algorithm>
#include <array>
#include <cstdlib>
#include <ostream>

#include "command/facts.hpp"
#include "command/look_facts.hpp"
#include "command/print.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/lanes.hpp"
#include "loopwright/say/limit_told.hpp"

namespace loopwright::command {
namespace {

void print_width(std::ostream& out, const road::Roads& roads, const road::Piece& piece) {
  out << "  width: ";
  if (piece.width_m > 0) {
    out << fixed(piece.width_m, 1) << " m kerb to kerb";
  } else {
    out << "not mapped";
  }
  if (piece.usable_width_m > 0) out << ", " << fixed(piece.usable_width_m, 1) << " m usable";
  out << in_brackets(roads.text(piece.width_source)) << '\n';
}

void print_flags(std::ostream& out, const road::Piece& piece) {
  constexpr std::array<std::pair<std::uint32_t, std::string_view>, 9> words{{
      {road::piece_flag::ring, "part of a roundabout"},
      {road::piece_flag::one_way, "one-way"},
      {road::piece_flag::dual, "one side of a dual carriageway"},
      {road::piece_flag::bridge, "bridge"},
      {road::piece_flag::tunnel, "tunnel"},
      {road::piece_flag::lit, "lit"},
      {road::piece_flag::bus_route, "bus route"},
      {road::piece_flag::humps, "traffic calming"},
      {road::piece_flag::quiet, "quiet residential street"},
  }};
  std::string text;
  for (const auto& [flag, word] : words) {
    if ((piece.flags & flag) != 0) text += (text.empty() ? "" : ", ") + std::string(word);
  }
  if (!text.empty()) out << "  it is: " << text << '\n';
}

/// Whether a learner may drive here, and what says no.
std::string may_drive(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  if (roads.drivable(stretch)) return "a learner may drive this way";
  const std::string because = in_brackets(roads.text(piece.access_source));
  if ((roads.stretch(stretch).flags & road::stretch_flag::cut_off) != 0) {
    return "left out: it can't be driven into and out of";
  }
  if ((piece.flags & road::piece_flag::destination_only) != 0) {
    return "not for driving through" + because;
  }
  if ((piece.flags & road::piece_flag::no_access) != 0)
    return "closed to a learner's car" + because;
  if ((piece.flags & road::piece_flag::one_way) != 0 && roads.drivable(stretch.back())) {
    return "no: one-way the other way" + because;
  }
  return "no" + because;
}

void print_limit(std::ostream& out, const Here& here, StretchId stretch) {
  const road::LimitOnDay on_day = here.pace.limit(stretch);
  out << "    limit: "
      << (say::tells_limit(here.roads, stretch, on_day.confidence)
              ? limit(on_day) + ", " + std::string(road::name(on_day.confidence))
              : "none mapped on this service road: slowly")
      << in_brackets(here.roads.text(here.roads.stretch(stretch).limit.source)) << '\n';
}

void print_gradient(std::ostream& out, const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  const std::string_view source = roads.text(piece.gradient_source);
  if (source.empty()) return;
  const bool certain = (piece.flags & road::piece_flag::gradient_certain) != 0;
  const bool up = (piece.gradient_tenths > 0) != stretch.against();
  out << "    gradient: ";
  if (piece.gradient_tenths != 0) {
    out << (certain ? "" : "about ")
        << fixed(std::abs(piece.gradient_tenths) / 10.0, certain ? 1 : 0) << " % "
        << (up ? "up, " : "down, ")
        << road::name(certain ? road::Confidence::certain : road::Confidence::inferred);
  } else {
    const bool by_grid = source.find("elevation grid") != std::string_view::npos;
    out << (certain ? "level, certain" : by_grid ? "about level, inferred" : "not known how steep");
  }
  out << in_brackets(source) << '\n';
}

void print_bus_lanes(std::ostream& out, const Here& here, StretchId stretch) {
  const auto other = stretch.against() ? road::LaneDirection::along : road::LaneDirection::against;
  constexpr std::array sides{"unknown side", "left side", "right side"};
  for (const road::BusLane& lane : here.roads.bus_lanes_of(stretch.piece())) {
    if (lane.direction == other) continue;
    const std::string_view hours = here.roads.text(lane.hours);
    const auto judged = lanes::judge(hours, {here.start, here.start}, here.setting);
    out << "    bus lane, " << sides[static_cast<std::size_t>(lane.side)]
        << (lane.contraflow != 0 ? ", against the other traffic" : "") << ": "
        << (hours.empty() ? "hours not mapped" : hours::Timetable(hours).words()) << "; at "
        << write_clock(here.start) << " " << wish::name(judged.verdict)
        << in_brackets(here.roads.text(lane.source)) << '\n';
  }
}

void print_by_the_hour(std::ostream& out, const Here& here, StretchId stretch) {
  for (const road::TimedRule& rule : here.roads.timed_rules_of(stretch)) {
    out << "    by the hour: " << lanes::words_of(here.roads, rule)
        << in_brackets(here.roads.text(rule.source)) << '\n';
  }
}

void print_practice(std::ostream& out, const road::Roads& roads, StretchId stretch) {
  for (const road::RunFact& fact : roads.run_facts_of(stretch)) {
    out << "    " << road::name(fact.kind) << ", hardness " << int{fact.hardness} << ", "
        << road::name(fact.confidence) << ": " << roads.text(fact.tag) << '\n';
  }
  for (const road::Chance& chance : roads.chances_from(stretch)) {
    if (road::is_stretch_like(chance.kind)) continue;
    out << "    " << chance_text(roads, chance) << '\n';
  }
}

void print_direction(std::ostream& out, const Here& here, StretchId stretch) {
  constexpr std::array compass{"north", "north-east", "east", "south-east",
                               "south", "south-west", "west", "north-west"};
  const double bearing = road::bearing_out_deg(here.roads, stretch);
  const auto eighth = static_cast<std::size_t>((bearing + 22.5) / 45) % compass.size();
  out << "  heading " << compass[eighth] << ", " << (stretch.against() ? "against" : "along")
      << " the way: " << may_drive(here.roads, stretch) << '\n';
  if (!here.roads.drivable(stretch)) return;
  print_limit(out, here, stretch);
  print_by_the_hour(out, here, stretch);
  print_gradient(out, here.roads, stretch);
  print_practice(out, here.roads, stretch);
  print_bus_lanes(out, here, stretch);
  print_kerb_ban(out, here, stretch);
  print_pull_ups(out, here, stretch);
  for (const road::TurnRule& rule : here.roads.turn_rules) {
    if (here.roads.path_of(rule).front() != stretch) continue;
    out << "    " << rule_text(here.roads, rule) << '\n';
  }
}

}  // namespace

void print_road(std::ostream& out, const Here& here, PieceId piece_id) {
  const road::Roads& roads = here.roads;
  const road::Piece& piece = roads.pieces[piece_id.index()];
  out << road_name(roads, piece) << ": " << road::name(piece.road_class) << ", way/" << piece.way
      << ", " << fixed(piece.length_m, 0) << " m from node/" << roads.nodes[piece.a.index()].osm_id
      << " to node/" << roads.nodes[piece.b.index()].osm_id << '\n';
  print_width(out, roads, piece);
  if (piece.lanes > 0) out << "  lanes: " << int{piece.lanes} << '\n';
  print_flags(out, piece);
  for (const bool against : {false, true}) print_direction(out, here, StretchId(piece_id, against));
}

}  // namespace loopwright::command
