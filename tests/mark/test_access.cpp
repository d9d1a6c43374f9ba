#include <catch2/catch.hpp>

#include <string>

#include "loopwright/base/printable.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

/// A residential street with these tags more.
CarAccess street(Tags tags) {
  return car_access(tags, RoadClass::residential, {});
}

/// "yes, no @ (Mo-Fr 08:00-09:00)" of each rule by the hour: base, text, who is let through a gate.
std::string told(const std::vector<TimedAccess>& rules) {
  std::string all;
  for (const TimedAccess& rule : rules) {
    if (!all.empty()) all += " | ";
    all += std::string(rule.base ? "yes, " : "no, ") + rule.text;
    if (rule.about == road::Timed::gate) all += " but for " + rule.who;
  }
  return all.empty() ? "at all hours" : all;
}

std::string along(const CarAccess& access) {
  return access.along == Access::yes ? told(access.timed_along) : "never";
}
std::string against(const CarAccess& access) {
  return access.against == Access::yes ? told(access.timed_against) : "never";
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
  CHECK(along(access) == "at all hours");
  CHECK(against(access) == "at all hours");
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
  CHECK(of({{"motor_vehicle", "no;yes"}}) == Access::no);
}

// Key:construction: on a road in use, minor works and a widening let traffic by.
TEST_CASE("a street that is being built is shut", "[mark]") {
  CHECK(street({{"construction", "yes"}}).tag == "construction=yes");
  CHECK(of({{"construction", "residential"}}) == Access::no);
  CHECK(of({{"construction", "minor"}}) == Access::yes);
  CHECK(of({{"construction", "widening"}}) == Access::yes);
  CHECK(of({{"construction", "no"}}) == Access::yes);
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
  CHECK(street({{"motor_vehicle", "no"}, {"bus", "designated"}, {"taxi", "yes"}}).who ==
        "bus;taxi");
  CHECK(street({{"motor_vehicle", "private"}}).who.empty());
}

TEST_CASE("a street shut at school hours is open at others", "[mark]") {
  const char* hours = "no @ (Mo-Fr 08:00-09:00,15:00-16:00; SH off)";
  const CarAccess access = street({{"motor_vehicle:conditional", hours}});
  CHECK(along(access) == "yes, " + std::string(hours));
  CHECK(against(access) == along(access));
  CHECK(access.tag == "motor_vehicle:conditional=" + std::string(hours));
  CHECK(access.timed_along.front().source == access.tag);
}

TEST_CASE("hours without brackets keep what stands behind a semicolon", "[mark]") {
  const CarAccess access =
      street({{"motor_vehicle:conditional", "no @ Mo-Fr 08:00-09:00; PH off"}});
  CHECK(along(access) == "yes, no @ (Mo-Fr 08:00-09:00; PH off)");
}

// OSM community, British bus gates; OSM wiki, Conditional restrictions.
TEST_CASE("a bus gate open in the evening is a gate by the hour", "[mark]") {
  const CarAccess access = street({{"motor_vehicle", "no"},
                                   {"bus", "designated"},
                                   {"taxi", "yes"},
                                   {"bicycle", "yes"},
                                   {"motor_vehicle:conditional", "yes @ (19:00-07:00)"}});
  CHECK(along(access) == "no, yes @ (19:00-07:00) but for bus;taxi;bicycle");
  CHECK(access.tag == "motor_vehicle=no");
}

TEST_CASE("a bus gate may be shut in one direction, and buses let in by the hour", "[mark]") {
  const CarAccess access =
      street({{"motor_vehicle:backward:conditional", "no @ (Mo-Sa 07:00-19:00)"},
              {"psv:backward:conditional", "yes @ (Mo-Sa 07:00-19:00)"}});
  CHECK(along(access) == "at all hours");
  CHECK(against(access) == "yes, no @ (Mo-Sa 07:00-19:00) but for psv");
}

TEST_CASE("a street shut by the hour without a word of buses is no gate", "[mark]") {
  CHECK(along(street({{"motor_vehicle:conditional", "no @ (Mo-Fr 07:00-19:00)"},
                      {"bicycle", "yes"}})) == "yes, no @ (Mo-Fr 07:00-19:00)");
}

TEST_CASE("at the hours at which a street is for access only a lesson keeps out", "[mark]") {
  const CarAccess access =
      street({{"motor_vehicle:conditional", "destination @ (Mo-Fr 07:00-19:00)"}});
  CHECK(along(access) == "yes, no @ (Mo-Fr 07:00-19:00)");
  const CarAccess never = street(
      {{"motor_vehicle", "destination"}, {"motor_vehicle:conditional", "no @ (08:00-09:00)"}});
  CHECK(never.along == Access::destination);
  CHECK(told(never.timed_along) == "at all hours");
}

