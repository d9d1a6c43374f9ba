// Method:
//   1. Room lanes lists what has hours, each thing once; here it is told section by section, with
//      what to read on the signs once at the head of each.
//   2. Kerbs where waiting is forbidden at some hours are told by street and hours. A bus lane along
//      a kerb is told as a lane.
//   3. Of conditions that give a learner's car no rule it is said why, so that none is missed.
#include "command/lanes_all.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <ostream>
#include <set>
#include <tuple>

#include "command/facts.hpp"
#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/lanes_words.hpp"
#include "command/print.hpp"
#include "loopwright/lanes/door_kerb.hpp"

namespace loopwright::command {
namespace {

using lanes::AreaThing;
using lanes::Thing;
using lanes::ThingVerdict;

using Pieces = std::set<PieceId>;

/// None: every piece counts.
std::optional<Pieces> pieces_of(const road::Roads& roads, const Around& around) {
  if (around.places.empty()) return std::nullopt;
  Pieces near;
  for (const Point place : around.places) {
    for (const PieceId piece : road::pieces_near(roads, place, around.within_m))
      if (nearest_on_line(roads.shape_of(piece), place).off_m <= around.within_m)
        near.insert(piece);
  }
  return near;
}

std::vector<AreaThing> things_around(const road::Roads& roads, const hours::Setting& setting,
                                     const std::optional<Pieces>& near) {
  std::vector<AreaThing> things = lanes::things_in(roads, setting);
  std::erase_if(things, [&](const AreaThing& one) {
    return near && std::ranges::none_of(one.stretches, [&](StretchId stretch) {
             return near->contains(stretch.piece());
           });
  });
  return things;
}

/// "way/12 and two more, 350 m", "relation/7".
std::string objects_words(const AreaThing& one) {
  std::string text = object(one.thing.source);
  if (one.ways.size() > 1) text += " and " + std::to_string(one.ways.size() - 1) + " more";
  return one.length_m > 0 ? text + ", " + fixed(one.length_m, 0) + " m" : text;
}

class AllHours {
 public:
  AllHours(const road::Roads& roads, const Instant& at, const hours::Setting& setting,
           const std::optional<Pieces>& near)
      : roads_(roads),
        setting_(setting),
        at_(setting.on_clock(at)),
        near_(near),
        things_(things_around(roads, setting, near)) {}

  void print(std::ostream& out) const {
    print_section(out, "Bus lanes", {Thing::bus_lane, Thing::contraflow_lane});
    print_section(out, "Bus gates and bus-only streets", {Thing::bus_gate, Thing::bus_only_street});
    print_section(out, "Streets shut at some hours", {Thing::street});
    print_section(out, "Turns forbidden at some hours", {Thing::turn});
    print_section(out, "Speed limits by the hour", {Thing::limit});
    const bool kerbs = print_kerbs(out), others = print_others(out);
    if (things_.empty() && !kerbs && !others)
      print_folded(out, 2, "nothing here has hours, as far as it is mapped");
  }

 private:
  void print_section(std::ostream& out, std::string_view title,
                     const std::vector<Thing>& kinds) const {
    std::vector<const AreaThing*> listed;
    for (const AreaThing& one : things_)
      if (std::ranges::find(kinds, one.thing.thing) != kinds.end()) listed.push_back(&one);
    if (listed.empty()) return;
    out << title << ": " << listed.size() << '\n';
    print_folded(out, 2, "read there: " + std::string(lanes::sign_words(kinds.front())));
    for (const AreaThing* one : listed) print_thing(out, *one);
  }

  void print_thing(std::ostream& out, const AreaThing& one) const {
    const ThingVerdict verdict = lanes::verdict_on(one.thing, {at_, at_}, setting_);
    print_folded(out, 2,
                 thing_head(one.thing, lanes::heading_words(roads_, one)) + ": " +
                     lanes::verdict_words(one.thing, verdict));
    print_folded(out, set_in, hours_line(one.thing));
    if (!verdict.because.empty()) print_folded(out, set_in, "because " + verdict.because);
    if (one.thing.never.empty())
      print_folded(out, set_in, next_change_line(one.thing, at_, setting_));
    print_known(out, one.thing, objects_words(one));
  }

  [[nodiscard]] bool is_near(StretchId stretch) const {
    return !near_ || near_->contains(stretch.piece());
  }

  /// Kerbs of one street of which the same is told: the ban, the map text, the verdict.
  using Kerbs = std::map<std::array<std::string, 4>, std::set<std::int64_t>>;

