// Where the tags of a way forbid stopping, on which side and when.
// Sources: OSM wiki, pages Street parking (scheme of December 2022), Key:parking:lane (2011),
// Key:parking:condition (January 2022 moved the bans there); Highway Code rules 238, 240, 243, 244.
#include <catch2/catch.hpp>
#include <string>

#include "mark/pull_up_texts.hpp"

namespace loopwright::test {
namespace {

/// A street of 200 m, driven to the east as AB, to the west as BA; its left is that of AB.
BuiltTown street(const std::string& tags, std::string_view region = "GB-ENG") {
  return built_town("N       P\nA       B\nS       T\nw1 AB maxspeed=30 " + tags +
                        "\nw2 NAS highway=tertiary\nw3 PBT highway=tertiary\n",
                    region);
}

BuiltTown quiet_street(const std::string& tags, std::string_view region = "GB-ENG") {
  return street("highway=residential " + tags, region);
}

const Texts all{"15-185"};

TEST_CASE("a street without tags for its kerbs has pull-ups on both sides", "[mark][pull-ups]") {
  const BuiltTown town = quiet_street("");
  CHECK(pull_ups(town, "AB") == all);
  CHECK(pull_ups(town, "BA") == all);
}

TEST_CASE("a ban on one side leaves the other", "[mark][pull-ups]") {
  for (const std::string value : {"no_parking", "no_stopping", "no_standing", "loading_only"}) {
    const BuiltTown town = quiet_street("parking:left:restriction=" + value);
    CHECK(pull_ups(town, "AB").empty());
    CHECK(pull_ups(town, "BA") == all);
  }
}

TEST_CASE("a ban on both sides leaves none", "[mark][pull-ups]") {
  const BuiltTown town = quiet_street("parking:both:restriction=no_parking");
  CHECK(pull_ups(town, "AB").empty());
  CHECK(pull_ups(town, "BA").empty());
}

TEST_CASE("where one drives on the right, the right side is the near one", "[mark][pull-ups]") {
  const BuiltTown town = quiet_street("parking:right:restriction=no_stopping", "FR");
  CHECK(pull_ups(town, "AB").empty());
  CHECK(pull_ups(town, "BA") == all);
}

TEST_CASE("a kerb with hours keeps them", "[mark][pull-ups]") {
  const BuiltTown town =
      quiet_street("parking:left:restriction:conditional=\"no_parking @ (Mo-Sa 08:00-18:30)\"");
  CHECK(pull_ups(town, "AB") == Texts{"15-185 hours Mo-Sa 08:00-18:30"});
  CHECK(pull_ups(town, "BA") == all);
}

std::string bans(const BuiltTown& town, std::string_view ends) {
  std::string text;
  const road::Roads roads = town.roads();
  for (const road::KerbBan& ban : roads.kerb_bans_of(town.stretch(ends)))
    text += std::string(ban.no_stopping != 0 ? "no stopping " : "no parking ") +
            std::string(roads.text(ban.hours)) + " by " + std::string(roads.text(ban.source));
  return text;
}

TEST_CASE("a ban is kept for its kerb on any road, also where nobody pulls up", "[mark][kerb]") {
  const BuiltTown town = street(
      "highway=primary parking:left:restriction:conditional=\"no_parking @ (Mo-Sa 08:00-18:30)\"");
  CHECK(pull_ups(town, "AB").empty());
  CHECK(bans(town, "AB") ==
        "no parking Mo-Sa 08:00-18:30 by "
        "parking:left:restriction:conditional=no_parking @ (Mo-Sa 08:00-18:30)");
  CHECK(bans(town, "BA").empty());
}

TEST_CASE("bans at all times, of the older schemes, and stricter ones at the peak",
          "[mark][kerb]") {
  CHECK(bans(quiet_street("parking:both:restriction=no_stopping"), "BA") ==
        "no stopping 24/7 by parking:both:restriction=no_stopping");
  CHECK(bans(quiet_street("parking:lane:left=no_parking"), "AB") ==
        "no parking 24/7 by parking:lane:left=no_parking");
  CHECK(bans(quiet_street("parking:condition:left=no_parking "
                          "parking:condition:left:time_interval=\"Mo-Fr 07:00-10:00\""),
             "AB") == "no parking Mo-Fr 07:00-10:00 by parking:condition:left=no_parking");
  CHECK(bans(quiet_street(
                 "parking:left:restriction=no_parking "
                 "parking:left:restriction:conditional=\"no_stopping @ (Mo-Fr 07:00-10:00)\""),
             "AB") == "no parking 24/7 by parking:left:restriction=no_parking");
  CHECK(bans(quiet_street("parking:left=lane parking:left:fee=yes"), "AB").empty());
}

TEST_CASE("a place to stop beside a ban by the hour isn't said to have none", "[mark][kerb]") {
  const BuiltTown town =
      quiet_street("parking:left:restriction:conditional=\"no_parking @ (Mo-Sa 08:00-18:30)\"");
  const road::Roads roads = town.roads();
  const auto places = roads.pull_ups_of(town.stretch("AB"));
  REQUIRE(places.size() == 1);
  CHECK(roads.text(places[0].why).starts_with("a ban by the hour"));
}

TEST_CASE("a ban that is lifted by the hour keeps the rest of the week", "[mark][pull-ups]") {
  const BuiltTown town = quiet_street(
      "parking:left:restriction=no_parking "
      "parking:left:restriction:conditional=\"none @ (Su 08:00-18:00)\"");
  CHECK(pull_ups(town, "AB") == Texts{"15-185 hours yes @ (24/7); no @ (Su 08:00-18:00)"});
}

TEST_CASE("a ban on waiting and a bus lane forbid at the hours of either", "[mark][pull-ups]") {
  const std::string lane =
      "busway:left=lane busway:left:conditional=\"lane @ (Mo-Sa 07:00-10:00)\" ";
  CHECK(pull_ups(quiet_street(lane + "parking:left:restriction:conditional=\"no_parking @ (Sa)\""),
                 "AB") == Texts{"15-185 hours lane yes @ (Sa); yes @ (Mo-Sa 07:00-10:00)"});
  // What is cut out of the ban isn't cut out of the lane.
  CHECK(pull_ups(quiet_street(lane + "parking:left:restriction=no_parking "
                                     "parking:left:restriction:conditional=\"none @ (Su)\""),
                 "AB") ==
        Texts{"15-185 hours lane yes @ (24/7); no @ (Su); yes @ (Mo-Sa 07:00-10:00)"});
}

TEST_CASE("a ban whose hours can't be read keeps its text, for who asks it", "[mark][pull-ups]") {
  CHECK(
      pull_ups(quiet_street("parking:left:restriction:conditional=\"no_parking @ (school days)\""),
               "AB") == Texts{"15-185 hours school days"});
}

TEST_CASE("a ban for lorries only is none for a car", "[mark][pull-ups]") {
  CHECK(pull_ups(quiet_street("parking:left:restriction:conditional=\"no_parking @ (weight>7.5)\""),
                 "AB") == all);
}

TEST_CASE("the oldest scheme has bans in parking:lane", "[mark][pull-ups]") {
  for (const std::string value : {"no_parking", "no_stopping", "fire_lane"}) {
    const BuiltTown town = quiet_street("parking:lane:left=" + value);
    CHECK(pull_ups(town, "AB").empty());
    CHECK(pull_ups(town, "BA") == all);
  }
}

TEST_CASE("the step of January 2022 has bans in parking:condition", "[mark][pull-ups]") {
  CHECK(pull_ups(quiet_street("parking:lane:left=yes parking:condition:left=no_stopping"), "AB")
            .empty());
  CHECK(pull_ups(quiet_street("parking:lane:left=parallel "
                              "parking:condition:left:conditional=\"no_parking @ (Mo-Fr "
                              "08:00-18:00)\""),
                 "AB") == Texts{"15-185 hours parked Mo-Fr 08:00-18:00"});
}

TEST_CASE("a time interval of the oldest scheme is hours", "[mark][pull-ups]") {
  const BuiltTown town = quiet_street(
      "parking:lane:left=parallel parking:condition:left=no_parking "
      "parking:condition:left:time_interval=\"Mo-Fr 08:00-18:00\" "
      "parking:condition:left:default=free");
  CHECK(pull_ups(town, "AB") == Texts{"15-185 hours parked Mo-Fr 08:00-18:00"});
}

TEST_CASE("today's scheme outranks the older ones", "[mark][pull-ups]") {
  const BuiltTown town = quiet_street("parking:left=lane parking:lane:left=no_stopping");
  CHECK(pull_ups(town, "AB") == Texts{"15-185 parked"});
}

TEST_CASE("residents' bays and fees are told", "[mark][pull-ups]") {
  CHECK(pull_ups(quiet_street("parking:left=lane parking:left:access=permit"), "AB") ==
        Texts{"15-185 residents parked"});
  CHECK(pull_ups(quiet_street("parking:left=lane parking:left:fee=yes"), "AB") ==
        Texts{"15-185 fee parked"});
  CHECK(pull_ups(quiet_street("parking:lane:left=parallel parking:condition:left=residents"),
                 "AB") == Texts{"15-185 residents parked"});
  CHECK(pull_ups(quiet_street("parking:lane:left=parallel parking:condition:left=ticket"), "AB") ==
        Texts{"15-185 fee parked"});
}

TEST_CASE("nobody is sent onto a kerb, into angled bays, or where none may stand",
          "[mark][pull-ups]") {
  for (const std::string tags :
       {"parking:left=half_on_kerb", "parking:left=on_kerb", "parking:left=no",
        "parking:left=lane parking:left:orientation=perpendicular", "parking:lane:left=diagonal",
        "parking:lane:left=parallel "
        "parking:lane:left:parallel=half_on_kerb"}) {
    CHECK(pull_ups(quiet_street(tags), "AB").empty());
  }
}

TEST_CASE("a cycle lane forbids its kerb, a track behind it doesn't", "[mark][pull-ups]") {
  for (const std::string tags : {"cycleway:left=lane", "cycleway:both=lane", "cycleway=lane",
                                 "cycleway:left=lane cycleway:left:lane=advisory"})
    CHECK(pull_ups(quiet_street(tags), "AB").empty());
  CHECK(pull_ups(quiet_street("cycleway:left=lane"), "BA") == all);
  CHECK(pull_ups(quiet_street("cycleway:left=track"), "AB") == all);
}

TEST_CASE("a bus lane with hours is kept by them, one without forbids", "[mark][pull-ups]") {
  const BuiltTown timed =
      quiet_street("busway:left=lane busway:left:conditional=\"lane @ (Mo-Sa 07:00-10:00)\"");
  CHECK(pull_ups(timed, "AB") == Texts{"15-185 lane Mo-Sa 07:00-10:00"});
  const BuiltTown always = quiet_street("busway:left=lane");
  CHECK(pull_ups(always, "AB").empty());
  CHECK(pull_ups(always, "BA") == all);
}

TEST_CASE("double white lines forbid both sides, whichever is broken", "[mark][pull-ups]") {
  for (const std::string tags : {"overtaking=no", "overtaking=forward", "overtaking:backward=no"}) {
    CHECK(pull_ups(quiet_street(tags), "AB").empty());
    CHECK(pull_ups(quiet_street(tags), "BA").empty());
  }
  CHECK(pull_ups(quiet_street("overtaking=yes"), "AB") == all);
}

TEST_CASE("a bigger road needs a tag that cars stand there", "[mark][pull-ups]") {
  CHECK(pull_ups(street("highway=primary"), "AB").empty());
  CHECK(pull_ups(street("highway=primary parking:left=lane"), "AB") == Texts{"15-185 parked"});
  CHECK(pull_ups(street("highway=tertiary"), "AB") == all);
}

}  // namespace
}  // namespace loopwright::test
