#include <catch2/catch.hpp>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

/// A residential street with these tags more.
CarAccess street(Tags tags) {
  return car_access(tags, RoadClass::residential, {});
}

/// Access along, told of a road that is the same both ways.
Access of(Tags tags) {
  const CarAccess access = street(std::move(tags));
  CHECK(access.along == access.against);
  return access.along;
}

TEST_CASE("a street without access tags may be driven both ways", "[mark]") {
  const CarAccess access = street({});
  CHECK(access.along == Access::yes);
  CHECK(access.against == Access::yes);
  CHECK(access.tag.empty());
  CHECK_FALSE(access.timed);
}

TEST_CASE("footways, tracks and bus roads are no roads for cars", "[mark]") {
  for (const char* other : {"footway", "track", "pedestrian", "cycleway", "busway", "bus_guideway",
                            "construction", "proposed", "steps", "path", "bridleway"}) {
    CHECK_FALSE(road_class_of({{"highway", other}}));
  }
  CHECK_FALSE(road_class_of({}));
  CHECK_FALSE(road_class_of({{"highway", "service"}, {"area", "yes"}}));
  CHECK(road_class_of({{"highway", "trunk_link"}}) == RoadClass::trunk_link);
  CHECK(road_class_of({{"highway", "living_street"}}) == RoadClass::living_street);
}

// OSM wiki, Key:access: the more special mode wins.
TEST_CASE("the first key going up from motorcar decides", "[mark]") {
  CHECK(of({{"access", "no"}}) == Access::no);
  CHECK(of({{"access", "no"}, {"motor_vehicle", "yes"}}) == Access::yes);
  CHECK(of({{"motor_vehicle", "no"}, {"motorcar", "permissive"}}) == Access::yes);
  CHECK(of({{"vehicle", "private"}, {"access", "yes"}}) == Access::no);
  CHECK(of({{"bicycle", "no"}, {"hgv", "no"}}) == Access::yes);
}

TEST_CASE("private, customers, permit and unknown words shut a road to a lesson", "[mark]") {
  for (const char* value : {"private", "no", "permit", "residents", "agricultural", "forestry",
                            "delivery", "customers", "unknown", "emergency"}) {
    CHECK(of({{"motor_vehicle", value}}) == Access::no);
  }
  CHECK(street({{"access", "private"}}).tag == "access=private");
}

TEST_CASE("except for access: the road is for its own doors only", "[mark]") {
  CHECK(of({{"motor_vehicle", "destination"}}) == Access::destination);
  CHECK(of({{"motor_vehicle", "agricultural;destination"}}) == Access::destination);
}

TEST_CASE("a ban for one direction shuts that direction", "[mark]") {
  const CarAccess access = street({{"vehicle:backward", "no"}});
  CHECK(access.along == Access::yes);
  CHECK(access.against == Access::no);
  CHECK(access.tag == "vehicle:backward=no");
}

TEST_CASE("a wider key for one direction opens nothing that a special one shuts", "[mark]") {
  CHECK(street({{"motorcar", "no"}, {"vehicle:forward", "yes"}}).along == Access::no);
}

// OSM community, British bus gates: cars are "no", buses designated.
TEST_CASE("a bus gate is shut to cars", "[mark]") {
  CHECK(of({{"motor_vehicle", "no"}, {"bus", "designated"}, {"taxi", "yes"}}) == Access::no);
  CHECK(of({{"access", "no"}, {"psv", "yes"}}) == Access::no);
  CHECK(of({{"bus", "designated"}}) == Access::yes);
}

TEST_CASE("a street shut at school hours is shut, and its hours are kept", "[mark]") {
  const char* hours = "no @ (Mo-Fr 08:00-09:00,15:00-16:00; SH off)";
  const CarAccess access = street({{"motor_vehicle:conditional", hours}});
  CHECK(access.along == Access::no);
  CHECK(access.timed);
  CHECK(access.timed_key == "motor_vehicle:conditional");
  CHECK(access.timed_text == hours);
}

TEST_CASE("a bus gate open in the evening stays shut, and its hours are kept", "[mark]") {
  const CarAccess access =
      street({{"motor_vehicle", "no"}, {"motor_vehicle:conditional", "yes @ (19:00-07:00)"}});
  CHECK(access.along == Access::no);
  CHECK(access.timed);
  CHECK(access.tag == "motor_vehicle=no");
}

TEST_CASE("a street for access only at times is for access only", "[mark]") {
  const CarAccess access =
      street({{"motor_vehicle:conditional", "destination @ (Mo-Fr 07:00-19:00)"}});
  CHECK(access.along == Access::destination);
  CHECK(access.timed);
}

TEST_CASE("conditions on lorries, long stays and deliveries don't shut a street to cars",
          "[mark]") {
  for (const char* text : {"no @ (weight>7.5)", "no @ (stay > 2 hours)", "yes @ delivery",
                           "no @ (Mo-Fr 07:00-19:00 AND weight>3.5)"}) {
    const CarAccess access = street({{"motor_vehicle:conditional", text}});
    CHECK(access.along == Access::yes);
    CHECK_FALSE(access.timed);
  }
}

TEST_CASE("a clause that always holds for a car acts like a plain tag", "[mark]") {
  CHECK(of({{"access", "no"}, {"motor_vehicle:conditional", "yes @ (weight<3.5)"}}) == Access::yes);
  CHECK(of({{"motor_vehicle:conditional", "no @ (24/7)"}}) == Access::no);
  // The last of several true clauses wins (OSM wiki, Conditional restrictions).
  CHECK(of({{"motor_vehicle:conditional", "no @ (Mo-Fr 08:00-09:00); yes @ (weight<3.5)"}}) ==
        Access::yes);
}

