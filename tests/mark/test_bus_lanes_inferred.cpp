// Bus lanes told of by a key about something else. OSM wiki, Key:cycleway: with share_busway cyclists
// share a bus lane; psv=lane: common practice, no source.
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

std::string told(const BusLaneFact& lane) {
  const char* directions[] = {"along", "against", "unknown direction"};
  const char* sides[] = {"unknown side", "left", "right"};
  std::string text = directions[static_cast<int>(lane.direction)];
  text += std::string(", ") + sides[static_cast<int>(lane.side)];
  if (lane.doubtful()) text += ", doubtful";
  return text + (lane.hours.empty() ? std::string(", no hours") : ", " + lane.hours);
}

std::vector<BusLaneFact> found(Tags tags) {
  return bus_lanes_of(tags, one_way_of(tags, road::RoadClass::primary), Side::left);
}

/// The lanes of a road in words, one after the other; drives on the left.
std::string lanes(Tags tags) {
  std::string all;
  for (const BusLaneFact& lane : found(std::move(tags)))
    all += (all.empty() ? "" : " | ") + told(lane);
  return all.empty() ? "none" : all;
}

}  // namespace

TEST_CASE("a bus lane that only cyclists' or buses' keys tell of is in doubt, without hours",
          "[mark]") {
  const std::string left = "along, left, doubtful, no hours";
  CHECK(lanes({{"psv", "lane"}, {"cycleway:left", "share_busway"}, {"oneway", "yes"}}) == left);
  CHECK(lanes({{"cycleway:left", "share_busway"}}) == left);
  CHECK(lanes({{"cycleway", "share_busway"}}) == left + " | against, left, doubtful, no hours");
  CHECK(lanes({{"psv", "lane"}}) == "unknown direction, unknown side, doubtful, no hours");
  CHECK(lanes({{"psv", "yes"}}) == "none");
  CHECK(lanes({{"lanes:bus:forward", "1"}, {"cycleway:left", "share_busway"}}) ==
        "along, unknown side, no hours");
  CHECK(found({{"psv", "lane"}}).front().doubt == "psv=lane alone tells of it");
}

}  // namespace loopwright::mark
