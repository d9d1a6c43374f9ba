// The kerbs at which a drive begins and ends. A ban's hours are as written; that setting down is no waiting:
// Highway Code rules 238 and 240. The drive starts on Saturday 28 November 2026 at 15:00.
#include <catch2/catch.hpp>

#include "loopwright/lanes/door_kerb.hpp"
#include "loopwright/wish/lesson.hpp"
#include "support/honest_loop.hpp"

namespace loopwright::test {
namespace {

/// Round the block from the middle of AB, driven to the east, and back to it; one lap takes minutes.
BuiltTown block(const std::string& tags) {
  return built_town("A     B\n\n\nD     C\nw1 AB highway=primary maxspeed=30 name=Fore_Street " +
                    tags +
                    "\nw2 BC highway=residential\nw3 CD highway=residential\n"
                    "w4 DA highway=residential\n");
}

/// Two lines: of the begin, of the end; none where nothing is told.
std::string told(const std::string& tags, std::int64_t later_s = 0) {
  const BuiltTown town = block(tags);
  const road::Roads roads = town.roads();
  wish::Loop loop = honest_answer(town, "ABCDAB").loops[0];
  loop.start = loop.start.plus_seconds(later_s);
  const hours::Setting setting = setting_of(roads);
  std::string text;
  for (const lanes::DoorKerb& kerb : lanes::door_kerbs({roads, loop, setting}))
    text +=
        (kerb.which == lanes::DoorEnd::end ? "end: " : "begin: ") + lanes::kerb_words(kerb) + "\n";
  return text;
}

std::string left(std::string_view conditional) {
  return "parking:left:restriction:conditional=\"" + std::string(conditional) + "\"";
}

TEST_CASE("a kerb without a mapped ban isn't told of", "[lanes][kerb]") {
  CHECK(told("").empty());
  CHECK(told("parking:left=lane").empty());
}

TEST_CASE("a ban that holds at the begin and the end says so, and what to do", "[lanes][kerb]") {
  const std::string text = told(left("no_parking @ (Mo-Sa 08:00-18:30)"));
  CHECK(text.starts_with(
      "begin: no parking Monday to Saturday, eight till half past six; in force at "
      "15:00: pick up and go, talk elsewhere\nend: no parking"));
  CHECK(text.ends_with(": only set down here, talk elsewhere\n"));
}

TEST_CASE("where nobody may stop, nobody is set down", "[lanes][kerb]") {
  const std::string text = told("parking:left:restriction=no_stopping");
  CHECK(text ==
        "begin: no stopping at any time; in force: pick up elsewhere\n"
        "end: no stopping at any time; in force: let the pupil out elsewhere\n");
}

TEST_CASE("outside its hours a ban is told without advice", "[lanes][kerb]") {
  CHECK(told(left("no_parking @ (Mo-Fr 08:00-18:30)"))
            .starts_with(
                "begin: no parking Monday to Friday, eight till half past six; not in force at "
                "15:00\nend: no parking Monday to Friday, eight till half past six; not in "
                "force at 15:"));
}

TEST_CASE("a ban that begins about when one ends is told with its change", "[lanes][kerb]") {
  // So that four o'clock lies between the quick and the slow end.
  const BuiltTown town = block("");
  const wish::Loop loop = honest_answer(town, "ABCDAB").loops[0];
  const auto later = 3600 - static_cast<std::int64_t>(loop.seconds.likely);
  const std::string text = told(left("no_parking @ (Sa 16:00-18:30)"), later);
  CHECK(
      text.find("end: no parking Saturday, four till half past six; it changes at 16:00, check the "
                "plate: only set down here, talk elsewhere\n") != text.npos);
}

TEST_CASE("hours of a ban that nobody can read: check the plate", "[lanes][kerb]") {
  const std::string text = told(left("no_parking @ (match (days)"));
  CHECK(text.find("no parking at hours that can't be read (") != text.npos);
  CHECK(text.find("; check the plate: only set down here, talk elsewhere\n") != text.npos);
  CHECK(text.find('?') == text.npos);
}

TEST_CASE("the kerb is that of the side one drives on", "[lanes][kerb]") {
  CHECK(told("parking:right:restriction=no_parking").empty());
  CHECK_FALSE(told("parking:both:restriction=no_parking").empty());
}

}  // namespace
}  // namespace loopwright::test
