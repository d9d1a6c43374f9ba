// What an extract gives, in whatever order and form it comes. OPL: one object a line, see the
// manual of libosmium, "OPL file format".
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/read/build.hpp"
#include "support/scratch_folder.hpp"

using namespace std::string_literals;

namespace loopwright::read {
namespace {

mark::RawMap scan_text(std::string_view name, std::string_view bytes) {
  const test::ScratchFolder folder;
  test::write_bytes(folder / name, bytes);
  return scan_map(folder / name, {});
}

mark::RawMap scan_opl(std::string_view text) {
  return scan_text("town.opl", text);
}

/// The text of the refusal, with the folder's name taken off.
std::string refusal(std::string_view name, std::string_view bytes) {
  const test::ScratchFolder folder;
  test::write_bytes(folder / name, bytes);
  try {
    scan_map(folder / name, {});
  } catch (const InputError& error) {
    const std::string text = error.what();
    const std::string path = (folder.path() / "").string();
    REQUIRE(text.starts_with(path));
    return text.substr(path.size());
  }
  return "accepted";
}

constexpr std::string_view two_roads =
    "n1 v1 x2.6 y54.3\n"
    "n2 v1 x2.601 y54.3 Thighway=traffic_signals\n"
    "n3 v1 x2.602 y54.3\n"
    "n9 v1 x2.7 y54.4 Tamenity=bench\n"
    "w5 v1 Thighway=residential,name=Elm%20%Row Nn1,n2\n"
    "w6 v1 Thighway=primary Nn2,n3\n"
    "w7 v1 Thighway=footway Nn2,n9\n"
    "w8 v1 Trailway=rail Nn1,n3\n"
    "r3 v1 Ttype=restriction,restriction=no_u_turn Mw5@from,n2@via,w6@to\n"
    "r4 v1 Ttype=route,route=bus Mw6@,n2@stop\n"
    "r5 v1 Ttype=route,route=bicycle Mw5@\n";

// Not names of extract kinds: what is looked for is in the bytes.
constexpr std::string_view osm_xml =
    "<?xml version='1.0'?><osm version='0.6'>"
    "<node id='1' lat='54.3' lon='2.6'/><node id='2' lat='54.3' lon='2.601'/>"
    "<way id='5'><nd ref='1'/><nd ref='2'/><tag k='highway' v='tertiary'/></way></osm>";

}  // namespace

TEST_CASE("an empty file is refused", "[read]") {
  CHECK(refusal("town.osm.pbf", "") == "town.osm.pbf: is empty; fetch the extract again");
}

TEST_CASE("roads, rails, their nodes, restrictions and bus routes are read", "[read]") {
  const mark::RawMap map = scan_opl(two_roads);
  REQUIRE(map.ways.size() == 2);
  CHECK(map.ways[0].id == 5);
  CHECK(map.ways[0].tags.get("name") == "Elm Row");
  CHECK(map.ways[1].nodes == std::vector<std::int64_t>{2, 3});
  REQUIRE(map.rails.size() == 1);
  CHECK(map.rails[0].id == 8);
  REQUIRE(map.nodes.size() == 3);  // the bench on the footpath isn't needed
  CHECK(map.nodes[1].at == point_from_degrees(54.3, 2.601));
  REQUIRE(map.node_tags.size() == 1);
  CHECK(map.tags_of_node(2).is("highway", "traffic_signals"));
  REQUIRE(map.restrictions.size() == 1);
  CHECK(map.restrictions[0].members[1].type == 'n');
  CHECK(map.restrictions[0].members[1].role == "via");
  CHECK(map.bus_route_ways == std::vector<std::int64_t>{6});
  CHECK(map.repeated_ids == 0);
}

TEST_CASE("XML is read as OPL is", "[read]") {
  const mark::RawMap map = scan_text("town.osm", osm_xml);
  REQUIRE(map.ways.size() == 1);
  CHECK(map.nodes.size() == 2);
}

TEST_CASE("a file in any order reads the same", "[read]") {
  std::vector<std::string> lines;
  std::string backwards;
  for (std::size_t at = 0; at < two_roads.size();) {
    const std::size_t end = two_roads.find('\n', at) + 1;
    backwards.insert(0, two_roads.substr(at, end - at));
    at = end;
  }
  const mark::RawMap sorted = scan_opl(two_roads), unsorted = scan_opl(backwards);
  REQUIRE(unsorted.ways.size() == sorted.ways.size());
  for (std::size_t i = 0; i < sorted.ways.size(); ++i) {
    CHECK(unsorted.ways[i].id == sorted.ways[i].id);
    CHECK(unsorted.ways[i].nodes == sorted.ways[i].nodes);
  }
  REQUIRE(unsorted.nodes.size() == sorted.nodes.size());
  CHECK(unsorted.nodes[2].id == 3);
  CHECK(unsorted.tags_of_node(2).is("highway", "traffic_signals"));
  CHECK(unsorted.bus_route_ways == sorted.bus_route_ways);
}

TEST_CASE("the newest data gives the map its date when the header doesn't", "[read]") {
  CHECK(scan_opl(two_roads).timestamp.empty());
  CHECK(scan_opl("n1 v1 t2023-05-01T10:00:00Z x2.6 y54.3\nn2 v1 t2024-02-03T04:05:06Z x2.61 y54.3\n"
                 "w1 v1 t2022-01-01T00:00:00Z Thighway=primary Nn1,n2\n")
            .timestamp == "2024-02-03T04:05:06Z");
}

TEST_CASE("of two objects with one id the newer version stays", "[read]") {
  const mark::RawMap map = scan_opl(
      "n1 v1 x2.6 y54.3\nn1 v3 x2.7 y54.3\nn2 v1 x2.61 y54.3\n"
      "w1 v2 Thighway=primary Nn1,n2\nw1 v1 Thighway=trunk Nn2,n1\n");
  CHECK(map.repeated_ids == 2);
  REQUIRE(map.ways.size() == 1);
  CHECK(map.ways[0].tags.is("highway", "primary"));
  CHECK(map.nodes[0].at == point_from_degrees(54.3, 2.7));
}

TEST_CASE("of two objects with one id and version the first stays", "[read]") {
  const mark::RawMap map = scan_opl(
      "n1 x2.6 y54.3\nn2 x2.61 y54.3\nw1 Thighway=primary Nn1,n2\nw1 Thighway=trunk Nn2,n1\n");
  CHECK(map.repeated_ids == 1);
  CHECK(map.ways.at(0).tags.is("highway", "primary"));
}

TEST_CASE("a point off the globe is no point", "[read]") {
  const mark::RawMap map =
      scan_opl("n1 x2.6 y54.3\nn2 x2.61 y95.0\nn3 x2.62 y54.3\nw1 Thighway=primary Nn1,n2,n3\n");
  CHECK(map.nodes.size() == 2);
}

TEST_CASE("a map file that isn't there is refused by name", "[read]") {
  CHECK_THROWS_WITH(scan_map("/nowhere/town.osm.pbf", {}),
                    "/nowhere/town.osm.pbf: No such file or directory; check the name");
  CHECK_THROWS_WITH(scan_map("/", {}), "/: is a folder; name a map extract");
}

TEST_CASE("a file of another kind is refused", "[read]") {
  CHECK(refusal("notes.txt", "hello") ==
        "notes.txt: its name is not that of a map extract; use .osm.pbf, .osm, .osm.bz2, .osm.gz "
        "or .opl");
  CHECK(refusal("town.osm.pbf", "this is a letter to my aunt, not a map at all") ==
        "town.osm.pbf: can't be read as a map (PBF error: invalid BlobHeader size (> "
        "max_blob_header_size)); it may be cut short: fetch it again");
  CHECK(refusal("town.osm", "<html><body>404</body></html>") ==
        "town.osm: can't be read as a map (Unknown top-level element: html); it may be cut short: "
        "fetch it again");
}

TEST_CASE("a file of the map's history is refused, since one day must be chosen", "[read]") {
  CHECK(refusal("town.osh.opl", two_roads) ==
        "town.osh.opl: holds the map's history; cut one day out of it with 'osmium time-filter'");
}

TEST_CASE("a file cut short is refused", "[read]") {
  // Length of the first header (13 bytes), and the header, which promises 16 bytes more.
  CHECK(refusal("town.osm.pbf", "\0\0\0\x0d\x0a\x09OSMHeader\x18\x10"s) ==
        "town.osm.pbf: can't be read as a map (PBF error: unexpected EOF); it "
        "may be cut short: fetch it again");
  CHECK_THAT(refusal("town.osm", osm_xml.substr(0, osm_xml.size() - 20)),
             Catch::StartsWith("town.osm: can't be read as a map (XML parsing error at line 1"));
  CHECK_THAT(refusal("town.opl", "n1 x2.6 y54.3\nw1 Thighway=primary Nn1,n"),
             Catch::StartsWith("town.opl: can't be read as a map (OPL error: "));
  // The first bytes of any bzip2 and any gzip file.
  CHECK_THAT(refusal("town.osm.bz2", "BZh91AY&SY"),
             Catch::StartsWith("town.osm.bz2: can't be read as a map (bzip2 error: "));
  CHECK_THAT(refusal("town.osm.gz", "\x1f\x8b\x08\0\0\0\0\0\0\x03"s),
             Catch::StartsWith("town.osm.gz: can't be read as a map ("));
}

TEST_CASE("a map without roads is refused", "[read]") {
  CHECK(refusal("town.opl", "n1 x2.6 y54.3 Tamenity=bench\n") ==
        "town.opl: holds no road for cars; choose another extract");
}

}  // namespace loopwright::read
