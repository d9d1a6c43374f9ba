// Areas with right checksums and row numbers, and with a value somewhere that stands for nothing.
#include <catch2/catch.hpp>
#include <cstddef>
#include <limits>
#include <string>

#include "store/area_trial.hpp"
#include "store/forged.hpp"

namespace loopwright {
namespace {

using test::Trial;

const std::string advice = "; build it again with 'loopwright build'";

/// An area with a row in every column that has an enumeration or a length in it.
std::string full_area() {
  road::Tables tables = test::tiny_tables();
  tables.places.resize(1);
  tables.places[0].name = TextId{0};
  tables.place_node_first = tables.place_piece_first = {0, 0};
  tables.chances.resize(1);
  tables.chances[0].place = PlaceId{0};
  tables.chances[0].entry = tables.chances[0].exit = StretchId{0};
  tables.run_facts.resize(1);
  tables.run_facts[0].stretch = StretchId{0};
  tables.run_facts[0].place = PlaceId{0};
  tables.timed_rules.resize(1);
  tables.timed_rules[0].stretch = StretchId{0};
  tables.idle_rules.resize(1);
  tables.idle_rules[0].stretch = StretchId{0};
  tables.bus_lanes.resize(1);
  tables.bus_lanes[0].piece = PieceId{0};
  tables.pull_ups.resize(1);
  tables.pull_ups[0].stretch = StretchId{0};
  tables.landmarks.resize(1);
  tables.named_spots.resize(1);
  const test::ScratchFolder folder;
  store::write_area(folder / "n.area", tables, test::tiny_info());
  return test::read_bytes(folder / "n.area");
}

/// Verifying it when a field of a section's first row is replaced and everything signed again.
template <class Number>
std::string with(std::string_view section, std::size_t field, Number number) {
  std::string bytes = full_area();
  test::put(bytes, test::offset_of(bytes, section) + field, number);
  return Trial(test::signed_again(bytes)).verifying();
}

struct Field {
  std::string section;
  std::size_t at;
  unsigned last;  ///< of its enumeration
};

template <class Enum>
constexpr unsigned number(Enum value) {
  return static_cast<unsigned>(value);
}

constexpr auto type_at = offsetof(OsmObject, type);
constexpr auto limit_at = offsetof(road::Stretch, limit);
constexpr unsigned relation = number(ObjectType::relation);
constexpr unsigned noted = number(road::Confidence::noted);
constexpr unsigned last_kind = road::kind_count - 1;

const Field fields[] = {
    {"pieces", offsetof(road::Piece, road_class), number(road::RoadClass::road)},
    {"stretches", limit_at + offsetof(road::LimitFact, rule), number(road::LimitRule::walk)},
    {"stretches", limit_at + offsetof(road::LimitFact, confidence),
     number(road::LimitConfidence::noted)},
    {"stretches", limit_at + offsetof(road::LimitFact, unit), number(SpeedUnit::kmh)},
    {"turns", offsetof(road::Turn, control), road::control_count - 1},
    {"places", offsetof(road::Place, source) + type_at, relation},
    {"places", offsetof(road::Place, kind), last_kind},
    {"chances", offsetof(road::Chance, kind), last_kind},
    {"chances", offsetof(road::Chance, movement), number(road::Movement::round)},
    {"chances", offsetof(road::Chance, confidence), noted},
    {"chances", offsetof(road::Chance, source) + type_at, relation},
    {"run_facts", offsetof(road::RunFact, kind), last_kind},
    {"run_facts", offsetof(road::RunFact, confidence), noted},
    {"timed_rules", offsetof(road::TimedRule, about), number(road::Timed::gate)},
    {"idle_rules", offsetof(road::IdleRule, source) + type_at, relation},
    {"idle_rules", offsetof(road::IdleRule, why), number(road::Idle::unread)},
    {"bus_lanes", offsetof(road::BusLane, direction), number(road::LaneDirection::unknown)},
    {"bus_lanes", offsetof(road::BusLane, side), number(road::LaneSide::right)},
    {"pull_ups", offsetof(road::PullUp, confidence), noted},
    {"landmarks", offsetof(road::Landmark, kind), number(road::LandmarkKind::library)},
    {"named_spots", offsetof(road::NamedSpot, source) + type_at, relation},
};

TEST_CASE("verifying an area finds numbers that stand for nothing", "[store]") {
  for (const auto& [section, at, last] : fields) {
    CAPTURE(section, at);
    CHECK(with(section, at, static_cast<std::uint8_t>(last)) == "nothing");
    const std::string refused =
        "row 0 of '" + section + "' holds a number that stands for nothing" + advice;
    CHECK(with(section, at, static_cast<std::uint8_t>(last + 1)) == refused);
    CHECK(with(section, at, std::uint8_t{255}) == refused);
  }
}

TEST_CASE("verifying an area finds a stretch of kinds that there are not", "[store]") {
  const std::size_t runs = offsetof(road::Stretch, runs);
  CHECK(with("stretches", runs, std::uint64_t{1} << last_kind) == "nothing");
  CHECK(with("stretches", runs, std::uint64_t{1} << road::kind_count) ==
        "row 0 of 'stretches' holds a number that stands for nothing" + advice);
}

TEST_CASE("verifying an area finds lengths that are no number", "[store]") {
  const std::string refused = "' holds a length that is no number" + advice;
  const double endless = std::numeric_limits<double>::infinity();
  CHECK(with("pieces", offsetof(road::Piece, length_m), endless) == "row 0 of 'pieces" + refused);
  const std::pair<std::string, std::size_t> lengths[] = {
      {"pieces", offsetof(road::Piece, width_m)},
      {"pieces", offsetof(road::Piece, usable_width_m)},
      {"places", offsetof(road::Place, diameter_m)},
      {"places", offsetof(road::Place, length_m)},
      {"pull_ups", offsetof(road::PullUp, from_m)},
      {"pull_ups", offsetof(road::PullUp, to_m)},
      {"landmarks", offsetof(road::Landmark, reach_m)},
  };
  for (const auto& [section, at] : lengths) {
    CAPTURE(section, at);
    CHECK(with(section, at, 7.5F) == "nothing");
    CHECK(with(section, at, std::numeric_limits<float>::quiet_NaN()) ==
          "row 0 of '" + section + refused);
  }
}

}  // namespace
}  // namespace loopwright
