// Areas whose checksums are right and whose content isn't: a program of another kind wrote them.
#include <catch2/catch.hpp>

#include "store/area_trial.hpp"
#include "store/forged.hpp"

namespace loopwright {
namespace {

using test::area_bytes;
using test::entry_of;
using test::offset_of;
using test::put;
using test::signed_again;
using test::signed_header;
using test::Trial;

const std::string advice = "; build it again with 'loopwright build'";

/// What verifying says when one word of a section is replaced and everything signed again.
std::string with_word(std::string_view section, std::size_t at, std::uint32_t word) {
  std::string bytes = area_bytes();
  put(bytes, offset_of(bytes, section) + at, word);
  return Trial(signed_again(bytes)).verifying();
}

TEST_CASE("an untouched area that is signed again is the same area", "[store]") {
  CHECK(signed_again(area_bytes()) == area_bytes());
}

TEST_CASE("an area whose sections lie elsewhere than one behind the other is refused", "[store]") {
  std::string bytes = area_bytes();
  put(bytes, entry_of(bytes, "pieces") + 24, std::uint64_t{1} << 40U);
  CHECK(Trial(signed_header(bytes)).opening() ==
        "section 'pieces' lies outside its place" + advice);
  bytes = area_bytes();
  put(bytes, entry_of(bytes, "pieces") + 32, ~std::uint64_t{0});
  CHECK(Trial(signed_header(bytes)).opening() ==
        "section 'pieces' lies outside its place" + advice);
}

TEST_CASE("an area with longer rows than this program knows is refused", "[store]") {
  std::string bytes = area_bytes();
  put(bytes, entry_of(bytes, "nodes") + 40, std::uint32_t{32});
  CHECK(Trial(signed_header(bytes)).opening() == "rows of 'nodes' are not 24 bytes long" + advice);
}

TEST_CASE("an area without one of the columns is refused", "[store]") {
  std::string bytes = area_bytes();
  bytes[entry_of(bytes, "turns")] = 'b';
  CHECK(Trial(signed_header(bytes)).opening() == "has no section 'turns'" + advice);
}

TEST_CASE("an area whose columns don't fit together is refused", "[store]") {
  std::string bytes = area_bytes();
  put(bytes, entry_of(bytes, "stretches") + 32, std::uint64_t{24});
  // The 24 bytes taken away go to the column behind, so that the sections still follow each other.
  put(bytes, entry_of(bytes, "shape") + 24, std::uint64_t{offset_of(bytes, "shape") - 24});
  put(bytes, entry_of(bytes, "shape") + 32, std::uint64_t{40});
  CHECK(Trial(signed_header(bytes)).opening() == "'stretches' has 1 rows, not 2" + advice);
}

TEST_CASE("an area that doesn't say which side one drives on is refused", "[store]") {
  std::string bytes = area_bytes();
  bytes.replace(bytes.find("side=left"), 9, "side=lost");
  CHECK(Trial(bytes).opening() == "its info block has no usable 'side'" + advice);
  bytes.replace(bytes.find("zone="), 5, "zane=");
  bytes.replace(bytes.find("side=lost"), 9, "side=left");
  CHECK(Trial(bytes).opening() == "its info block has no usable 'zone'" + advice);
}

TEST_CASE("verifying an area finds row numbers that lead nowhere", "[store]") {
  CHECK(with_word("turns", 8, 2) == "row 1 of 'turns' points outside another column" + advice);
  CHECK(with_word("node_out", 0, 9) ==
        "row 0 of 'node_out' points outside another column" + advice);
  CHECK(with_word("pieces", 8, 0xffffffffU) ==
        "row 0 of 'pieces' points outside another column" + advice);
  CHECK(with_word("pieces", 28, 3) == "row 0 of 'pieces' points outside another column" + advice);
  CHECK(with_word("node_first", 4, 7) == "row 2 of 'node_first' is out of order" + advice);
  CHECK(with_word("text_first", 8, 12) == "row 2 of 'text_first' is out of order" + advice);
}

TEST_CASE("verifying an area finds rules with conditions, bus lanes and kerbs that point nowhere",
          "[store]") {
  road::Tables tables = test::tiny_tables();
  tables.timed_rules.resize(1);
  tables.timed_rules[0].stretch = StretchId{1};
  tables.idle_rules.resize(1);
  tables.idle_rules[0].stretch = StretchId{1};
  tables.bus_lanes.resize(1);
  tables.bus_lanes[0].piece = PieceId{0};
  tables.kerb_bans.resize(1);
  tables.kerb_bans[0].stretch = StretchId{1};
  tables.lane_marks.resize(1);
  tables.lane_marks[0].stretch = StretchId{1};
  tables.landmarks.resize(1);
  tables.landmarks[0].name = TextId{0};
  const test::ScratchFolder folder;
  store::write_area(folder / "n.area", tables, test::tiny_info());
  const auto fault = [&](std::string_view section, std::size_t at) {
    std::string bytes = test::read_bytes(folder / "n.area");
    put(bytes, offset_of(bytes, section) + at, std::uint32_t{2});
    return Trial(signed_again(bytes)).verifying();
  };
  for (const std::size_t at : {0U, 4U, 8U, 12U, 16U})  // stretch, base, text, who, source
    CHECK(fault("timed_rules", at) ==
          "row 0 of 'timed_rules' points outside another column" + advice);
  for (const std::size_t at : {16U, 20U})  // stretch, tag
    CHECK(fault("idle_rules", at) ==
          "row 0 of 'idle_rules' points outside another column" + advice);
  for (const std::size_t at : {0U, 12U, 16U, 20U, 24U})  // piece, hours, who, doubt, source
    CHECK(fault("bus_lanes", at) == "row 0 of 'bus_lanes' points outside another column" + advice);
  for (const std::size_t at : {0U, 4U, 8U})  // stretch, arrows, source
    CHECK(fault("lane_marks", at) ==
          "row 0 of 'lane_marks' points outside another column" + advice);
  CHECK(fault("landmarks", 16) == "row 0 of 'landmarks' points outside another column" + advice);
  for (const std::size_t at : {0U, 4U, 8U})  // stretch, hours, source
    CHECK(fault("kerb_bans", at) == "row 0 of 'kerb_bans' points outside another column" + advice);
}

TEST_CASE("verifying an area finds an id that isn't that of its content", "[store]") {
  std::string bytes = area_bytes();
  bytes[24] = '\0';
  CHECK(Trial(signed_header(bytes)).verifying() == "its id is not that of its content" + advice);
}

}  // namespace
}  // namespace loopwright
