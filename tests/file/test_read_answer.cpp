#include <catch2/catch.hpp>

#include "file/sample_answer.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

std::string sample_text() {
  return file::write_answer(test::sample_answer());
}

/// What reading says when the first `from` of the sample's text is replaced.
std::string said_with(std::string_view from, std::string_view to,
                      std::string text = sample_text()) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
  try {
    file::read_answer(text, "loops.json");
  } catch (const InputError& error) {
    return error.what();
  }
  return "nothing";
}

TEST_CASE("an answer without loops is read", "[file]") {
  wish::Answer empty = test::sample_answer();
  empty.loops.clear();
  empty.shortfall.reset();
  const wish::Answer read = file::read_answer(file::write_answer(empty), "loops.json");
  CHECK(read.loops.empty());
  CHECK_FALSE(read.shortfall);
  CHECK(read.wish.wants == empty.wish.wants);
}

TEST_CASE("a loop file that is read and written again is the same, byte by byte", "[file]") {
  const std::string text = sample_text();
  CHECK(file::write_answer(file::read_answer(text, "loops.json")) == text);
}

TEST_CASE("a loop file keeps which notes it was made with", "[file]") {
  wish::Answer answer = test::sample_answer();
  answer.notes = wish::NotesName{"notes.geojson", "00ff"};
  const std::string text = file::write_answer(answer);
  CHECK(text.find("\"sha256\": \"00ff\"") != std::string::npos);
  CHECK(file::read_answer(text, "loops.json").notes == answer.notes);
}

TEST_CASE("a loop file keeps what was asked of bus lanes, and what holds on them", "[file]") {
  wish::Answer answer = test::sample_answer();
  answer.wish.wants.push_back(wish::read_want("bus-lane:in-force=2"));
  answer.loops[0].passes[0].kind = road::Kind::bus_lane;
  answer.loops[0].passes[0].verdict = wish::Verdict::check_the_plate;
  const std::string text = file::write_answer(answer);
  CHECK(text.find("\"verdict\": \"in force\",\n    \"count\": 2") != std::string::npos);
  const wish::Answer read = file::read_answer(text, "loops.json");
  CHECK(read.wish.wants == answer.wish.wants);
  CHECK(read.loops[0].passes == answer.loops[0].passes);
}

TEST_CASE("a verdict that can't be asked for is refused", "[file]") {
  wish::Answer answer = test::sample_answer();
  answer.wish.wants = {wish::read_want("bus-lane:usable")};
  const std::string text = file::write_answer(answer);
  CHECK_THAT(said_with("\"verdict\": \"usable\"", "\"verdict\": \"check the plate\"", text),
             Catch::StartsWith("loops.json: /wish/wants/0/verdict: expected usable or in force"));
  CHECK_THAT(said_with("\"verdict\": \"usable\"", "\"verdict\": \"open\"", text),
             Catch::StartsWith("loops.json: /wish/wants/0/verdict: expected usable, in force or "));
  CHECK_THAT(said_with("\"kind\": \"bus-lane\"", "\"kind\": \"zebra\"", text),
             Catch::StartsWith("loops.json: /wish/wants/0/verdict: expected no verdict"));
}

