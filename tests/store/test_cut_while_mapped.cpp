#include <catch2/catch.hpp>

#include "loopwright/store/area.hpp"
#include "store/tiny_area.hpp"
#include "support/in_child.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

TEST_CASE("an area file cut short while in use ends with one line and exit 1", "[store]") {
  const test::ScratchFolder folder;
  const auto file = folder / "n.area";
  store::write_area(file, test::tiny_tables(), test::tiny_info());
  const test::Ended ended = test::in_child([&file] {
    const store::Area area = store::open_area(file);
    std::filesystem::resize_file(file, 0);
    const volatile std::int64_t read_back = area.roads().nodes[1].osm_id;
    static_cast<void>(read_back);
  });
  CHECK(ended.exit_code == 1);
  CHECK(ended.said ==
        "loopwright: the area file was cut short while in use; "
        "build it again with 'loopwright build'\n");
}

}  // namespace
}  // namespace loopwright
