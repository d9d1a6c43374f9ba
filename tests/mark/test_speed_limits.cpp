#include <catch2/catch.hpp>
#include <string>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

/// One road in a draft of its own.
class OneRoad {
 public:
  explicit OneRoad(Tags tags, std::string_view region = "GB-ENG",
                   std::string map_date = "2026-11-01")
      : draft_(raw_of(std::move(tags)), info_of(region, std::move(map_date)), report_) {
    road::Piece piece;
    piece.way = 7;
    piece.road_class = road_class_of(draft_.raw.ways[0].tags).value();
    draft_.tables.pieces.push_back(piece);
  }
  OneRoad& dual() {
    draft_.tables.pieces[0].flags |= road::piece_flag::dual;
    return *this;
  }
  /// "30 mph certain by maxspeed=30 mph", on Saturday 28 November 2026.
  std::string along() { return told(limits_of(draft_, PieceId{0U}).along); }
  std::string against() { return told(limits_of(draft_, PieceId{0U}).against); }
  road::LimitFact fact() { return limits_of(draft_, PieceId{0U}).along; }
  /// The oddities, each "what: detail".
  std::string oddities() {
    limits_of(draft_, PieceId{0U});
    std::string all;
    for (const road::Oddity& odd : report_.oddities()) all += odd.what + ": " + odd.detail;
    return all;
  }

 private:
  const RawMap& raw_of(Tags tags) {
    raw_.ways.push_back({7, {1, 2}, std::move(tags)});
    return raw_;
  }
  static road::AreaInfo info_of(std::string_view region, std::string map_date) {
    road::AreaInfo info;
    info.region = *find_region(region);
    info.map_timestamp = map_date.empty() ? map_date : map_date + "T00:00:00Z";
    return info;
  }
  std::string told(const road::LimitFact& fact) {
    const road::LimitOnDay day = draft_.law.on(fact, {2026, 11, 28});
    return std::to_string(day.value) + " " + std::string(name(day.unit)) + " " +
           std::string(name(day.confidence)) + " by " + std::string(draft_.text(fact.source));
  }

  RawMap raw_;
  road::Report report_;
  Draft draft_;
};

std::string limit(Tags tags, std::string_view region = "GB-ENG") {
  return OneRoad(std::move(tags), region).along();
}

TEST_CASE("a road with nothing mapped has a guess that is to be checked", "[mark]") {
  CHECK(limit({{"highway", "tertiary"}}) == "60 mph check by highway=tertiary");
  CHECK(limit({{"highway", "secondary"}}, "LI") == "80 km/h check by highway=secondary");
}

// OSM wiki, Key:maxspeed: a number with a unit, and lenient spellings of it.
TEST_CASE("a number on a sign is the limit", "[mark]") {
  for (const char* thirty : {"30 mph", "30mph", "30 MPH", " 30 mph "}) {
    OneRoad road({{"highway", "tertiary"}, {"maxspeed", thirty}});
    CHECK(road.fact().value == 30);
    CHECK(road.fact().unit == SpeedUnit::mph);
  }
  CHECK(limit({{"highway", "tertiary"}, {"maxspeed", "40 mph"}}) ==
        "40 mph certain by maxspeed=40 mph");
  CHECK(limit({{"highway", "tertiary"}, {"maxspeed", "50"}}, "LI") ==
        "50 km/h certain by maxspeed=50");
  CHECK(limit({{"highway", "tertiary"}, {"maxspeed", "80"}}, "IE") ==
        "80 km/h certain by maxspeed=80");
}

TEST_CASE("a bare 30 in Great Britain is km/h by the book, doubted and reported", "[mark]") {
  const Tags tags{{"highway", "tertiary"}, {"maxspeed", "30"}};
  CHECK(limit(tags) == "30 km/h check by maxspeed=30");
  CHECK(OneRoad(tags).oddities() == "speed limit without a unit: maxspeed=30");
}

TEST_CASE("a bare 60 with its reason follows the reason", "[mark]") {
  const Tags tags{{"highway", "tertiary"}, {"maxspeed", "60"}, {"maxspeed:type", "GB:nsl_single"}};
  CHECK(limit(tags) == "60 mph check by maxspeed:type=GB:nsl_single");
  CHECK(OneRoad(tags).oddities() ==
        "speed limit without a unit: maxspeed=60 maxspeed:type=GB:nsl_single");
}

