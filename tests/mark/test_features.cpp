#include <catch2/catch.hpp>

#include "loopwright/mark/feature_keys.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

TEST_CASE("every feature has a key that makes it worth a look", "[mark]") {
  const Tags features[] = {{{"highway", "bus_stop"}},
                           {{"amenity", "school"}},
                           {{"public_transport", "platform"}, {"bus", "yes"}},
                           {{"emergency", "ambulance_station"}},
                           {{"hazard", "school_zone"}},
                           {{"entrance", "main"}},
                           {{"barrier", "gate"}},
                           {{"addr:housenumber", "4"}},
                           {{"addr:housename", "Mill House"}},
                           {{"highway", "speed_camera"}},
                           {{"place", "village"}, {"name", "Stavely"}},
                           {{"railway", "station"}, {"name", "Quillham"}}};
  for (const Tags& tags : features) {
    REQUIRE(is_feature(tags));
    bool worth_a_look = false;
    tags.each([&](std::string_view key, std::string_view) {
      worth_a_look = worth_a_look || is_feature_key(key);
    });
    CHECK(worth_a_look);
  }
}

TEST_CASE("plain buildings and trees are no features", "[mark]") {
  CHECK_FALSE(is_feature({{"building", "yes"}}));
  CHECK_FALSE(is_feature({{"natural", "tree"}}));
  CHECK_FALSE(is_feature({{"amenity", "bench"}}));
  CHECK_FALSE(is_feature_key("building"));
}

}  // namespace
}  // namespace loopwright::mark
