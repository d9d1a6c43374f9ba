// Method:
//   1. Rings and mini-roundabouts are told one after another, by the map object that says so.
//   2. Each arm gets a number in the order in which the ring is driven, with its bearing from the
//      middle, its street, and what traffic may do there.
//   3. From each arm the exits follow in the order they are passed, numbered as the signs count:
//      public roads one may leave by. What no lesson may take is told by its number alone.
#include <algorithm>
#include <ostream>
#include <span>

#include "command/facts.hpp"
#include "command/look_facts.hpp"
#include "command/print.hpp"

namespace loopwright::command {
namespace {

bool is_round(road::Kind kind) {
  return kind == road::Kind::roundabout || kind == road::Kind::multi_lane_roundabout ||
         kind == road::Kind::signal_roundabout || kind == road::Kind::mini_roundabout ||
         kind == road::Kind::double_mini;
}

class Ring {
 public:
  Ring(const road::Roads& roads, PlaceId id)
      : roads_(roads), place_(roads.places[id.index()]), arms_(arms_of(roads, place_)) {
    for (const road::Chance& chance : roads.chances)
      if (chance.place == id) chances_.push_back(&chance);
  }

  void print(std::ostream& out) const {
    print_head(out);
    for (std::size_t arm = 0; arm < arms_.size(); ++arm) print_arm(out, arm);
    for (std::size_t arm = 0; arm < arms_.size(); ++arm) print_exits(out, arm);
    print_further_ways(out);
  }

 private:
  static std::span<const road::Arm> arms_of(const road::Roads& roads, const road::Place& place) {
    return std::span(roads.arms).subspan(place.arm_first, place.arms);
  }

  void print_head(std::ostream& out) const {
    out << object(place_.source) << " " << road::name(place_.kind);
    const std::string_view name = roads_.text(place_.name);
    if (!name.empty()) out << ", " << name;
    out << ", at " << degrees(place_.at);
    if (place_.diameter_m > 0) out << ", " << fixed(place_.diameter_m, 0) << " m across";
    if (place_.lanes > 0) out << ", " << int{place_.lanes} << " lanes";
    out << ", " << arms_.size() << (arms_.size() == 1 ? " arm" : " arms");
    if (!chances_.empty()) {
      const road::Chance& chance = *chances_.front();
      out << ": " << roads_.text(chance.tag) << " (" << object(chance.source) << ")";
    }
    out << '\n';
  }

  std::string street(std::size_t arm) const {
    const StretchId any = arms_[arm].out.known() ? arms_[arm].out : arms_[arm].in;
    return road_name(roads_, roads_.piece(any));
  }

  std::string way(StretchId stretch) const {
    return "way/" + std::to_string(roads_.piece(stretch).way);
  }

  void print_arm(std::ostream& out, std::size_t at) const {
    const road::Arm& arm = arms_[at];
    const std::string bearing = std::to_string(arm.bearing_deg);
    out << "  arm " << at + 1 << std::string(5 - bearing.size(), ' ') << bearing << "°  "
        << street(at);
    out << ", " << (arm.in.known() ? "in by " + way(arm.in) : "way out only");
    out << ", " << (arm.can_leave != 0 ? "out by " + way(arm.out) : "way in only");
    if (arm.is_public == 0) out << ", not counted by the signs";
    out << '\n';
  }

  /// One line: the exits from an arm, in the order they are passed.
  void print_exits(std::ostream& out, std::size_t from) const {
    const StretchId in = arms_[from].in;
    if (!in.known()) return;
    out << "  from " << from + 1 << ": ";
    if (std::ranges::count(chances_, in, &road::Chance::entry) == 0) {
      out << "not driven\n";
      return;
    }
    const char* between = "";
    int number = 0;
    for (std::size_t step = 1; step <= arms_.size(); ++step) {
      const std::size_t to = (from + step) % arms_.size();
      const bool counted = arms_[to].is_public != 0 && arms_[to].can_leave != 0;
      if (counted) ++number;
      const bool turns_back = to == from && place_.diameter_m == 0;  // at a mini nobody does
      if (arms_[to].can_leave == 0 || turns_back) continue;
      out << between << (counted ? "exit " + std::to_string(number) : "uncounted")
          << way_taken(in, arms_[to].out) << " into " << to + 1 << " " << street(to);
      between = "; ";
    }
    out << '\n';
  }

  /// " left", or that no lesson goes there.
  std::string way_taken(StretchId in, StretchId out) const {
    for (const road::Chance* chance : chances_)
      if (chance->entry == in && chance->exit == out)
        return " " + std::string(road::name(chance->movement));
    return " (not driven)";
  }

  /// Ways in or out beside the first of an arm, as where a road forks before the ring.
  void print_further_ways(std::ostream& out) const {
    for (const road::Chance* chance : chances_) {
      const bool told = std::ranges::count(arms_, chance->entry, &road::Arm::in) > 0 &&
                        std::ranges::count(arms_, chance->exit, &road::Arm::out) > 0;
      if (told) continue;
      out << "  also " << way(chance->entry) << " to " << way(chance->exit) << ": "
          << practice_name(*chance) << " into " << road_name(roads_, roads_.piece(chance->exit))
          << '\n';
    }
  }

  const road::Roads& roads_;
  const road::Place& place_;
  std::span<const road::Arm> arms_;
  std::vector<const road::Chance*> chances_;
};

}  // namespace

void print_rings(std::ostream& out, const road::Roads& roads) {
  std::vector<PlaceId> rings;
  for (std::size_t row = 0; row < roads.places.size(); ++row)
    if (is_round(roads.places[row].kind)) rings.emplace_back(row);
  std::ranges::stable_sort(rings, {}, [&](PlaceId id) { return roads.places[id.index()].source; });
  for (const PlaceId id : rings) Ring(roads, id).print(out);
}

}  // namespace loopwright::command