  [[nodiscard]] Kerbs kerbs_with_hours() const {
    Kerbs kerbs;
    for (const road::KerbBan& ban : roads_.kerb_bans) {
      if (roads_.text(ban.hours) == "24/7" || !is_near(ban.stretch)) continue;
      const auto judged = lanes::judge_ban(roads_, ban, {at_, at_}, at_, setting_);
      const road::Piece& piece = roads_.piece(ban.stretch);
      kerbs[{road_name(roads_, piece), lanes::ban_words(roads_, ban),
             std::string(roads_.text(ban.source)), judged.state}]
          .insert(piece.way);
    }
    return kerbs;
  }

  /// Whether there is any.
  bool print_kerbs(std::ostream& out) const {
    const Kerbs kerbs = kerbs_with_hours();
    if (kerbs.empty()) return false;
    out << "Kerbs with a ban at some hours: " << kerbs.size() << '\n';
    for (const auto& [told, ways] : kerbs) {
      const auto& [street, ban, map_text, state] = told;
      print_folded(out, 2, street + ", kerb: " + state);
      print_folded(out, set_in, ban);
      print_folded(out, set_in, "on the map: " + ways_words(ways) + "; map text: " + map_text);
    }
    return true;
  }

  /// "way/12 and two more"
  static std::string ways_words(const std::set<std::int64_t>& ways) {
    const std::string first = "way/" + std::to_string(*ways.begin());
    return ways.size() == 1 ? first : first + " and " + std::to_string(ways.size() - 1) + " more";
  }

  /// Whether a learner may drive the road at all, in either direction.
  [[nodiscard]] bool drivable(StretchId stretch) const {
    return roads_.drivable(stretch) || roads_.drivable(stretch.back());
  }

  /// "not about your car, it is about cycles"
  static std::string others_words(std::string_view tag) {
    constexpr std::array<std::string_view, 8> known{"bicycle", "bus", "foot",      "hgv",
                                                    "horse",   "psv", "maxweight", "taxi"};
    const std::string_view key = tag.substr(0, tag.find(':'));
    if (std::ranges::find(known, key) == known.end()) return "not about your car";
    return "not about your car, it is about " + users_words(key);
  }

  [[nodiscard]] std::string idle_words(const road::IdleRule& rule) const {
    switch (rule.why) {
      case road::Idle::others:
        return others_words(roads_.text(rule.tag));
      case road::Idle::unread:
        return "not read by this program, look for the sign";
      case road::Idle::same:
        break;
    }
    if (!drivable(rule.stretch)) return "keep out at all hours, the hours are for others";
    if (roads_.text(rule.tag).starts_with("parking"))
      return "about parking: no place to pull up there hangs on it";
    return "the same for your car at all hours";
  }

  bool print_others(std::ostream& out) const {
    std::map<std::tuple<std::string, std::string, std::string>, std::set<OsmObject>> others;
    for (const road::IdleRule& rule : roads_.idle_rules) {
      if (!is_near(rule.stretch)) continue;
      others[{road_name(roads_, roads_.piece(rule.stretch)), std::string(roads_.text(rule.tag)),
              idle_words(rule)}]
          .insert(rule.source);
    }
    if (others.empty()) return false;
    out << "Other conditions on the map: " << others.size() << '\n';
    for (const auto& [told, sources] : others) {
      const auto& [street, tag, why] = told;
      print_folded(out, 2, street + ": " + why);
      print_folded(
          out, set_in,
          "on the map: " + object(*sources.begin()) +
              (sources.size() > 1 ? " and " + std::to_string(sources.size() - 1) + " more" : "") +
              "; map text: " + tag);
    }
    return true;
  }

  const road::Roads& roads_;
  const hours::Setting& setting_;
  Instant at_;
  const std::optional<Pieces>& near_;
  std::vector<AreaThing> things_;
};

}  // namespace

void print_all(std::ostream& out, const road::Roads& roads, const Instant& at,
               const hours::Setting& setting, const Around& around) {
  const std::optional<Pieces> near = pieces_of(roads, around);
  const Instant there = setting.on_clock(at);
  const std::string_view holiday = setting.bank_holiday_name(there.civil().date);
  out << spoken_moment(there) << (holiday.empty() ? "" : ", ") << holiday << '\n';
  AllHours(roads, at, setting, near).print(out);
}

std::vector<DayRow> rows_around(const road::Roads& roads, const hours::Setting& setting,
                                const Around& around) {
  std::vector<DayRow> rows;
  for (AreaThing& one : things_around(roads, setting, pieces_of(roads, around))) {
    std::string name = thing_head(one.thing, lanes::heading_words(roads, one));
    rows.push_back({std::move(name), std::move(one.thing)});
  }
  return rows;
}

}  // namespace loopwright::command