// CHECKED.md: the last true clause wins, and a special mode comes before a general one.
TEST_CASE("clauses of all keys stand in one text, the most special last", "[mark]") {
  const CarAccess access = street(
      {{"motor_vehicle:conditional", "yes @ (Su)"}, {"access:conditional", "no @ (08:00-18:00)"}});
  CHECK(along(access) == "yes, no @ (08:00-18:00); yes @ (Su)");
  CHECK(access.timed_along.front().source ==
        "access:conditional=no @ (08:00-18:00); motor_vehicle:conditional=yes @ (Su)");
}

TEST_CASE("a general condition opens nothing that a special tag shuts, but shuts what one opens",
          "[mark]") {
  const CarAccess shut =
      street({{"motor_vehicle", "no"}, {"access:conditional", "yes @ (19:00-07:00)"}});
  CHECK(shut.along == Access::no);
  const CarAccess open =
      street({{"motor_vehicle", "yes"}, {"access:conditional", "no @ (08:00-09:00)"}});
  CHECK(along(open) == "yes, no @ (08:00-09:00)");
}

TEST_CASE("of a condition only what isn't settled for a car is kept", "[mark]") {
  CHECK(along(street({{"motor_vehicle:conditional", "no @ (Mo-Fr 07:00-10:00 AND weight<3.5)"}})) ==
        "yes, no @ (Mo-Fr 07:00-10:00)");
  CHECK(along(street({{"motor_vehicle:conditional", "no @ (snow)"}})) == "yes, no @ (snow)");
}

// Skinner Lane, Newport, as mapped in 2023.
TEST_CASE("hours given to deliveries alone are no hours for a lesson, nor are the others",
          "[mark]") {
  const CarAccess access = street({{"motor_vehicle:conditional",
                                    "delivery @ (Mo-Su 06:00-10:00); disabled @ (Mo-Su "
                                    "06:00-10:00)"}});
  CHECK(access.along == Access::no);
  CHECK(access.tag.starts_with("motor_vehicle:conditional=delivery"));
  CHECK(along(street({{"motor_vehicle", "yes"},
                      {"motor_vehicle:conditional", "delivery @ (06:00-10:00)"}})) ==
        "yes, no @ (06:00-10:00)");
}

// Fairoak Avenue, Newport, as mapped in 2023: a School Street.
TEST_CASE("a street shut but for some hours is driven at those", "[mark]") {
  CHECK(along(street({{"oneway", "yes"},
                      {"motor_vehicle", "no"},
                      {"motor_vehicle:conditional", "yes @ (Mo-Fr 16:00-08:00,09:00-15:00)"}})) ==
        "no, yes @ (Mo-Fr 16:00-08:00,09:00-15:00)");
}

TEST_CASE("an unsuited road stays so whatever its hours", "[mark]") {
  const CarAccess access =
      street({{"surface", "gravel"}, {"motor_vehicle:conditional", "no @ (08:00-09:00)"}});
  CHECK(access.along == Access::unsuited);
  CHECK(told(access.timed_along) == "at all hours");
}

TEST_CASE("conditions on lorries, long stays and deliveries don't shut a street to cars",
          "[mark]") {
  for (const char* text : {"no @ (weight>7.5)", "no @ (stay > 2 hours)", "yes @ delivery",
                           "no @ (Mo-Fr 07:00-19:00 AND weight>3.5)"}) {
    const CarAccess access = street({{"motor_vehicle:conditional", text}});
    CHECK(along(access) == "at all hours");
  }
}

TEST_CASE("behind a clause on lorries the one on cars is still read", "[mark]") {
  CHECK(along(street({{"motor_vehicle:conditional", "no @ (weight>7.5); no @ (08:00-09:00)"}})) ==
        "yes, no @ (08:00-09:00)");
}

TEST_CASE("a clause that always holds for a car acts like a plain tag", "[mark]") {
  CHECK(of({{"access", "no"}, {"motor_vehicle:conditional", "yes @ (weight<3.5)"}}) == Access::yes);
  CHECK(of({{"motor_vehicle:conditional", "no @ (24/7)"}}) == Access::no);
  // The last of several true clauses wins (OSM wiki, Conditional restrictions).
  CHECK(of({{"motor_vehicle:conditional", "no @ (Mo-Fr 08:00-09:00); yes @ (weight<3.5)"}}) ==
        Access::yes);
}

TEST_CASE("a condition that can't be read may shut the street at any time", "[mark]") {
  CHECK(along(street({{"vehicle:conditional", "no @ (Monday mornings)"}})) ==
        "yes, no @ (Monday mornings)");
  CHECK(along(street({{"vehicle:conditional", "Mo-Fr 08:00-09:00"}})) ==
        "yes, no @ (? Mo-Fr 08:00-09:00)");
  // A bracket that isn't closed doesn't swallow the clause behind it.
  CHECK(along(street({{"vehicle:conditional", "no @ (Mo-Fr 08:00-09:00"},
                      {"motorcar:conditional", "no @ (Su)"}})) ==
        "yes, no @ (" + shielded("(", "(") + "Mo-Fr 08:00-09:00); no @ (Su)");
}

