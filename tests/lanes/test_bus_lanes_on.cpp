#include <catch2/catch.hpp>

#include "loopwright/lanes/lanes.hpp"

namespace loopwright {
namespace {

using road::LaneDirection;
using road::LaneSide;
using wish::Verdict;

/// Pieces one after the other, all drawn in the direction driven, some with bus lanes; the loop
/// drives each in a minute, give or take ten seconds, from Saturday 28 November 2026 15:00.
class Street {
 public:
  Street() { tables_.text_first = {0, 0}; }
  Street& piece() {
    road::Piece piece;
    piece.way = 100 + static_cast<std::int64_t>(tables_.pieces.size());
    tables_.pieces.push_back(piece);
    tables_.stretches.resize(2 * tables_.pieces.size());
    wish::LoopStretch row;
    row.way = piece.way;
    row.stretch = StretchId(PieceId{tables_.pieces.size() - 1}, false);
    const double likely = 60.0 * static_cast<double>(loop_.stretches.size());
    row.arrive_s = {likely - 10, likely, likely + 10};
    loop_.stretches.push_back(row);
    loop_.seconds = {likely + 50, likely + 60, likely + 70};
    loop_.stretches.front().arrive_s = {0, 0, 0};
    return *this;
  }
  Street& lane(std::string_view hours, LaneSide side = LaneSide::left,
               LaneDirection direction = LaneDirection::along) {
    road::BusLane lane;
    lane.piece = PieceId{tables_.pieces.size() - 1};
    lane.direction = direction;
    lane.side = side;
    lane.hours = text(hours);
    lane.source = text("lanes:bus:conditional=1 @ (" + std::string(hours) + ")");
    tables_.bus_lanes.push_back(lane);
    return *this;
  }
  Street& doubtful() {
    tables_.bus_lanes.back().doubtful = 1;
    return *this;
  }
  Street& contraflow() {
    tables_.bus_lanes.back().contraflow = 1;
    tables_.bus_lanes.back().direction = LaneDirection::against;
    return *this;
  }
  /// The last piece is driven against the direction it is drawn in.
  Street& against() {
    loop_.stretches.back().stretch = loop_.stretches.back().stretch.back();
    loop_.stretches.back().against = true;
    return *this;
  }
  Street& zone(std::string_view name) {
    info_.zone = name;
    return *this;
  }
  [[nodiscard]] std::vector<wish::BusLanePass> passed() const {
    return lanes::bus_lanes_on(road::view_of(tables_, info_), loop_,
                               hours::Setting("GB-ENG", info_.zone, {}));
  }
  /// Verdict and sentence of the only lane.
  [[nodiscard]] std::string told() const {
    const auto lanes = passed();
    REQUIRE(lanes.size() == 1);
    return std::string(wish::name(lanes[0].verdict)) + ": " + lanes[0].why;
  }
  wish::Loop& loop() { return loop_; }

