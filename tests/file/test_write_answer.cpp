// The shape of the file is that of the loop file's description; the numbers are the sample's.
#include <catch2/catch.hpp>

#include "file/sample_answer.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright {
namespace {

std::string part(const std::string& text, std::string_view from, std::string_view to) {
  const std::size_t start = text.find(from);
  REQUIRE(start != std::string::npos);
  const std::size_t end = text.find(to, start);
  REQUIRE(end != std::string::npos);
  return text.substr(start, end - start);
}

TEST_CASE("an answer without a loop is a whole loop file", "[file]") {
  wish::Answer answer;
  answer.wish.minutes = 60;
  CHECK(file::write_answer(answer) == R"json({
 "format": "loopwright-loops",
 "version": 1,
 "area": {
  "file": "",
  "id": "",
  "region": "",
  "side": "",
  "map_timestamp": "",
  "credit": ""
 },
 "notes": null,
 "wish": {
  "home": {
   "lat": 0.0,
   "lon": 0.0
  },
  "end": null,
  "through": [],
  "start": "1970-01-01T00:00:00+00:00",
  "minutes": 60,
  "reserve_minutes": 0,
  "level": 3,
  "level_given": false,
  "alternatives": 1,
  "wants": [],
  "avoids": []
 },
 "loops": [],
 "fewer_because": null,
 "shortfall": null
}
)json");
}

TEST_CASE("a stretch of a loop is written with its way, its nodes and when we are there",
          "[file]") {
  const std::string text = file::write_answer(test::sample_answer());
  CHECK(part(text, "   \"stretches\"", "   \"passes\"") == R"json(   "stretches": [
    {
     "way": 123,
     "from": 11,
     "to": 14,
     "direction": "along",
     "from_index": 3,
     "to_index": 6,
     "metres": 80.5,
     "partial_m": [
      19.5,
      100.0
     ],
     "limit": {
      "value": 30,
      "unit": "mph",
      "confidence": "inferred"
     },
     "arrive_s": {
      "low": 0.0,
      "likely": 0.0,
      "high": 0.0
     },
     "street": "Mill Street"
    },
    {
     "way": 124,
     "from": 14,
     "to": 11,
     "direction": "against",
     "from_index": 3,
     "to_index": 6,
     "metres": 80.5,
     "limit": {
      "value": null,
      "unit": "mph",
      "confidence": "check"
     },
     "arrive_s": {
      "low": 9.0,
      "likely": 10.063,
      "high": 12.0
     },
     "street": ""
    }
   ],
)json");
}

TEST_CASE("passes and bus lanes are written with what says so", "[file]") {
  const std::string text = file::write_answer(test::sample_answer());
  CHECK(part(text, "   \"passes\"", "   \"met\"") == R"json(   "passes": [
    {
     "kind": "roundabout",
     "movement": "right",
     "exit": 3,
     "first": 0,
     "last": 1,
     "hardness": 3,
     "confidence": "certain",
     "source": {
      "type": "way",
      "id": 5,
      "tag": "junction=roundabout"
     }
    },
    {
     "kind": "level-crossing",
     "movement": null,
     "exit": null,
     "first": 1,
     "last": 1,
     "hardness": 2,
     "confidence": "certain",
     "source": {
      "type": "node",
      "id": 6,
      "tag": "railway=level_crossing"
     }
    }
   ],
   "bus_lanes": [
    {
     "first": 0,
     "last": 1,
     "side": "left",
     "hours": "Mo-Sa 16:00-19:00",
     "arrive": [
      "15:41",
      "15:47"
     ],
     "verdict": "usable",
     "why": "in force from 16:00; you pass 15:41 to 15:47",
     "source": {
      "type": "way",
      "id": 123,
      "tag": "lanes:bus:conditional=1 @ (Mo-Sa 16:00-19:00)"
     }
    }
   ],
   "pull_ups": [],
   "stops_after": [],
   "ways_home": [],
)json");
}

TEST_CASE("the certificate says how far from the best a loop may be", "[file]") {
  const std::string text = file::write_answer(test::sample_answer());
  CHECK(part(text, "   \"met\"", "  }\n ],\n \"fewer") == R"json(   "met": [
    {
     "kind": "roundabout",
     "movement": "right",
     "asked": 3,
     "got": 2
    }
   ],
   "certificate": {
    "state": "within",
    "value": 8000,
    "bound": 10000,
    "gap": 0.25,
    "candidates": 40,
    "left_out": 2
   }
)json");
}

TEST_CASE("a gap is a number only when there is a bound and a value to measure it by", "[file]") {
  const auto gap = [](std::int64_t value, std::optional<std::int64_t> bound) {
    wish::Answer answer = test::sample_answer();
    answer.loops[0].certificate.value = value;
    answer.loops[0].certificate.bound = bound;
    return part(file::write_answer(answer), "\"gap\"", ",");
  };
  CHECK(gap(8000, std::nullopt) == "\"gap\": null");
  CHECK(gap(8000, 8000) == "\"gap\": 0.0");
  CHECK(gap(3000, 4000) == "\"gap\": 0.333333");
  CHECK(gap(0, 0) == "\"gap\": 0.0");
  CHECK(gap(0, 1000) == "\"gap\": null");
  CHECK(gap(-500, -100) == "\"gap\": null");
}

TEST_CASE("the shortfall names the want, the nearest there is and the least time", "[file]") {
  const std::string text = file::write_answer(test::sample_answer());
  CHECK(part(text, " \"shortfall\"", "\n}\n") == R"json( "shortfall": {
  "why": "two of three roundabouts fit into the time",
  "missing": [
   {
    "kind": "roundabout",
    "movement": "right",
    "asked": 3,
    "got": 2,
    "why": "the nearest further one is too far",
    "nearest": {
     "type": "way",
     "id": 77
    },
    "nearest_minutes": 21.5,
    "needs_minutes": 71.26
   }
  ],
  "least_minutes": 68.0,
  "better_starts": []
 })json");
}

TEST_CASE("as many as fit is written as \"max\"", "[file]") {
  const std::string text = file::write_answer(test::sample_answer());
  CHECK(part(text, "    \"kind\": \"level-crossing\"", "   }\n  ],\n  \"avoids\"") ==
        "    \"kind\": \"level-crossing\",\n    \"movement\": null,\n    \"count\": \"max\"\n");
}

TEST_CASE("coordinates keep every digit the map has, and no more", "[file]") {
  wish::Answer answer;
  for (const std::int32_t lat_e7 : {515877001, -1, 899999999, 123456789}) {
    answer.wish.through.push_back({lat_e7, 0});
  }
  const std::string text = file::write_answer(answer);
  CHECK(text.find("\"lat\": 51.5877001,") != std::string::npos);
  CHECK(text.find("\"lat\": -1e-07,") != std::string::npos);
  CHECK(text.find("\"lat\": 89.9999999,") != std::string::npos);
  CHECK(text.find("\"lat\": 12.3456789,") != std::string::npos);
}

TEST_CASE("a street name that is no proper text doesn't spoil the file", "[file]") {
  wish::Answer answer = test::sample_answer();
  answer.loops[0].stretches[0].street = "Caf\xe9 \"Row\"\n";
  const std::string text = file::write_answer(answer);
  CHECK(text.find("\"street\": \"Caf\xef\xbf\xbd \\\"Row\\\"\\n\"") != std::string::npos);
  CHECK_NOTHROW(file::read_answer(text, "loops.json"));
}

}  // namespace
}  // namespace loopwright
