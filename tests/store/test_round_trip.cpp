#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"
#include "store/tiny_area.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

using test::ScratchFolder;

TEST_CASE("an area without a single road is written and opened", "[store]") {
  const ScratchFolder folder;
  store::write_area(folder / "empty.area", {}, test::tiny_info());
  const store::Area area = store::open_area(folder / "empty.area");
  CHECK(area.roads().nodes.empty());
  CHECK(area.roads().info().region.code == "GB-WLS");
  CHECK_NOTHROW(store::verify_area(folder / "empty.area"));
}

TEST_CASE("what is written to an area file is there when it is opened", "[store]") {
  const ScratchFolder folder;
  const std::string id =
      store::write_area(folder / "tiny.area", test::tiny_tables(), test::tiny_info());
  const store::Area area = store::open_area(folder / "tiny.area");
  const road::Roads& roads = area.roads();
  CHECK(roads.info().id == id);
  CHECK(roads.info().region.side == Side::left);
  CHECK(roads.info().region.unit == SpeedUnit::mph);
  CHECK(roads.info().region.own_rules);
  CHECK(roads.info().map_timestamp == "2026-11-01T00:00:00Z");
  CHECK(roads.info().source_file == "tiny.opl");
  CHECK(roads.info().zone == "Europe/London");
  CHECK_FALSE(roads.info().motorways);
  REQUIRE(roads.nodes.size() == 2);
  CHECK(roads.nodes[1].osm_id == 12);
  CHECK(roads.piece(StretchId{0}).way == 7);
  CHECK(roads.text(roads.pieces[0].name) == "Mill Street");
  CHECK(roads.turns_from(StateId{0})[0].to == StateId{1});
  CHECK_NOTHROW(store::verify_area(folder / "tiny.area"));
}

TEST_CASE("an area outlives the file's name and the object it was opened with", "[store]") {
  const ScratchFolder folder;
  store::write_area(folder / "tiny.area", test::tiny_tables(), test::tiny_info());
  store::Area kept;
  {
    const store::Area opened = store::open_area(folder / "tiny.area");
    kept = opened;
  }
  std::filesystem::remove(folder / "tiny.area");
  CHECK(kept.roads().text(TextId{1}) == "Mill Street");
}

TEST_CASE("the index of names is kept and checked, but the id doesn't hang on it", "[store]") {
  const ScratchFolder folder;
  road::Tables tables = test::tiny_tables();
  const std::string bare = store::write_area(folder / "a.area", tables, test::tiny_info());
  tables.place_index = {'i', 'n', 'd', 'e', 'x'};
  const std::string indexed = store::write_area(folder / "b.area", tables, test::tiny_info());
  CHECK(indexed == bare);
  CHECK(store::open_area(folder / "b.area").roads().place_index.size() == 5);
  CHECK_NOTHROW(store::verify_area(folder / "b.area"));
}

TEST_CASE("the same map under another name has the same id", "[store]") {
  const ScratchFolder folder;
  road::AreaInfo info = test::tiny_info();
  const std::string id = store::write_area(folder / "a.area", test::tiny_tables(), info);
  info.source_file = "tiny (1).opl";
  CHECK(store::write_area(folder / "b.area", test::tiny_tables(), info) == id);
  CHECK(store::open_area(folder / "b.area").roads().info().source_file == "tiny (1).opl");
  CHECK_NOTHROW(store::verify_area(folder / "b.area"));
}

TEST_CASE("the same roads give the same bytes and the same id", "[store]") {
  const ScratchFolder folder;
  const std::string first =
      store::write_area(folder / "a.area", test::tiny_tables(), test::tiny_info());
  const std::string second =
      store::write_area(folder / "b.area", test::tiny_tables(), test::tiny_info());
  CHECK(first == second);
  CHECK(test::read_bytes(folder / "a.area") == test::read_bytes(folder / "b.area"));
}

TEST_CASE("one changed row or one changed word of the info gives another id", "[store]") {
  const ScratchFolder folder;
  const std::string id =
      store::write_area(folder / "a.area", test::tiny_tables(), test::tiny_info());
  road::Tables other_tables = test::tiny_tables();
  other_tables.nodes[0].osm_id = 13;
  road::AreaInfo other_info = test::tiny_info();
  other_info.motorways = true;
  CHECK(store::write_area(folder / "b.area", other_tables, test::tiny_info()) != id);
  CHECK(store::write_area(folder / "b.area", test::tiny_tables(), other_info) != id);
}

TEST_CASE("a line end in the extract's name can't forge a line of the info", "[store]") {
  const ScratchFolder folder;
  road::AreaInfo info = test::tiny_info();
  info.source_file = "town\nregion=LI";
  store::write_area(folder / "a.area", {}, info);
  const store::Area area = store::open_area(folder / "a.area");
  CHECK(area.roads().info().source_file == "town region=LI");
  CHECK(area.roads().info().region.code == "GB-WLS");
}

TEST_CASE("writing an area again replaces the old one and leaves nothing beside it", "[store]") {
  const ScratchFolder folder;
  store::write_area(folder / "a.area", {}, test::tiny_info());
  const store::Area old = store::open_area(folder / "a.area");
  store::write_area(folder / "a.area", test::tiny_tables(), test::tiny_info());
  CHECK(old.roads().nodes.empty());  // who has the old one open keeps it
  CHECK(store::open_area(folder / "a.area").roads().nodes.size() == 2);
  const auto files = std::filesystem::directory_iterator(folder.path());
  CHECK(std::distance(begin(files), end(files)) == 1);
}

}  // namespace
}  // namespace loopwright