// OSM wiki, Key:maxspeed:type; Highway Code rule 124.
TEST_CASE("a reason without a number is enough", "[mark]") {
  const auto type = [](const char* value, std::string_view region = "GB-ENG") {
    return limit({{"highway", "primary"}, {"maxspeed:type", value}}, region);
  };
  CHECK(type("GB:nsl_single") == "60 mph certain by maxspeed:type=GB:nsl_single");
  CHECK(type("GB:nsl_dual") == "70 mph certain by maxspeed:type=GB:nsl_dual");
  CHECK(type("GB:motorway") == "70 mph certain by maxspeed:type=GB:motorway");
  CHECK(type("GB:nsl_restricted") == "30 mph certain by maxspeed:type=GB:nsl_restricted");
  CHECK(type("GB-WLS:nsl_restricted", "GB-WLS") ==
        "20 mph certain by maxspeed:type=GB-WLS:nsl_restricted");
  CHECK(type("GB:zone20") == "20 mph certain by maxspeed:type=GB:zone20");
  CHECK(type("GB:zone40") == "40 mph certain by maxspeed:type=GB:zone40");
  // No zone has such a number; the class of the road tells the limit, as without the tag.
  for (const char* slip : {"GB:zone301", "GB:zone70000", "GB:zone0"})
    CHECK_THAT(type(slip), Catch::EndsWith("mph check by highway=primary"));
}

TEST_CASE("a zone of 20 is a zone, a sign of 20 is a limit", "[mark]") {
  using road::LimitRule;
  CHECK(OneRoad({{"highway", "residential"}, {"maxspeed:type", "GB:zone20"}}).fact().rule ==
        LimitRule::zone_twenty);
  CHECK(OneRoad({{"highway", "residential"}, {"maxspeed", "20 mph"}, {"zone:maxspeed", "GB:20"}})
            .fact()
            .rule == LimitRule::zone_twenty);
  CHECK(OneRoad({{"highway", "residential"}, {"maxspeed", "20 mph"}, {"maxspeed:type", "sign"}})
            .fact()
            .rule == LimitRule::signed_value);
  CHECK(OneRoad({{"highway", "residential"}, {"maxspeed", "30"}, {"zone:maxspeed", "DE:30"}}, "DE")
            .fact()
            .rule == LimitRule::zone_other);
}

TEST_CASE("an implicit limit in maxspeed itself is a reason too", "[mark]") {
  CHECK(limit({{"highway", "primary"}, {"maxspeed", "GB:nsl_dual"}}) ==
        "70 mph certain by maxspeed=GB:nsl_dual");
  CHECK(limit({{"highway", "primary"}, {"maxspeed", "DE:urban"}}, "DE") ==
        "50 km/h check by maxspeed=DE:urban");  // the number is a general one
  CHECK(limit({{"highway", "residential"}, {"maxspeed", "AT:zone:30"}}, "AT") ==
        "30 km/h certain by maxspeed=AT:zone:30");
}

TEST_CASE("source:maxspeed counts only when it names a zone", "[mark]") {
  CHECK(limit({{"highway", "primary"}, {"lit", "no"}, {"source:maxspeed", "GB:nsl_dual"}}) ==
        "70 mph certain by source:maxspeed=GB:nsl_dual");
  CHECK(limit({{"highway", "primary"}, {"lit", "no"}, {"source:maxspeed", "survey"}}) ==
        "60 mph inferred by lit=no");
  CHECK(limit({{"highway", "primary"},
               {"maxspeed:type", "GB:nsl_single"},
               {"source:maxspeed", "GB:nsl_dual"}}) ==
        "60 mph certain by maxspeed:type=GB:nsl_single");
}

TEST_CASE("the national limit takes the carriageway as it is", "[mark]") {
  const Tags tags{{"highway", "primary"}, {"maxspeed", "GB:national"}};
  CHECK(OneRoad(tags).along() == "60 mph certain by maxspeed=GB:national");
  CHECK(OneRoad(tags).dual().along() == "70 mph certain by maxspeed=GB:national");
  CHECK(limit({{"highway", "primary"}, {"maxspeed", "national"}}) ==
        "60 mph certain by maxspeed=national");
}