TEST_CASE("a condition for one direction shuts that direction only", "[mark]") {
  const CarAccess access =
      street({{"motor_vehicle:backward:conditional", "no @ (Mo-Fr 07:00-10:00)"}});
  CHECK(along(access) == "at all hours");
  CHECK(against(access) == "yes, no @ (Mo-Fr 07:00-10:00)");
}

TEST_CASE("one-way by the hour shuts or opens the other direction by the hour", "[mark]") {
  const CarAccess shut = street({{"oneway:conditional", "yes @ (Mo-Fr 07:00-10:00)"}});
  CHECK(along(shut) == "at all hours");
  CHECK(against(shut) == "yes, no @ (Mo-Fr 07:00-10:00)");
  const CarAccess freed =
      street({{"oneway", "yes"}, {"oneway:conditional", "no @ (Mo-Fr 07:00-10:00)"}});
  CHECK(along(freed) == "at all hours");
  CHECK(against(freed) == "no, yes @ (Mo-Fr 07:00-10:00)");
  CHECK(freed.timed_against.front().source == "oneway:conditional=no @ (Mo-Fr 07:00-10:00)");
}

// OSM wiki, Conditional restrictions: the more special mode wins.
TEST_CASE("one-way by the hour for cars outranks that for all, whatever the order of the tags",
          "[mark]") {
  const CarAccess cars = street({{"oneway:motorcar:conditional", "no @ (Su)"},
                                 {"oneway:conditional", "yes @ (07:00-19:00)"}});
  CHECK(along(cars) == "at all hours");
  CHECK(against(cars) == "yes, no @ (07:00-19:00); yes @ (Su)");
  CHECK(cars.timed_against.front().source ==
        "oneway:conditional=yes @ (07:00-19:00); oneway:motorcar:conditional=no @ (Su)");
  for (const char* mode : {"motorcar", "motor_vehicle", "vehicle"}) {
    const std::string key = "oneway:" + std::string(mode) + ":conditional";
    CHECK(against(street({{key, "yes @ (07:00-19:00)"}})) == "yes, no @ (07:00-19:00)");
  }
  CHECK(against(street({{"oneway:vehicle:conditional", "yes @ (Sa)"},
                        {"oneway:motor_vehicle:conditional", "no @ (Sa 09:00-12:00)"}})) ==
        "yes, no @ (Sa); yes @ (Sa 09:00-12:00)");
}

TEST_CASE("a general one-way by the hour opens nothing that a plain tag for cars shuts, but shuts",
          "[mark]") {
  CHECK(against(street({{"oneway:motor_vehicle", "yes"}, {"oneway:conditional", "no @ (Su)"}})) ==
        "never");
  CHECK(against(street({{"oneway:motorcar", "no"}, {"oneway:conditional", "yes @ (Su)"}})) ==
        "yes, no @ (Su)");
  CHECK(against(street({{"oneway", "yes"}, {"oneway:motorcar:conditional", "no @ (Su)"}})) ==
        "no, yes @ (Su)");
}

TEST_CASE("one-way by the hour for others than cars changes nothing", "[mark]") {
  for (const char* key : {"oneway:bicycle:conditional", "oneway:bus:conditional"}) {
    CHECK(against(street({{"oneway", "yes"}, {key, "no @ (Su)"}})) == "never");
    CHECK(against(street({{key, "yes @ (Su)"}})) == "at all hours");
  }
  CHECK(against(street({{"oneway:conditional", "yes @ (bicycle)"}})) == "at all hours");
  CHECK(of({{"oneway", "reversible"}, {"oneway:conditional", "no @ (bicycle)"}}) ==
        Access::unsuited);
}

TEST_CASE("one-way by an hour that can't be read may shut both directions", "[mark]") {
  const CarAccess access = street({{"oneway:motor_vehicle:conditional", "mornings"}});
  CHECK(along(access) == "yes, no @ (? mornings)");
  CHECK(against(access) == "yes, no @ (? mornings)");
}

TEST_CASE("a reversible road is driven only as its hours say", "[mark]") {
  CHECK(of({{"oneway", "reversible"}}) == Access::unsuited);
  const CarAccess tidal =
      street({{"oneway", "reversible"},
              {"oneway:conditional", "yes @ (00:00-12:00); -1 @ (12:00-24:00)"}});
  CHECK(along(tidal) == "no, yes @ (00:00-12:00); no @ (12:00-24:00)");
  CHECK(against(tidal) == "no, yes @ (12:00-24:00)");
}

TEST_CASE("a road both one-way and shut by the hour must be open by both", "[mark]") {
  const CarAccess access = street({{"oneway:conditional", "yes @ (Mo-Fr 07:00-10:00)"},
                                   {"motor_vehicle:conditional", "no @ (Sa)"}});
  CHECK(along(access) == "yes, no @ (Sa)");
  CHECK(against(access) == "yes, no @ (Sa) | yes, no @ (Mo-Fr 07:00-10:00)");
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
  CHECK(of({{"service", "parking_aisle"}}) == Access::unsuited);
  CHECK(of({{"service", "alley"}}) == Access::yes);
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