 private:
  TextId text(std::string_view text) {
    if (text.empty()) return TextId{0};
    tables_.text_bytes.insert(tables_.text_bytes.end(), text.begin(), text.end());
    tables_.text_first.push_back(static_cast<std::uint32_t>(tables_.text_bytes.size()));
    return TextId{tables_.text_first.size() - 2};
  }
  road::Tables tables_;
  road::AreaInfo info_;
  wish::Loop loop_ = [] {
    wish::Loop loop;
    loop.start = {civil_seconds({{2026, 11, 28}, 15, 0, 0}), 0};
    return loop;
  }();
};

const std::string afternoon = "Mo-Sa 16:00-19:00";

TEST_CASE("a drive without bus lanes passes none", "[lanes]") {
  CHECK(Street().passed().empty());
  CHECK(Street().piece().piece().passed().empty());
}

TEST_CASE("a bus lane is told with its side, hours, times and what says so", "[lanes]") {
  const auto lanes = Street().piece().piece().lane(afternoon).piece().passed();
  REQUIRE(lanes.size() == 1);
  const wish::BusLanePass& lane = lanes[0];
  CHECK(lane.first == 1);
  CHECK(lane.last == 1);
  CHECK(lane.side == "left");
  CHECK(lane.hours == afternoon);
  CHECK(lane.arrive_from == "15:00");  // 50 s
  CHECK(lane.arrive_to == "15:03");    // 130 s
  CHECK(lane.verdict == Verdict::usable);
  CHECK(lane.why == "in force from 16:00; you pass 15:00 to 15:03");
  CHECK(lane.source == OsmObject{101, ObjectType::way});
  CHECK(lane.tag == "lanes:bus:conditional=1 @ (Mo-Sa 16:00-19:00)");
}

TEST_CASE("a lane to the drive's end is passed until the high time of arrival", "[lanes]") {
  const auto lanes = Street().piece().piece().lane(afternoon).passed();
  REQUIRE(lanes.size() == 1);
  CHECK(lanes[0].arrive_to == "15:03");  // 130 s
}

TEST_CASE("a lane along several pieces of road is one lane, judged from end to end", "[lanes]") {
  Street street;
  street.piece().lane(afternoon).piece().lane(afternoon).piece().lane(afternoon).piece();
  street.loop().start = {civil_seconds({{2026, 11, 28}, 15, 57, 0}), 0};
  const auto lanes = street.passed();
  REQUIRE(lanes.size() == 1);
  CHECK(lanes[0].first == 0);
  CHECK(lanes[0].last == 2);
  CHECK(lanes[0].verdict == Verdict::check_the_plate);
  CHECK(lanes[0].why == "in force from 16:00; you pass 15:57 to 16:01");
}

TEST_CASE("lanes with a gap, other hours or another side are lanes of their own", "[lanes]") {
  CHECK(Street().piece().lane(afternoon).piece().piece().lane(afternoon).passed().size() == 2);
  CHECK(Street().piece().lane(afternoon).piece().lane("24/7").passed().size() == 2);
  CHECK(Street().piece().lane(afternoon).piece().lane(afternoon, LaneSide::right).passed().size() ==
        2);
  const auto both = Street().piece().lane("24/7").lane("24/7", LaneSide::right).piece().passed();
  REQUIRE(both.size() == 2);
  CHECK(both[0].side == "left");
  CHECK(both[1].side == "right");
}

TEST_CASE("a lane for the other direction is none of ours", "[lanes]") {
  CHECK(Street().piece().lane(afternoon, LaneSide::left, LaneDirection::against).passed().empty());
  CHECK(Street().piece().lane(afternoon).against().passed().empty());
}

TEST_CASE("a lane goes on over ways that are drawn the other way round", "[lanes]") {
  Street street;
  street.piece().lane(afternoon).piece();
  street.lane(afternoon, LaneSide::left, LaneDirection::against).against();
  CHECK(street.passed().size() == 1);
}

TEST_CASE("a lane whose direction isn't mapped: check the plate", "[lanes]") {
  CHECK(Street().piece().lane("24/7", LaneSide::left, LaneDirection::unknown).told() ==
        "check the plate: the map doesn't say in which direction it runs");
}

// lanes:bus:forward=1 counts lanes and names no side; whether a car may use it is told all the same.
TEST_CASE("a lane in our direction is judged by its hours, whichever side it is on", "[lanes]") {
  const Street street = Street().piece().lane(afternoon, LaneSide::unknown);
  CHECK(street.told() == "usable: in force from 16:00; you pass 15:00 to 15:02");
  CHECK(street.passed()[0].side == "unknown");
}

TEST_CASE("a lane against the other traffic is never ours", "[lanes]") {
  CHECK(Street().piece().lane("off").contraflow().told() ==
        "in force: runs against the other traffic");
}

TEST_CASE("tags that contradict each other don't make a lane usable", "[lanes]") {
  CHECK(Street().piece().lane(afternoon).doubtful().told() ==
        "check the plate: the map's tags contradict each other");
  CHECK(Street().piece().lane("24/7").doubtful().told() ==
        "in force: in force at any time; you pass 15:00 to 15:02");
}

TEST_CASE("a lane without hours has none in the file", "[lanes]") {
  const auto lanes = Street().piece().lane("").passed();
  REQUIRE(lanes.size() == 1);
  CHECK_FALSE(lanes[0].hours);
  CHECK(lanes[0].why == "hours not mapped");
}

TEST_CASE("a plate speaks of the clock on the spot, whatever offset the start was given with",
          "[lanes]") {
  // 15:00 in London is 16:00 in Vaduz.
  CHECK(Street().zone("Europe/Vaduz").piece().lane(afternoon).told() ==
        "in force: in force until 19:00; you pass 16:00 to 16:02");
}

TEST_CASE("times that differ by less than the file keeps are judged alike", "[lanes]") {
  Street street;
  street.piece().piece().lane(afternoon).piece();
  street.loop().stretches[1].arrive_s.low = 59.9997;
  street.loop().stretches[2].arrive_s.high = 120.0003;
  CHECK(street.told() == "usable: in force from 16:00; you pass 15:01 to 15:02");
}

TEST_CASE("times that run backwards are no interval and no crash", "[lanes]") {
  Street street;
  street.piece().piece().lane(afternoon).piece();
  street.loop().stretches[2].arrive_s.high = 0;
  CHECK(street.told() == "usable: in force from 16:00; you pass 15:00 to 15:01");
}

}  // namespace
}  // namespace loopwright