TEST_CASE("a number that contradicts its reason is kept, doubted and reported", "[mark]") {
  const Tags tags{
      {"highway", "primary"}, {"maxspeed", "40 mph"}, {"maxspeed:type", "GB:nsl_single"}};
  CHECK(limit(tags) == "40 mph check by maxspeed=40 mph");
  CHECK(OneRoad(tags).oddities() ==
        "speed limit and its reason disagree: maxspeed=40 mph maxspeed:type=GB:nsl_single");
}

TEST_CASE("a lower sign on a motorway contradicts nothing", "[mark]") {
  const Tags tags{
      {"highway", "motorway"}, {"maxspeed", "50 mph"}, {"maxspeed:type", "GB:motorway"}};
  CHECK(limit(tags) == "50 mph certain by maxspeed=50 mph");
  CHECK(OneRoad(tags).oddities().empty());
}

TEST_CASE("each direction can have its own limit", "[mark]") {
  OneRoad road({{"highway", "primary"}, {"maxspeed", "30 mph"}, {"maxspeed:backward", "40 mph"}});
  CHECK(road.along() == "30 mph certain by maxspeed=30 mph");
  CHECK(road.against() == "40 mph certain by maxspeed:backward=40 mph");
}

// RTRA 1984 ss. 81, 82; Highway Code rule 124.
TEST_CASE("lamps say restricted, no lamps say national", "[mark]") {
  CHECK(limit({{"highway", "tertiary"}, {"lit", "yes"}}) == "30 mph inferred by lit=yes");
  CHECK(limit({{"highway", "tertiary"}, {"lit", "no"}}) == "60 mph inferred by lit=no");
  CHECK(OneRoad({{"highway", "trunk"}, {"lit", "no"}}).dual().along() ==
        "70 mph inferred by lit=no");
  CHECK(limit({{"highway", "residential"}}) == "30 mph inferred by highway=residential");
  CHECK(limit({{"highway", "tertiary"}, {"sidewalk", "both"}}) ==
        "30 mph inferred by sidewalk=yes");
  CHECK(limit({{"highway", "motorway"}}) == "70 mph inferred by highway=motorway");
  CHECK(limit({{"highway", "motorway_link"}, {"lit", "yes"}}) ==
        "70 mph inferred by highway=motorway_link");
}

// legislation.gov.uk, RTRA s. 82(1): in Scotland only roads of a prescribed class.
TEST_CASE("lamps on a Scottish A or B road say nothing of 30", "[mark]") {
  OneRoad road({{"highway", "primary"}, {"lit", "yes"}}, "GB-SCT");
  CHECK(road.fact().rule == road::LimitRule::unknown);
  CHECK(road.fact().confidence == road::LimitConfidence::check);
  CHECK(limit({{"highway", "tertiary"}, {"lit", "yes"}}, "GB-SCT") == "30 mph inferred by lit=yes");
  CHECK(limit({{"highway", "primary"}, {"lit", "yes"}}, "GB-NIR") == "30 mph inferred by lit=yes");
}

// The Restricted Roads (20 mph Speed Limit) (Wales) Order 2022, in force 17 September 2023.
TEST_CASE("lamps in Wales say 20, to be checked", "[mark]") {
  CHECK(limit({{"highway", "residential"}, {"lit", "yes"}}, "GB-WLS") == "20 mph check by lit=yes");
}

TEST_CASE("a 30 mapped in a Welsh street before the change is most likely 20 now", "[mark]") {
  const Tags street{{"highway", "residential"}, {"maxspeed", "30 mph"}};
  CHECK(OneRoad(street, "GB-WLS", "2023-01-02").along() == "20 mph check by maxspeed=30 mph");
  CHECK(OneRoad(street, "GB-WLS", "").along() == "20 mph check by maxspeed=30 mph");
  CHECK(OneRoad(street, "GB-WLS", "2026-11-01").along() == "30 mph certain by maxspeed=30 mph");
  CHECK(OneRoad(street, "GB-ENG", "2023-01-02").along() == "30 mph certain by maxspeed=30 mph");
}

