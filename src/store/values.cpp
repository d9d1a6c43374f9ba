// 1. number_fault: each field of an enumeration against the last value of it; they all begin at 0
//    and leave no number out. Sets of kinds against the number of kinds.
// 2. length_fault: each floating-point field is finite.
#include "store/values.hpp"

#include <cmath>
#include <type_traits>

#include "store/rows.hpp"

namespace loopwright::store {
namespace {

constexpr road::RoadClass last(road::RoadClass) {
  return road::RoadClass::road;
}
constexpr road::Control last(road::Control) {
  return road::Control::barrier;
}
constexpr road::Kind last(road::Kind) {
  return road::Kind::independent_stretch;
}
constexpr road::Movement last(road::Movement) {
  return road::Movement::round;
}
constexpr road::Confidence last(road::Confidence) {
  return road::Confidence::noted;
}
constexpr road::LimitRule last(road::LimitRule) {
  return road::LimitRule::walk;
}
constexpr road::LimitConfidence last(road::LimitConfidence) {
  return road::LimitConfidence::noted;
}
constexpr road::Timed last(road::Timed) {
  return road::Timed::gate;
}
constexpr road::Idle last(road::Idle) {
  return road::Idle::unread;
}
constexpr road::LaneSide last(road::LaneSide) {
  return road::LaneSide::right;
}
constexpr road::LaneDirection last(road::LaneDirection) {
  return road::LaneDirection::unknown;
}
constexpr road::LandmarkKind last(road::LandmarkKind) {
  return road::LandmarkKind::library;
}
constexpr SpeedUnit last(SpeedUnit) {
  return SpeedUnit::kmh;
}
constexpr ObjectType last(ObjectType) {
  return ObjectType::relation;
}

template <class Enum>
constexpr bool is_value(Enum value) {
  using Number = std::underlying_type_t<Enum>;
  static_assert(std::is_unsigned_v<Number>);
  return static_cast<Number>(value) <= static_cast<Number>(last(value));
}

template <class... Enums>
constexpr bool are_values(Enums... values) {
  return (is_value(values) && ...);
}

bool are_finite(double a, double b = 0, double c = 0) {
  return std::isfinite(a) && std::isfinite(b) && std::isfinite(c);
}

bool are_kinds(std::uint64_t set) {
  static_assert(road::kind_count < 64);
  return set >> road::kind_count == 0;
}

bool has_values(const road::Piece& p) {
  return is_value(p.road_class);
}
bool has_values(const road::Stretch& s) {
  return are_values(s.limit.rule, s.limit.confidence, s.limit.unit) && are_kinds(s.runs);
}
bool has_values(const road::Turn& t) {
  return is_value(t.control);
}
bool has_values(const road::Place& p) {
  return are_values(p.source.type, p.kind);
}
bool has_values(const road::Chance& c) {
  return are_values(c.kind, c.movement, c.confidence, c.source.type);
}
bool has_values(const road::RunFact& f) {
  return are_values(f.kind, f.confidence);
}
bool has_values(const road::TimedRule& r) {
  return is_value(r.about);
}
bool has_values(const road::IdleRule& r) {
  return are_values(r.source.type, r.why);
}
bool has_values(const road::BusLane& lane) {
  return are_values(lane.direction, lane.side);
}
bool has_values(const road::PullUp& p) {
  return is_value(p.confidence);
}
bool has_values(const road::Landmark& mark) {
  return is_value(mark.kind);
}
bool has_values(const road::NamedSpot& spot) {
  return is_value(spot.source.type);
}

bool has_lengths(const road::Piece& p) {
  return are_finite(p.length_m, p.width_m, p.usable_width_m);
}
bool has_lengths(const road::Place& p) {
  return are_finite(p.diameter_m, p.length_m);
}
bool has_lengths(const road::PullUp& p) {
  return are_finite(p.from_m, p.to_m);
}
bool has_lengths(const road::Landmark& mark) {
  return are_finite(mark.reach_m);
}

/// What has neither an enumeration nor a length in its rows is passed over.
Fault number_fault(const Columns& c) {
  FirstFault first;
  road::for_each_column(c, [&first](std::string_view name, const auto& column) {
    using Row = std::remove_cvref_t<decltype(column[0])>;
    if constexpr (requires(const Row& row) { has_values(row); }) {
      first.note(bad_row(name, column, "holds a number that stands for nothing",
                         [](const Row& row) { return has_values(row); }));
    }
  });
  return first.fault();
}

Fault length_fault(const Columns& c) {
  FirstFault first;
  road::for_each_column(c, [&first](std::string_view name, const auto& column) {
    using Row = std::remove_cvref_t<decltype(column[0])>;
    if constexpr (requires(const Row& row) { has_lengths(row); }) {
      first.note(bad_row(name, column, "holds a length that is no number",
                         [](const Row& row) { return has_lengths(row); }));
    }
  });
  return first.fault();
}

}  // namespace

Fault value_fault(const Columns& columns) {
  FirstFault first;
  first.note(number_fault(columns));
  first.note(length_fault(columns));
  return first.fault();
}

}  // namespace loopwright::store