/// A wish that keeps off, welcomes, joins and caps.
wish::Answer with_limits() {
  wish::Answer answer = test::sample_answer();
  wish::Wish& wish = answer.wish;
  wish.wants.push_back(wish::read_want("turn-off:left+narrow-road=2"));
  wish.keep_offs = {{"Mill Street", {{515000000, -30000000}}, "Mo-Fr 08:15-09:15"},
                    {"the square", {{1, 2}, {3, 4}, {5, 6}}, ""}};
  wish.welcome = {road::Kind::zebra, road::Kind::signals};
  wish.spacings = {{road::Kind::roundabout, 300}};
  wish.place_passes = 3;
  wish.street_passes = 1;
  wish.street_use = {{7, 0, 5}, {9100000000071, 2, 2}, {9100000000072, 1200, 2'000'000'000}};
  wish.hardest = 4;
  answer.loops[0].certificate.reasons = {{"too hard", 4}, {"kept off", 1}};
  return answer;
}

TEST_CASE("a loop file keeps what a wish keeps off, welcomes, joins and caps", "[file]") {
  const std::string text = file::write_answer(with_limits());
  const wish::Answer read = file::read_answer(text, "loops.json");
  const wish::Wish asked = with_limits().wish;
  CHECK(read.wish.wants == asked.wants);
  CHECK(read.wish.keep_offs == asked.keep_offs);
  CHECK(read.wish.welcome == asked.welcome);
  CHECK(read.wish.spacings == asked.spacings);
  CHECK(read.wish.place_passes == 3);
  CHECK(read.wish.street_passes == 1);
  CHECK(read.wish.street_use == asked.street_use);
  CHECK(read.wish.hardest == 4);
  REQUIRE(read.loops[0].certificate.reasons.size() == 2);
  CHECK(read.loops[0].certificate.reasons[0].why == "too hard");
  CHECK(read.loops[0].certificate.reasons[0].count == 4);
  CHECK(file::write_answer(read) == text);
}

TEST_CASE("what a wish keeps off or caps is refused when it is malformed", "[file]") {
  const std::string text = file::write_answer(with_limits());
  const auto said = [&](std::string_view from, std::string_view to) {
    return said_with(from, to, text);
  };
  CHECK(said("\"into\": \"narrow-road\"", "\"into\": \"bay-park\"") ==
        "loops.json: /wish/wants/2/into: expected a kind that is driven, found \"bay-park\"");
  CHECK(said("\"hardest\": 4", "\"hardest\": 6") ==
        "loops.json: /wish/hardest: expected a whole number from 1 to 5, found 6");
  CHECK(said("\"place_passes\": 3", "\"place_passes\": 0") ==
        "loops.json: /wish/place_passes: expected a whole number from 1 to 99, found 0");
  CHECK(said("\"way\": 9100000000071", "\"way\": 7") ==
        "loops.json: /wish/street_use/1/way: expected ways in ascending order, found 7");
  CHECK(said("\"today\": 2", "\"today\": 3") ==
        "loops.json: /wish/street_use/1/month: expected no less than \"today\", found 2");
  CHECK(
      said("\"outline\": [", "\"outline\": [], \"was\": [") ==
      "loops.json: /wish/keep_offs/0/outline: expected one point, or three and more, found a list "
      "of 0");
  CHECK(said("\"count\": 4", "\"count\": 0") ==
        "loops.json: /loops/0/certificate/reasons/0/count: expected a whole number from 1 to "
        "9007199254740991, found 0");
}

wish::Answer with_terms() {
  wish::Answer answer = test::sample_answer();
  answer.wish.terms =
      hours::SchoolTerms({{{2026, 9, 2}, {2026, 10, 23}}, {{2026, 11, 2}, {2026, 12, 18}}});
  return answer;
}

TEST_CASE("a loop file keeps the school terms it was made with", "[file]") {
  const std::string text = file::write_answer(with_terms());
  const auto read = file::read_answer(text, "loops.json").wish.terms;
  REQUIRE(read);
  CHECK(read->parts() == with_terms().wish.terms->parts());
  wish::Answer without = test::sample_answer();
  without.wish.terms = hours::SchoolTerms();
  const auto none = file::read_answer(file::write_answer(without), "loops.json").wish.terms;
  REQUIRE(none);
  CHECK(none->empty());
}

TEST_CASE("a loop file of an older version says nothing of terms, ends and better starts",
          "[file]") {
  std::string text = sample_text();
  const std::size_t at = text.find(",\n  \"better_starts\": []");
  REQUIRE(at != std::string::npos);
  text.erase(at, text.find(']', at) - at + 1);
  const wish::Answer read = file::read_answer(text, "loops.json");
  CHECK_FALSE(read.wish.terms);
  CHECK_FALSE(read.loops.front().end);
  CHECK(read.shortfall->better_starts.empty());
}

TEST_CASE("malformed school terms in a loop file are told with their place", "[file]") {
  const std::string text = file::write_answer(with_terms());
  const auto said = [&](std::string_view from, std::string_view to) {
    return said_with(from, to, text);
  };
  CHECK(said("\"2026-10-23\"", "\"2026-13-23\"") ==
        "loops.json: /wish/terms/0/last: expected a date like \"2026-10-03\", found "
        "\"2026-13-23\"");
  CHECK(said("\"2026-10-23\"", "\"2026-08-23\"") ==
        "loops.json: /wish/terms/0/last: expected a day not before \"first\", found "
        "\"2026-08-23\"");
  CHECK(said("\"2026-11-02\"", "\"2026-10-23\"") ==
        "loops.json: /wish/terms/1/first: expected a day after the part before it, found "
        "\"2026-10-23\"");
  CHECK(said("\"2026-11-02\"", "7") == "loops.json: /wish/terms/1/first: expected a text, found 7");
}

TEST_CASE("a loop file with more terms than a hundred years have is refused", "[file]") {
  wish::Answer many = test::sample_answer();
  std::vector<hours::TermPart> parts;
  for (int day = 0; day <= 1000; ++day)
    parts.push_back({date_from_days(20'000 + 2 * day), date_from_days(20'000 + 2 * day)});
  many.wish.terms = hours::SchoolTerms(std::move(parts));
  CHECK_THROWS_AS(file::read_answer(file::write_answer(many), "loops.json"), InputError);
}

TEST_CASE("a loop file keeps when a loop ends, and better starts", "[file]") {
  wish::Answer answer = test::sample_answer();
  answer.loops.front().end = Instant{1795881300, 0};
  answer.shortfall->better_starts = {{1795870800, 0}, {1795881600, 0}};
  const wish::Answer read = file::read_answer(file::write_answer(answer), "loops.json");
  CHECK(read.loops.front().end == answer.loops.front().end);
  CHECK(read.shortfall->better_starts == answer.shortfall->better_starts);
}

TEST_CASE("a drive through points is read and written again the same", "[file]") {
  wish::Answer answer = test::sample_answer();
  answer.wish.minutes.reset();
  answer.wish.end = Point{515000000, -30000001};
  answer.wish.through = {{515900001, -29900000}, {515900002, -29900003}};
  answer.loops[0].certificate = {};
  answer.shortfall->missing[0].nearest.reset();
  answer.shortfall->missing[0].nearest_minutes.reset();
  answer.shortfall->missing[0].needs_minutes.reset();
  answer.shortfall->least_minutes.reset();
  answer.fewer_because.clear();
  const std::string text = file::write_answer(answer);
  const wish::Answer read = file::read_answer(text, "loops.json");
  CHECK(read.wish.through == answer.wish.through);
  CHECK(read.wish.end == answer.wish.end);
  CHECK(file::write_answer(read) == text);
}

TEST_CASE("what is avoided by one movement is read and written again the same", "[file]") {
  wish::Answer answer = test::sample_answer();
  answer.wish.avoids = {{road::Kind::zebra}, {road::Kind::signals, road::Movement::right}};
  const std::string text = file::write_answer(answer);
  const wish::Answer read = file::read_answer(text, "loops.json");
  CHECK(read.wish.avoids == answer.wish.avoids);
  CHECK(file::write_answer(read) == text);
}

TEST_CASE("everything in a loop file comes back with its meaning", "[file]") {
  const wish::Answer read = file::read_answer(sample_text(), "loops.json");
  CHECK(read.area.credit == "© OpenStreetMap contributors (ODbL)");
  CHECK(read.wish.home == Point{515877000, -29984000});
  CHECK(read.wish.start == Instant{1795878000, 0});
  CHECK(read.wish.avoids == test::sample_wish().avoids);
  REQUIRE(read.loops.size() == 1);
  const wish::Loop& loop = read.loops[0];
  CHECK(loop.passes == test::sample_loop().passes);
  CHECK(loop.stretches[1].against);
  CHECK(loop.stretches[1].limit.value == 0);
  CHECK(loop.stretches[0].partial_m == std::array<double, 2>{19.5, 100});
  CHECK(loop.bus_lanes[0].verdict == wish::Verdict::usable);
  CHECK(loop.certificate.bound == 10000);
  REQUIRE(read.shortfall);
  CHECK(read.shortfall->missing[0].nearest->id == 77);
}

TEST_CASE("keys that nobody knows are ignored, and later additions may be missing", "[file]") {
  CHECK(said_with("\"level_given\": true,", "\"weather\": [{}],") == "nothing");
  CHECK(said_with("\"through\": [],", "") == "nothing");
  CHECK(said_with("\"metres_twice\": 300.0,", "") == "nothing");
  CHECK(said_with("\"pull_ups\": [],", "") == "nothing");
}

TEST_CASE("what isn't JSON says at which byte", "[file]") {
  CHECK_THROWS_WITH(file::read_answer("", "loops.json"),
                    "loops.json: is empty; make it again with 'loopwright loops'");
  CHECK_THROWS_WITH(file::read_answer("{\"format\": !", "loops.json"),
                    "loops.json: is no JSON at byte 12; make it again with 'loopwright loops'");
  CHECK_THROWS_WITH(file::read_answer(std::string(1000000, '['), "loops.json"),
                    "loops.json: is no JSON at byte 1000001; "
                    "make it again with 'loopwright loops'");
  CHECK_THROWS_WITH(file::read_answer("[1e999]", "loops.json"),
                    "loops.json: holds a number that is too large; "
                    "make it again with 'loopwright loops'");
}

TEST_CASE("JSON of another kind or version is refused", "[file]") {
  const std::string no_loops = "loops.json: is not a loop file; make one with 'loopwright loops'";
  CHECK_THROWS_WITH(file::read_answer("[]", "loops.json"), no_loops);
  CHECK_THROWS_WITH(file::read_answer("{}", "loops.json"), no_loops);
  CHECK(said_with("loopwright-loops", "loopwright-notes") == no_loops);
  CHECK(said_with("\"version\": 1", "\"version\": 2") ==
        "loops.json: was written by another version (loop file 2, this program reads 1); "
        "make it again with 'loopwright loops'");
  CHECK(said_with("\"version\": 1", "\"version\": \"1\"") ==
        "loops.json: /version: expected a whole number from 0 to 9007199254740991, found \"1\"");
}

TEST_CASE("a missing or mistyped member is named by its place", "[file]") {
  CHECK(said_with("\"way\"", "\"weg\"") == "loops.json: /loops/0/stretches/0/way: is missing");
  CHECK(said_with("\"way\": 124", "\"way\": \"124\"") ==
        "loops.json: /loops/0/stretches/1/way: expected a whole number from -9007199254740991 to "
        "9007199254740991, found \"124\"");
  CHECK(said_with("\"way\": 124", "\"way\": 124.5") ==
        "loops.json: /loops/0/stretches/1/way: expected a whole number from -9007199254740991 to "
        "9007199254740991, found 124.5");
  CHECK(said_with("\"street\": \"Mill Street\"", "\"street\": null") ==
        "loops.json: /loops/0/stretches/0/street: expected a text, found null");
  CHECK(said_with("\"level_given\": true", "\"level_given\": 1") ==
        "loops.json: /wish/level_given: expected true or false, found 1");
  CHECK(said_with("\"loops\": [", "\"loops\": 7, \"x\": [") ==
        "loops.json: /loops: expected a list of at most 1000, found 7");
  CHECK(said_with("\"area\": {", "\"area\": [], \"x\": {") ==
        "loops.json: /area: expected an object, found a list of 0");
}

TEST_CASE("numbers outside their range are refused", "[file]") {
  CHECK(said_with("\"from_index\": 3", "\"from_index\": -3") ==
        "loops.json: /loops/0/stretches/0/from_index: expected a whole number from 0 to "
        "4294967295, found -3");
  CHECK(said_with("\"from_index\": 3", "\"from_index\": 18446744073709551615") ==
        "loops.json: /loops/0/stretches/0/from_index: expected a whole number from 0 to "
        "4294967295, found 18446744073709551615");
  CHECK(said_with("\"metres\": 80.5", "\"metres\": -80.5") ==
        "loops.json: /loops/0/stretches/0/metres: expected a number from 0.0 to 100000000.0, "
        "found -80.5");
  CHECK(said_with("\"lat\": 51.5877", "\"lat\": 151.5877") ==
        "loops.json: /wish/home/lat: expected a number from -90.0 to 90.0, found 151.5877");
  CHECK(said_with("\"minutes\": 60", "\"minutes\": 100000") ==
        "loops.json: /wish/minutes: expected a whole number from 1 to 1440, found 100000");
  CHECK(said_with("\"level\": 2", "\"level\": 0") ==
        "loops.json: /wish/level: expected a whole number from 1 to 5, found 0");
}

TEST_CASE("a pass can't lie outside the loop's stretches or end before it begins", "[file]") {
  CHECK(said_with("\"last\": 1", "\"last\": 2") ==
        "loops.json: /loops/0/passes/0/last: expected a whole number from 0 to 1, found 2");
  CHECK(said_with("\"first\": 1,\n     \"last\": 1", "\"first\": 1,\n     \"last\": 0") ==
        "loops.json: /loops/0/passes/1/last: expected a whole number from 1 to 1, found 0");
}

TEST_CASE("words that the loop file doesn't know are refused with those it knows", "[file]") {
  CHECK(said_with("\"direction\": \"along\"", "\"direction\": \"up\"") ==
        "loops.json: /loops/0/stretches/0/direction: expected \"along\" or \"against\", "
        "found \"up\"");
  CHECK(said_with("\"side\": \"left\"", "\"side\": \"middle\"") ==
        "loops.json: /area/side: expected \"left\" or \"right\", found \"middle\"");
  CHECK(said_with("\"kind\": \"dual-carriageway\"", "\"kind\": \"dual\"") ==
        "loops.json: /wish/avoids/0/kind: expected a practice kind, found \"dual\"");
  CHECK(said_with("\"count\": \"max\"", "\"count\": \"most\"") ==
        "loops.json: /wish/wants/1/count: expected \"max\", found \"most\"");
  CHECK(said_with("\"verdict\": \"usable\"", "\"verdict\": \"open\"") ==
        "loops.json: /loops/0/bus_lanes/0/verdict: expected usable, in force or check the plate, "
        "found \"open\"");
  CHECK(said_with("\"unit\": \"mph\"", "\"unit\": \"knots\"") ==
        "loops.json: /loops/0/stretches/0/limit/unit: expected \"mph\" or \"km/h\", "
        "found \"knots\"");
}

TEST_CASE("times are whole times with an offset", "[file]") {
  CHECK(said_with("\"start\": \"2026-11-28T15:00:00+00:00\"", "\"start\": \"2026-11-28T15:00\"") ==
        "loops.json: /wish/start: expected a time since 1970, like \"2026-11-28T15:00:00+00:00\", "
        "found \"2026-11-28T15:00\"");
  CHECK(said_with("\"15:47\"", "\"15:77\"") ==
        "loops.json: /loops/0/bus_lanes/0/arrive/1: expected a time like \"15:41\", "
        "found \"15:77\"");
}

TEST_CASE("a gap that value and bound don't give is refused", "[file]") {
  CHECK(said_with("\"gap\": 0.25", "\"gap\": 0.01") ==
        "loops.json: /loops/0/certificate/gap: expected bound / value - 1, or null for no bound, "
        "found 0.01");
}

TEST_CASE("notes without their hash are refused", "[file]") {
  CHECK(said_with("\"notes\": null", "\"notes\": {\"file\": \"n\"}") ==
        "loops.json: /notes/sha256: is missing");
}

TEST_CASE("a place to pull up without what says where is refused", "[file]") {
  CHECK(said_with("\"pull_ups\": []", "\"pull_ups\": [{}]") ==
        "loops.json: /loops/0/pull_ups/0/stretch: is missing");
}

TEST_CASE("lists longer than any loop are refused before they fill the memory", "[file]") {
  std::string points = "\"through\": [0";
  for (int i = 0; i < 1000; ++i) points += ",0";
  CHECK(said_with("\"through\": []", points + "]") ==
        "loops.json: /wish/through: expected a list of at most 1000, found a list of 1001");
}

TEST_CASE("no damaged byte makes reading a loop file end otherwise than with a line", "[file]") {
  const std::string text = sample_text();
  std::size_t refused = 0;
  for (std::size_t at = 0; at < text.size(); at += 5) {
    for (const char other : {'7', '"', '}', '\xff'}) {
      std::string damaged = text;
      damaged[at] = other;
      try {
        file::read_answer(damaged, "loops.json");
      } catch (const InputError& error) {
        refused += std::string_view(error.what()).substr(0, 12) == "loops.json: ";
      }
    }
  }
  CHECK(refused > text.size() / 5);  // '\xff' alone is never UTF-8
}

TEST_CASE("a long text is not repeated in the message", "[file]") {
  CHECK(said_with("\"direction\": \"along\"", "\"direction\": \"" + std::string(500, 'a') + "\"") ==
        "loops.json: /loops/0/stretches/0/direction: expected \"along\" or \"against\", "
        "found a text of 502 bytes");
}

TEST_CASE("a loop file is read from the disk; a missing one says how to make it", "[file]") {
  const test::ScratchFolder folder;
  test::write_bytes(folder / "loops.json", sample_text());
  CHECK(file::load_answer(folder / "loops.json").loops.size() == 1);
  CHECK_THROWS_WITH(file::load_answer("nowhere/loops.json"),
                    "nowhere/loops.json: no such file; make it with 'loopwright loops'");
  CHECK_THROWS_WITH(file::load_answer(folder.path()),
                    folder.path().string() + ": is a folder, not a loop file");
}

}  // namespace
}  // namespace loopwright