TEST_CASE("a 30 on a Welsh sign, or outside a town, stays 30 but is to be checked", "[mark]") {
  const Tags sign{{"highway", "residential"}, {"maxspeed", "30 mph"}, {"maxspeed:type", "sign"}};
  CHECK(OneRoad(sign, "GB-WLS", "2023-01-02").along() == "30 mph check by maxspeed=30 mph");
  const Tags unlit{{"highway", "primary"}, {"lit", "no"}, {"maxspeed", "30 mph"}};
  CHECK(OneRoad(unlit, "GB-WLS", "2023-01-02").along() == "30 mph check by maxspeed=30 mph");
}

TEST_CASE("a Welsh restricted road still mapped as 30 follows the law", "[mark]") {
  const Tags tags{
      {"highway", "residential"}, {"maxspeed", "30 mph"}, {"maxspeed:type", "GB:nsl_restricted"}};
  CHECK(OneRoad(tags, "GB-WLS", "2026-11-01").along() ==
        "20 mph check by maxspeed:type=GB:nsl_restricted");
  CHECK(OneRoad(tags, "GB-ENG").along() == "30 mph certain by maxspeed:type=GB:nsl_restricted");
}

TEST_CASE("no limit is one where the law knows that", "[mark]") {
  CHECK(limit({{"highway", "motorway"}, {"maxspeed", "none"}}, "DE") ==
        "0 km/h certain by maxspeed=none");
  CHECK(limit({{"highway", "living_street"}, {"maxspeed", "walk"}}, "DE") ==
        "7 km/h certain by maxspeed=walk");
  CHECK(limit({{"highway", "residential"}, {"maxspeed", "walk"}}, "GB-ENG") ==
        "5 mph check by maxspeed=walk");
  const Tags british{{"highway", "primary"}, {"lit", "no"}, {"maxspeed", "none"}};
  CHECK(limit(british) == "60 mph check by lit=no");
  CHECK(OneRoad(british).oddities() == "speed limit can't be read: maxspeed=none");
}

TEST_CASE("a limit set by changing signs is to be checked", "[mark]") {
  OneRoad road({{"highway", "primary"}, {"lit", "no"}, {"maxspeed", "signals"}});
  CHECK(road.along() == "60 mph check by lit=no");
  CHECK(road.oddities().empty());
}

TEST_CASE("Irish roads take the default of their number", "[mark]") {
  CHECK(limit({{"highway", "trunk"}, {"lit", "no"}}, "IE") == "100 km/h inferred by lit=no");
  CHECK(limit({{"highway", "secondary"}, {"lit", "no"}}, "IE") == "80 km/h inferred by lit=no");
  CHECK(OneRoad({{"highway", "tertiary"}, {"lit", "no"}}, "IE").fact().rule ==
        road::LimitRule::rural_minor);
}

TEST_CASE("the reason holds where the number beside it can't be read", "[mark]") {
  const Tags none{{"highway", "unclassified"},
                  {"sidewalk", "both"},
                  {"maxspeed", "none"},
                  {"maxspeed:type", "GB:nsl_single"}};
  CHECK(limit(none) == "60 mph check by maxspeed:type=GB:nsl_single");
}

TEST_CASE("what can't be read as a limit is reported and inferred", "[mark]") {
  for (const char* text : {"fast", "30;20", "30 knots", "0 mph", "9000", "GB:", "-30 mph"}) {
    const Tags tags{{"highway", "residential"}, {"maxspeed", text}};
    CHECK(limit(tags) == "30 mph check by highway=residential");
    CHECK(OneRoad(tags).oddities() == "speed limit can't be read: maxspeed=" + std::string(text));
  }
}

// 300 is ours: a larger number is a slip.
TEST_CASE("a number is read from 1 to 300, with its unit or without", "[mark]") {
  const auto read = [](const char* text) {
    return limit({{"highway", "tertiary"}, {"maxspeed", text}}).substr(0, 7);
  };
  CHECK(read("1 mph") == "1 mph c");
  CHECK(read("05 mph") == "5 mph c");
  CHECK(read("90 mph") == "90 mph ");
  CHECK(read("300 mph") == "300 mph");
  CHECK(read("19.6 mph") == "20 mph ");
  for (const char* slip : {"0 mph", "301 mph", "mph", "20 knots", "20 mph wet"})
    CHECK(limit({{"highway", "tertiary"}, {"maxspeed", slip}}).starts_with("60 mph check"));
}

}  // namespace
}  // namespace loopwright::mark