TEST_CASE("a condition that can't be read may shut the street", "[mark]") {
  const CarAccess access = street({{"vehicle:conditional", "Mo-Fr 08:00-09:00"}});
  CHECK(access.along == Access::no);
  CHECK(access.timed);
}

TEST_CASE("a condition for one direction shuts that direction only", "[mark]") {
  const CarAccess access =
      street({{"motor_vehicle:backward:conditional", "no @ (Mo-Fr 07:00-10:00)"}});
  CHECK(access.along == Access::yes);
  CHECK(access.against == Access::no);
  CHECK(access.timed_key == "motor_vehicle:backward:conditional");
}

TEST_CASE("one-way by the hour is one-way until the hours are asked", "[mark]") {
  const CarAccess access = street({{"oneway:conditional", "yes @ (Mo-Fr 07:00-10:00)"}});
  CHECK(access.along == Access::yes);
  CHECK(access.against == Access::no);
  CHECK(access.timed_key == "oneway:conditional");
  const CarAccess freed =
      street({{"oneway", "yes"}, {"oneway:conditional", "no @ (Mo-Fr 07:00-10:00)"}});
  CHECK(freed.along == Access::yes);
  CHECK(freed.against == Access::no);
}

TEST_CASE("a motorway is driven only when the area was built with motorways", "[mark]") {
  const Tags tags{{"highway", "motorway"}};
  CHECK(car_access(tags, RoadClass::motorway, {}).along == Access::unsuited);
  CHECK(car_access(tags, RoadClass::motorway, {.motorways = true}).along == Access::yes);
  CHECK(car_access(tags, RoadClass::motorway, {.motorways = true}).against == Access::no);
  CHECK(car_access({{"highway", "motorway_link"}}, RoadClass::motorway_link, {}).along ==
        Access::unsuited);
}

TEST_CASE("a ford is driven only when the area was built with fords", "[mark]") {
  const Tags tags{{"ford", "yes"}};
  CHECK(car_access(tags, RoadClass::unclassified, {}).along == Access::unsuited);
  CHECK(car_access(tags, RoadClass::unclassified, {.fords = true}).along == Access::yes);
  CHECK(car_access({{"ford", "no"}}, RoadClass::unclassified, {}).along == Access::yes);
}

TEST_CASE("living streets, unknown roads and rough or unsealed ones are no place to learn",
          "[mark]") {
  CHECK(car_access({}, RoadClass::living_street, {}).along == Access::unsuited);
  CHECK(car_access({}, RoadClass::road, {}).along == Access::unsuited);
  for (const char* surface : {"gravel", "unpaved", "dirt", "mud", "grass", "asphalt;gravel"}) {
    CHECK(of({{"surface", surface}}) == Access::unsuited);
  }
  for (const char* surface : {"asphalt", "concrete", "paving_stones", "sett"}) {
    CHECK(of({{"surface", surface}}) == Access::yes);
  }
  CHECK(of({{"smoothness", "bad"}}) == Access::unsuited);
  CHECK(of({{"smoothness", "intermediate"}}) == Access::yes);
  CHECK(of({{"ford", "yes"}}) == Access::unsuited);
  CHECK(of({{"toll", "yes"}}) == Access::unsuited);
  CHECK(of({{"toll", "yes"}, {"toll:motorcar", "no"}}) == Access::yes);
  CHECK(of({{"motorroad", "yes"}}) == Access::yes);
}

TEST_CASE("a private gravel road is private first", "[mark]") {
  CHECK(of({{"access", "private"}, {"surface", "gravel"}}) == Access::no);
}

TEST_CASE("plain service roads and alleys may be driven, driveways and the like not", "[mark]") {
  CHECK(car_access({{"highway", "service"}}, RoadClass::service, {}).along == Access::yes);
  CHECK(car_access({{"highway", "service"}, {"service", "alley"}}, RoadClass::service, {}).along ==
        Access::yes);
  for (const char* kind : {"driveway", "parking_aisle", "drive-through", "emergency_access"}) {
    CHECK(is_minor_service({{"highway", "service"}, {"service", kind}}));
  }
  CHECK_FALSE(is_minor_service({{"highway", "service"}, {"service", "alley"}}));
  CHECK_FALSE(is_minor_service({{"highway", "residential"}, {"service", "driveway"}}));
}

TEST_CASE("a road too narrow or too low for a car is shut", "[mark]") {
  CHECK(of({{"maxwidth", "1.8"}}) == Access::no);
  CHECK(of({{"maxheight", "1.5"}}) == Access::no);
  CHECK(of({{"maxheight", "2.1"}}) == Access::yes);
  CHECK(street({{"maxwidth", "1.8"}}).tag == "maxwidth=1.8");
}

TEST_CASE("only roads shut both ways are flagged as shut", "[mark]") {
  namespace flag = road::piece_flag;
  CHECK(access_flags(street({})) == 0);
  CHECK(access_flags(street({{"access", "private"}})) == flag::no_access);
  CHECK(access_flags(street({{"access", "destination"}})) == flag::destination_only);
  CHECK(access_flags(street({{"access", "destination"}, {"oneway", "yes"}})) ==
        flag::destination_only);
  CHECK(access_flags(street({{"vehicle:backward", "no"}})) == 0);
  CHECK(access_flags(street({{"surface", "gravel"}})) == 0);
}

}  // namespace
}  // namespace loopwright::mark
