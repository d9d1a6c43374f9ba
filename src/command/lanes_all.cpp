// Method:
//   1. Each stretch with a lane or gate becomes a drive of that stretch alone, at the minute asked
//      for, so that room lanes judges it as it would on a lesson.
//   2. Rules on streets, limits and turns are asked for that minute.
//   3. A way has many pieces: of lines that say the same of one way one is kept. Sorted by street.
#include "command/lanes_all.hpp"

#include <ostream>
#include <set>
#include <tuple>

#include "command/facts.hpp"
#include "command/hours_place.hpp"
#include "command/lanes_words.hpp"
#include "command/print.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/lanes.hpp"
#include "loopwright/lanes/stopping.hpp"

namespace loopwright::command {
namespace {

using hours::Tri;

/// Street, object, text: the order of the list.
using Lines = std::set<std::tuple<std::string, std::int64_t, std::string>>;

class AllHours {
 public:
  AllHours(const road::Roads& roads, const Instant& at, const hours::Setting& setting)
      : roads_(roads), setting_(setting), at_(setting.on_clock(at)), clock_(roads, setting) {}

  Lines bus_lanes() {
    Lines lines;
    for (std::size_t piece = 0; piece < roads_.pieces.size(); ++piece)
      for (const bool against : {false, true}) add_lanes(lines, StretchId(PieceId{piece}, against));
    return lines;
  }

  Lines streets() {
    Lines lines;
    for (const road::TimedRule& rule : roads_.timed_rules) {
      if (rule.about != road::Timed::access) continue;
      const hours::Answer open = clock_.open(rule, minute());
      add(lines, rule, open.in_force == Tri::yes ? "may be driven" : "keep out" + reason(open));
    }
    return lines;
  }

  Lines limits() {
    Lines lines;
    for (const road::TimedRule& rule : roads_.timed_rules) {
      if (rule.about != road::Timed::limit) continue;
      const auto limit = lanes::limit_when(roads_, rule.stretch, minute(), setting_);
      std::string values;
      for (const std::string& value : limit.values)
        values += (values.empty() ? "" : " or ") + (value.empty() ? "the usual limit" : value);
      const std::string why = lanes::reason_words(limit.reason);
      add(lines, rule, values + (limit.settled() || why.empty() ? "" : " (" + why + ")"));
    }
    return lines;
  }

  Lines turns() {
    Lines lines;
    for (const road::TurnRule& rule : roads_.turn_rules) {
      if (roads_.text(rule.condition).empty()) continue;
      const auto path = roads_.path_of(rule);
      const hours::Answer binds = clock_.binds(rule, minute());
      const std::string verdict = binds.in_force == Tri::no    ? "not in force"
                                  : binds.in_force == Tri::yes ? "in force"
                                                               : "check the sign" + reason(binds);
      lines.insert({road_name(roads_, roads_.piece(path.front())), rule.relation,
                    "into " + road_name(roads_, roads_.piece(path.back())) + ", " +
                        lanes::words_of(roads_, rule) + ": " + verdict + "\n    by relation/" +
                        std::to_string(rule.relation)});
    }
    return lines;
  }

  Lines pull_ups() {
    Lines lines;
    for (const road::PullUp& place : roads_.pull_ups) {
      const std::string_view hours = roads_.text(place.hours);
      if (hours.empty()) continue;
      const auto judged = lanes::may_stop(roads_, place, {at_, at_}, setting_);
      const road::Piece& piece = roads_.piece(place.stretch);
      const std::string way = place.stretch.against() ? "against way/" : "along way/";
      lines.insert({road_name(roads_, piece), piece.way,
                    way + std::to_string(piece.way) + ", no stopping " +
                        hours::Timetable(hours).words() + ": " +
                        std::string(lanes::name(judged.verdict))});
    }
    return lines;
  }

 private:
  [[nodiscard]] lanes::Passing minute() const { return {at_, at_}; }

  static std::string reason(const hours::Answer& answer) {
    const std::string why = lanes::reason_words(answer.reason);
    return why.empty() ? "" : " (" + why + ")";
  }

