// Sources: OSM wiki Key:crossing, Key:crossing_ref, Key:crossing:markings, Key:traffic_signals,
// Crossings_in_the_United_Kingdom.
#include <catch2/catch.hpp>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::node_flag;

Tags crossing(std::initializer_list<std::pair<std::string_view, std::string_view>> more) {
  Tags tags{{"highway", "crossing"}};
  for (const auto& [key, value] : more) tags.add(key, value);
  return tags;
}

TEST_CASE("a node without tags is nothing to deal with", "[mark]") {
  CHECK(node_flags_of({}) == 0);
  CHECK(node_flags_of(Tags{{"name", "Mill Bridge"}}) == 0);
}

TEST_CASE("signs, lights, minis and level crossings are known by their tags", "[mark]") {
  CHECK(node_flags_of(Tags{{"highway", "traffic_signals"}}) == flag::signals);
  CHECK(node_flags_of(Tags{{"highway", "mini_roundabout"}}) == flag::mini_roundabout);
  CHECK(node_flags_of(Tags{{"highway", "give_way"}}) == flag::give_way);
  CHECK(node_flags_of(Tags{{"highway", "stop"}}) == flag::stop);
  CHECK(node_flags_of(Tags{{"railway", "level_crossing"}}) == flag::level_crossing);
}

TEST_CASE("humps, narrowings, fords and stop boxes are told apart", "[mark]") {
  CHECK(node_flags_of(Tags{{"traffic_calming", "hump"}}) == flag::calming);
  CHECK(node_flags_of(Tags{{"traffic_calming", "choker;cushion"}}) ==
        (flag::calming | flag::pinch_point));
  CHECK(node_flags_of(Tags{{"traffic_calming", "chicane"}}) == flag::pinch_point);
  CHECK(node_flags_of(Tags{{"traffic_calming", "island"}}) == 0);
  CHECK(node_flags_of(Tags{{"ford", "yes"}}) == flag::ford);
  CHECK(node_flags_of(Tags{{"ford", "no"}}) == 0);
  CHECK(node_flags_of(Tags{{"cycleway", "asl"}}) == flag::advanced_stop);
  CHECK(node_flags_of(Tags{{"highway", "passing_place"}}) == flag::passing_place);
  for (const auto& [key, value] :
       {std::pair("road_marking", "box_junction"), std::pair("junction", "yellow_box"),
        std::pair("box_junction", "yes")}) {
    CHECK(node_flags_of(Tags{{key, value}}) == flag::box_junction);
  }
}

TEST_CASE("a node may be two things", "[mark]") {
  const Tags both{{"highway", "give_way;crossing"}, {"crossing", "zebra"}};
  CHECK(node_flags_of(both) == (flag::give_way | flag::zebra));
}

TEST_CASE("a crossing for trams or feet only is no level crossing of a road", "[mark]") {
  CHECK(node_flags_of(Tags{{"railway", "tram_level_crossing"}}) == flag::tram_crossing);
  CHECK(node_flags_of(Tags{{"railway", "crossing"}}) == 0);
}

TEST_CASE("a zebra is one by its kind, its British name or its markings", "[mark]") {
  for (const Tags& tags :
       {crossing({{"crossing", "zebra"}}),
        crossing({{"crossing", "uncontrolled"}, {"crossing_ref", "zebra"}}),
        crossing({{"crossing", "marked"}, {"crossing:markings", "zebra"}}),
        crossing({{"crossing", "marked"}, {"crossing:markings", "zebra;dots"}})}) {
    CHECK(node_flags_of(tags) == flag::zebra);
    CHECK(zebra_is_certain(tags));
  }
}

TEST_CASE("stripes in a form of their own are a zebra, and so is one in a list", "[mark]") {
  for (const Tags& tags : {crossing({{"crossing:markings", "zebra:double"}}),
                           crossing({{"crossing", "zebra;island"}})}) {
    CHECK(node_flags_of(tags) == flag::zebra);
    CHECK(zebra_is_certain(tags));
  }
  CHECK(node_flags_of(crossing({{"crossing:markings", "ladder"}})) == 0);
}

TEST_CASE("a crossing that is only marked may be a zebra", "[mark]") {
  for (const Tags& tags :
       {crossing({{"crossing", "marked"}}), crossing({{"crossing", "uncontrolled"}}),
        crossing({{"crossing", "marked"}, {"crossing:markings", "yes"}})}) {
    CHECK(node_flags_of(tags) == flag::zebra);
    CHECK_FALSE(zebra_is_certain(tags));
  }
}

TEST_CASE("a crossing without markings, or with others, is no zebra", "[mark]") {
  CHECK(node_flags_of(crossing({})) == 0);
  CHECK(node_flags_of(crossing({{"crossing", "unmarked"}})) == 0);
  CHECK(node_flags_of(crossing({{"crossing", "island"}})) == 0);
  CHECK(node_flags_of(crossing({{"crossing", "marked"}, {"crossing:markings", "dots"}})) == 0);
  CHECK(node_flags_of(crossing({{"crossing", "uncontrolled"}, {"crossing:markings", "no"}})) == 0);
}

TEST_CASE("a crossing has signals by its kind or its British name", "[mark]") {
  CHECK(node_flags_of(crossing({{"crossing", "traffic_signals"}})) == flag::signal_crossing);
  CHECK(node_flags_of(crossing({{"crossing", "marked"}, {"crossing:signals", "yes"}})) ==
        flag::signal_crossing);
  for (const char* animal : {"pelican", "puffin", "toucan", "pegasus"}) {
    CHECK(node_flags_of(crossing({{"crossing_ref", animal}})) == flag::signal_crossing);
  }
}

TEST_CASE("stripes under lights are a signal crossing, not a zebra", "[mark]") {
  const Tags tags = crossing({{"crossing", "traffic_signals"}, {"crossing:markings", "zebra"}});
  CHECK(node_flags_of(tags) == flag::signal_crossing);
}

TEST_CASE("crossing:signals=no outranks an old name", "[mark]") {
  const Tags tags =
      crossing({{"crossing", "unmarked"}, {"crossing:signals", "no"}, {"crossing_ref", "pelican"}});
  CHECK(node_flags_of(tags) == 0);
}

TEST_CASE("lights for pedestrians on a road are both light and crossing", "[mark]") {
  constexpr std::uint32_t both = flag::signals | flag::signal_crossing;
  CHECK(node_flags_of(Tags{{"highway", "traffic_signals"}, {"crossing", "traffic_signals"}}) ==
        both);
  CHECK(node_flags_of(Tags{{"highway", "traffic_signals"},
                           {"traffic_signals", "pedestrian_crossing"}}) == both);
  CHECK(node_flags_of(Tags{{"highway", "traffic_signals"}, {"crossing", "no"}}) == flag::signals);
}

TEST_CASE("lights that hold no junction are no signals", "[mark]") {
  for (const char* kind : {"level_crossing", "blinker", "blink_mode", "emergency"}) {
    CHECK(node_flags_of(Tags{{"highway", "traffic_signals"}, {"traffic_signals", kind}}) == 0);
  }
  CHECK(node_flags_of(Tags{{"highway", "traffic_signals"}, {"railway", "level_crossing"}}) ==
        flag::level_crossing);
}

}  // namespace
}  // namespace loopwright::mark
