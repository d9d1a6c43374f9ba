// 1. Lanes and gates come from bus_lanes_on, streets and limits from rules_met, turns from turns_met;
//    the list is sorted by the row at which each is met.
// 2. Of a street its values are turned round: when it is shut is what keeps us out.
#include "loopwright/lanes/timed_things.hpp"

#include <algorithm>

#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/lanes.hpp"

namespace loopwright::lanes {
namespace {

/// "on the left, lane 1 of 3 from the left"; of the only lane there is nothing to say.
std::string place_words(const wish::BusLanePass& lane) {
  std::string text;
  if (lane.side == "left" || lane.side == "right") text = "on the " + lane.side;
  if (lane.lane == 0 || lane.lanes < 2) return text;
  return text + (text.empty() ? "lane " : ", lane ") + std::to_string(lane.lane) + " of " +
         std::to_string(lane.lanes) + " from the left";
}

std::string timetable_words(const std::string& hours) {
  if (hours.empty()) return "hours not mapped";
  const hours::Timetable read(hours);
  return read.readable() ? read.words() : "hours that can't be read";
}

/// When a street is shut, as a text of hours::Timetable: its values the other way round.
std::string shut_hours(const road::Roads& roads, const road::TimedRule& rule) {
  const auto read = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
  std::string text = read.base() == "yes" ? "" : "yes @ (24/7)";
  for (const hours::Conditional::Row& row : read.rows())
    text += std::string(text.empty() ? "" : "; ") + (row.value == "yes" ? "no" : "yes") + " @ (" +
            row.condition.text() + ")";
  return text;
}

void add_lanes(std::vector<TimedThing>& things, const TimedDrive& drive) {
  for (const auto& lane : bus_lanes_on(drive.roads, drive.loop, drive.setting)) {
    things.push_back(thing_of_lane(drive.loop, lane));
  }
}

void add_rules(std::vector<TimedThing>& things, const TimedDrive& drive, road::Timed about) {
  for (const RuleMet& met : rules_met(drive.roads, drive.loop, about)) {
    things.push_back(thing_of_rule(drive.roads, *met.rule));
    things.back().rows = met.rows;
  }
}

void add_turns(std::vector<TimedThing>& things, const TimedDrive& drive) {
  for (const TurnMet& met : turns_met(drive.roads, drive.loop)) {
    TimedThing thing = thing_of_turn(drive.roads, *met.rule);
    const auto street = [&](std::size_t row) {
      return street_name(drive.roads, drive.loop.stretches[row].stretch);
    };
    // An "only" forbids what is turned into, not where it leads.
    thing.street = street(met.at - 1) + " into " + street(met.at);
    thing.rows = {met.first, met.at};
    things.push_back(std::move(thing));
  }
}

}  // namespace

std::string street_name(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  const std::string_view name = roads.text(piece.name), ref = roads.text(piece.ref);
  if (name.empty() && ref.empty()) return "unnamed road";
  return std::string(name.empty() ? ref : name);
}

TimedThing thing_of_lane(const wish::Loop& loop, const wish::BusLanePass& lane) {
  TimedThing thing;
  thing.thing = thing_of(lane);
  thing.rows = {lane.first, lane.last};
  const std::string& street = loop.stretches[lane.first].street;
  thing.street = street.empty() ? "unnamed road" : street;
  thing.place = place_words(lane);
  thing.shut = lane.hours.value_or("");
  thing.words = timetable_words(thing.shut);
  if (thing.thing == Thing::contraflow_lane) thing.never = "it runs against the other traffic";
  thing.doubt = lane.doubt;
  thing.who = lane.who;
  const bool told = lane.doubt_tags.find(lane.tag) != std::string::npos;
  thing.map_text = told ? lane.doubt_tags : lane.tag;
  if (!told && !lane.doubt_tags.empty()) thing.map_text += "; " + lane.doubt_tags;
  thing.source = lane.source;
  return thing;
}

TimedThing thing_of_rule(const road::Roads& roads, const road::TimedRule& rule) {
  TimedThing thing;
  thing.thing = thing_of(rule.about);
  thing.street = street_name(roads, rule.stretch);
  thing.words = words_of(roads, rule);
  if (rule.about == road::Timed::limit) {
    thing.base = roads.text(rule.base);
    thing.values = roads.text(rule.text);
  } else {
    thing.shut = shut_hours(roads, rule);
  }
  thing.who = roads.text(rule.who);
  thing.map_text = roads.text(rule.source);
  thing.source = {roads.piece(rule.stretch).way, ObjectType::way, {}};
  return thing;
}

TimedThing thing_of_turn(const road::Roads& roads, const road::TurnRule& rule) {
  TimedThing thing;
  thing.thing = Thing::turn;
  const auto path = roads.path_of(rule);
  thing.street = street_name(roads, path.front()) + " into " + street_name(roads, path.back());
  thing.words = words_of(roads, rule);
  thing.shut = roads.text(rule.condition);
  thing.map_text = roads.text(rule.text);
  thing.source = {rule.relation, ObjectType::relation, {}};
  return thing;
}

Told told_of(const TimedThing& thing) {
  const Thing kind = thing.thing == Thing::bus_only_street ? Thing::bus_gate : thing.thing;
  const bool lane = kind == Thing::bus_lane || kind == Thing::contraflow_lane;
  return {kind,      thing.street, thing.place, thing.words,
          thing.who, thing.doubt,  thing.never, lane ? "" : thing.map_text};
}

std::vector<TimedThing> things_on(const TimedDrive& drive) {
  std::vector<TimedThing> things;
  add_lanes(things, drive);
  add_rules(things, drive, road::Timed::access);
  add_turns(things, drive);
  add_rules(things, drive, road::Timed::limit);
  std::ranges::stable_sort(things, {}, [](const TimedThing& thing) { return thing.rows.first; });
  return things;
}

Passing passing_of(const TimedThing& thing, const wish::Loop& loop, const hours::Setting& setting) {
  if (thing.thing != Thing::turn) return passing_of(loop, thing.rows, setting);
  return at_turn(loop, TurnMet{thing.rows.first, thing.rows.last, nullptr}, setting);
}

}  // namespace loopwright::lanes