  /// A lane on a road that cars never drive isn't ours at any hour.
  [[nodiscard]] bool never_ours(StretchId stretch) const {
    constexpr std::uint32_t legal = road::stretch_flag::drivable | road::stretch_flag::cut_off;
    const std::uint32_t either =
        roads_.stretch(stretch).flags | roads_.stretch(stretch.back()).flags;
    return (either & legal) == 0;
  }

  [[nodiscard]] std::string verdict_of(StretchId stretch, const wish::BusLanePass& lane) const {
    return never_ours(stretch) ? "keep out" : std::string(wish::name(lane.verdict));
  }

  [[nodiscard]] std::string why_of(StretchId stretch, const wish::BusLanePass& lane) const {
    if (!never_ours(stretch)) return lane.why.substr(0, lane.why.find("; you pass"));
    const std::string_view tag = roads_.text(roads_.piece(stretch).access_source);
    return "the road isn't for a learner's car to drive through" + in_brackets(tag);
  }

  void add_lanes(Lines& lines, StretchId stretch) {
    wish::Loop loop;
    loop.start = at_;
    loop.stretches.resize(1);
    loop.stretches[0].stretch = stretch;
    for (const auto& lane : lanes::bus_lanes_on(roads_, loop, setting_)) {
      const std::string why = why_of(stretch, lane);
      std::string text = lane_words(lane) + ": " + verdict_of(stretch, lane) +
                         "\n    in force: " + hours_words(lane);
      if (why != hours_words(lane)) text += "\n    why: " + why;
      if (!lane.doubt.empty() && lane.doubt != why) text += "\n    in doubt: " + lane.doubt;
      if (!lane.who.empty()) text += "\n    then for: " + users_words(lane.who);
      text += "\n    by " + lane.tag + " (" + object(lane.source) + ")";
      const road::Piece& piece = roads_.piece(stretch);
      lines.insert({road_name(roads_, piece), piece.way, std::move(text)});
    }
  }

  /// The same rule the other way along the road.
  [[nodiscard]] bool both_ways(const road::TimedRule& rule) const {
    for (const road::TimedRule& other : roads_.timed_rules_of(rule.stretch.back())) {
      if (other.about == rule.about && other.base == rule.base && other.text == rule.text)
        return true;
    }
    return false;
  }

  void add(Lines& lines, const road::TimedRule& rule, const std::string& verdict) {
    const road::Piece& piece = roads_.piece(rule.stretch);
    const std::string way = both_ways(rule)          ? " (way/"
                            : rule.stretch.against() ? " (against way/"
                                                     : " (along way/";
    lines.insert({road_name(roads_, piece), piece.way,
                  lanes::words_of(roads_, rule) + ": " + verdict + "\n    by " +
                      std::string(roads_.text(rule.source)) + way + std::to_string(piece.way) +
                      ")"});
  }

  const road::Roads& roads_;
  const hours::Setting& setting_;
  Instant at_;
  lanes::Clockwork clock_;
};

void print_lines(std::ostream& out, std::string_view head, const Lines& lines) {
  out << head << ": " << lines.size() << '\n';
  for (const auto& [street, object, text] : lines) out << "  " << street << ", " << text << '\n';
}

}  // namespace

void print_all(std::ostream& out, const road::Roads& roads, const Instant& at,
               const hours::Setting& setting) {
  AllHours all(roads, at, setting);
  const Instant there = setting.on_clock(at);
  const std::string_view holiday = setting.bank_holiday_name(there.civil().date);
  out << spoken_moment(there) << (holiday.empty() ? "" : ", ") << holiday << '\n';
  print_lines(out, "Bus lanes and bus gates", all.bus_lanes());
  print_lines(out, "Streets with hours", all.streets());
  print_lines(out, "Limits with hours", all.limits());
  print_lines(out, "Turns with hours", all.turns());
  print_lines(out, "Kerbs with hours", all.pull_ups());
}

}  // namespace loopwright::command
