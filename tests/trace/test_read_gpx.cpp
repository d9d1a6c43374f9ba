// Reading recordings. Form: TopoGrafix's schemas of GPX 1.0 and 1.1; what phones and recorders write beside them is told
// where it stands (from memory of such files).
#include <catch2/catch.hpp>

#include "loopwright/trace/recording.hpp"
#include "support/error_text.hpp"

namespace loopwright::trace {
namespace {

using test::error_text;

std::string gpx(const std::string& points) {
  return "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"t\" "
         "xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n" +
         points + "</trkseg></trk></gpx>\n";
}

std::string point(const std::string& lat, const std::string& lon, const std::string& time) {
  return "<trkpt lat=\"" + lat + "\" lon=\"" + lon + "\"><ele>12</ele><time>" + time +
         "</time></trkpt>\n";
}

std::string refusal(const std::string& text) {
  return error_text([&] { read_gpx(text, "a.gpx"); });
}

constexpr double three = 1'795'878'000;  // 2026-11-28T15:00:00Z, as `date -d` has it

TEST_CASE("a file without a point of a track is refused in one line", "[trace]") {
  CHECK(refusal("") == "a.gpx: is no GPX file; record the drive as a GPX track");
  CHECK(refusal("points, some") == "a.gpx: is no GPX file; record the drive as a GPX track");
  CHECK(refusal("<kml><Placemark/></kml>") ==
        "a.gpx: is no GPX file; record the drive as a GPX track");
  CHECK(refusal(gpx("")) == "a.gpx: has no point of a track; record the drive as a GPX track");
  CHECK(
      refusal("<gpx><wpt lat=\"54.3\" lon=\"2.6\"><time>2026-11-28T15:00:00Z</time></wpt></gpx>") ==
      "a.gpx: has no point of a track; record the drive as a GPX track");
  CHECK(refusal(gpx("<trkpt lat=\"54.3\" lon=\"2.6\"/>")) ==
        "a.gpx: none of its 1 points has a time; record the drive as a track with times");
}

TEST_CASE("points come with place and time", "[trace]") {
  const Recording read = read_gpx(gpx(point("54.3", "2.6", "2026-11-28T15:00:00Z") +
                                      point("54.3001", "-2.5", "2026-11-28T15:00:05Z")),
                                  "a.gpx");
  REQUIRE(read.fixes.size() == 2);
  CHECK(read.fixes[0].at == point_from_degrees(54.3, 2.6));
  CHECK(read.fixes[0].unix_s == three);
  CHECK(read.fixes[1].at == point_from_degrees(54.3001, -2.5));
  CHECK(read.fixes[1].unix_s == three + 5);
  CHECK(read.broken_off.empty());
}

TEST_CASE("times may have fractions, offsets, blanks or no zone, and elements a prefix",
          "[trace]") {
  const auto seconds = [](const std::string& time) {
    return read_gpx(gpx(point("54.3", "2.6", time)), "a.gpx").fixes.at(0).unix_s - three;
  };
  CHECK(seconds("2026-11-28T15:00:00.250Z") == Approx(0.25));
  CHECK(seconds("2026-11-28T16:00:00+01:00") == 0);
  CHECK(seconds("2026-11-28T16:00:00.5+01:00") == Approx(0.5));
  CHECK(seconds("\n 2026-11-28T15:00:00Z ") == 0);
  CHECK(seconds("2026-11-28T15:00:00") == 0);  // UTC, as the schema says of all times
  const std::string prefixed =
      "<g:gpx xmlns:g=\"http://www.topografix.com/GPX/1/0\"><g:trk><g:trkseg><g:trkpt lat=\"54.3\" "
      "lon=\"2.6\"><g:time>2026-11-28T15:00:00Z</g:time></g:trkpt></g:trkseg></g:trk></g:gpx>";
  CHECK(read_gpx(prefixed, "a.gpx").fixes.size() == 1);
}

TEST_CASE("the time of a link or of the file is no time of a point", "[trace]") {
  const std::string text =
      "<gpx><metadata><time>2020-01-01T00:00:00Z</time></metadata><trk><trkseg>" +
      point("54.3", "2.6", "2026-11-28T15:00:00Z") +
      "<trkpt lat=\"54.4\" lon=\"2.6\"/></trkseg></trk></gpx>";
  const Recording read = read_gpx(text, "a.gpx");
  CHECK(read.fixes.size() == 1);
  CHECK(read.without_time == 1);
}

TEST_CASE("what can't be a place or a time is left out and counted", "[trace]") {
  const Recording read =
      read_gpx(gpx(point("54.3", "2.6", "2026-11-28T15:00:10Z") +
                   point("95", "2.6", "2026-11-28T15:00:11Z") +
                   point("54.3", "190", "2026-11-28T15:00:12Z") +
                   point("nan", "2.6", "2026-11-28T15:00:13Z") +
                   point("0", "0", "2026-11-28T15:00:14Z") + point("", "", "2026-11-28T15:00:15Z") +
                   point("54.3", "2.6", "noon") + point("54.3", "2.6", "2026-02-30T15:00:00Z") +
                   point("54.3", "2.6", "0000-01-01T00:00:00+23:59") +
                   point("54.3", "2.6", "9999-12-31T23:59:59Z") +
                   point("54.4", "2.6", "2026-11-28T15:00:10Z") +
                   point("54.5", "2.6", "2026-11-28T15:00:00Z")),
               "a.gpx");
  REQUIRE(read.fixes.size() == 2);
  CHECK(read.fixes[0].at == point_from_degrees(54.5, 2.6));  // put in order
  CHECK(read.fixes[1].at == point_from_degrees(54.3, 2.6));  // the first of that time
  CHECK(read.off_earth == 5);
  CHECK(read.without_time == 4);
  CHECK(read.same_time == 1);
}

TEST_CASE("a file that breaks off is read up to there", "[trace]") {
  const std::string whole = gpx(point("54.3", "2.6", "2026-11-28T15:00:00Z") +
                                point("54.3", "2.7", "2026-11-28T15:00:05Z"));
  const Recording read = read_gpx(whole.substr(0, whole.rfind("<ele>")), "a.gpx");
  CHECK(read.fixes.size() == 1);
  CHECK(read.broken_off.starts_with("line 4: "));
}

// What an XML file may do to its reader (the "billion laughs"); expat's own bound isn't relied on.
TEST_CASE("entities are refused", "[trace]") {
  CHECK(refusal(
            "<!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;\">]><gpx>&b;</gpx>") ==
        "a.gpx: declares entities, which no recorded drive needs; export the track again");
}

}  // namespace
}  // namespace loopwright::trace
