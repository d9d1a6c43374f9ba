// The bytes of a tiny area, one by one. Checksums and id were computed outside, with
// Debian's python3-xxhash 3.2.0 (xxh3_64, xxh3_128), by the layout as it is written in
// src/store/layout.hpp.
#include <catch2/catch.hpp>

#include <cstring>

#include "loopwright/store/area.hpp"
#include "store/tiny_area.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

std::string tiny_bytes() {
  const test::ScratchFolder folder;
  store::write_area(folder / "tiny.area", test::tiny_tables(), test::tiny_info());
  return test::read_bytes(folder / "tiny.area");
}

std::string hex(std::string_view bytes) {
  std::string text;
  for (const char byte : bytes) {
    constexpr std::string_view digits = "0123456789abcdef";
    text += digits[static_cast<unsigned char>(byte) >> 4U];
    text += digits[static_cast<unsigned char>(byte) & 15U];
  }
  return text;
}

TEST_CASE("the header of an area file has these bytes", "[store]") {
  const std::string bytes = tiny_bytes();
  CHECK(bytes.size() == 2496);
  CHECK(bytes.substr(0, 8) == "LWAREA\r\n");
  CHECK(hex(bytes.substr(8, 4)) == "08000000");           // format 8
  CHECK(hex(bytes.substr(12, 4)) == "24000000");          // info, source and 34 columns
  CHECK(hex(bytes.substr(16, 8)) == "c009000000000000");  // 2496 bytes
  CHECK(hex(bytes.substr(24, 16)) == "1b5ac753f02e7b6bcd5c4ec4ee5b6a94");
  CHECK(hex(bytes.substr(40, 8)) == "ae1da76fb845f21f");
}

TEST_CASE("the section table of an area file has these bytes", "[store]") {
  const std::string bytes = tiny_bytes();
  const std::string info = bytes.substr(48, 56);
  CHECK(info.substr(0, 24) == std::string("info") + std::string(20, '\0'));
  CHECK(hex(info.substr(24, 8)) == "1008000000000000");  // 48 + 36 × 56 = 2064
  CHECK(hex(info.substr(32, 8)) == "7b00000000000000");
  CHECK(hex(info.substr(40, 8)) == "0100000000000000");
  const std::string source = bytes.substr(48 + 56, 56);
  CHECK(source.substr(0, 24) == std::string("source") + std::string(18, '\0'));
  CHECK(hex(source.substr(24, 8)) == "9008000000000000");
  CHECK(hex(source.substr(32, 8)) == "0800000000000000");
  CHECK(hex(source.substr(48, 8)) == "0359192cd6b1dc3d");
  const std::string nodes = bytes.substr(48 + 2 * 56, 56);
  CHECK(nodes.substr(0, 24) == std::string("nodes") + std::string(19, '\0'));
  CHECK(hex(nodes.substr(24, 8)) == "9808000000000000");
  CHECK(hex(nodes.substr(32, 8)) == "3000000000000000");  // 2 rows
  CHECK(hex(nodes.substr(40, 8)) == "1800000000000000");  // of 24 bytes
  CHECK(hex(nodes.substr(48, 8)) == "a336c876b23896bc");
}

TEST_CASE("the sections of an area file lie one behind the other, info and source first",
          "[store]") {
  const std::string bytes = tiny_bytes();
  CHECK(bytes.substr(2064, 123) ==
        "region=GB-WLS\nside=left\nunit=mph\nown_rules=yes\nmap_timestamp=2026-11-01T00:00:00Z\n"
        "zone=Europe/London\nmotorways=no\nfords=no\n");
  CHECK(bytes.substr(2187, 13) == std::string(5, '\0') + "tiny.opl");
  // Two nodes: OSM id, latitude and longitude, flags, row by id.
  CHECK(hex(bytes.substr(2200, 24)) == "0b0000000000000000000000000000000000000000000000");
  CHECK(hex(bytes.substr(2224, 24)) == "0c0000000000000000000000000000000000000001000000");
  CHECK(bytes.substr(2480, 16) == std::string("Mill Street") + std::string(5, '\0'));
}

/// The bytes of a section's rows; entries of the table are 56 bytes, the offset is at 24 of them.
std::string section_of(const std::string& bytes, std::string_view name) {
  for (std::size_t entry = 48;; entry += 56) {
    if (std::string_view(bytes.data() + entry) != name) continue;
    std::uint64_t offset = 0, length = 0;
    std::memcpy(&offset, bytes.data() + entry + 24, sizeof offset);
    std::memcpy(&length, bytes.data() + entry + 32, sizeof length);
    return bytes.substr(offset, length);
  }
}

TEST_CASE("lanes and a landmark have these bytes", "[store]") {
  road::Tables tables = test::tiny_tables();
  tables.lane_marks.push_back({StretchId{1}, TextId{1}, TextId{0}, 3, 1, {}});
  road::Landmark mark;
  mark.cell = 7, mark.at.lat_e7 = 2, mark.at.lon_e7 = 3, mark.name = TextId{1};
  mark.reach_m = 1.5F, mark.kind = road::LandmarkKind::pub;
  tables.landmarks.push_back(mark);
  const test::ScratchFolder folder;
  store::write_area(folder / "n.area", tables, test::tiny_info());
  store::verify_area(folder / "n.area");
  const std::string bytes = test::read_bytes(folder / "n.area");
  // Stretch, arrows, source, number, whether that is certain.
  CHECK(hex(section_of(bytes, "lane_marks")) == "01000000010000000000000003010000");
  // Cell, latitude and longitude, name, reach, kind.
  CHECK(hex(section_of(bytes, "landmarks")) ==
        "07000000000000000200000003000000010000000000c03f0400000000000000");
}

TEST_CASE("rules with conditions, a bus lane and a kerb have these bytes", "[store]") {
  road::Tables tables = test::tiny_tables();
  const TextId street{1};
  tables.timed_rules.push_back(
      {StretchId{1}, street, TextId{0}, TextId{0}, street, road::Timed::gate, {}});
  tables.idle_rules.push_back(
      {{7, ObjectType::way, {}}, StretchId{1}, street, road::Idle::unread, {}});
  road::BusLane lane;
  lane.piece = PieceId{0};
  lane.direction = road::LaneDirection::against, lane.side = road::LaneSide::right;
  lane.contraflow = 1, lane.doubtful = 1, lane.lane = 2, lane.lanes = 3;
  lane.hours = lane.who = street, lane.doubt = lane.source = TextId{0};
  tables.bus_lanes.push_back(lane);
  tables.kerb_bans.push_back({StretchId{1}, street, TextId{0}, 1, {}});
  const test::ScratchFolder folder;
  store::write_area(folder / "n.area", tables, test::tiny_info());
  store::verify_area(folder / "n.area");
  const std::string bytes = test::read_bytes(folder / "n.area");
  // Stretch, base, text, who and source, then what it is about.
  CHECK(hex(section_of(bytes, "timed_rules")) ==
        "010000000100000000000000000000000100000002000000");
  // Object: id and type; stretch, tag, why.
  CHECK(hex(section_of(bytes, "idle_rules")) ==
        "0700000000000000010000000000000001000000010000000200000000000000");
  // Stretch, hours, source, whether stopping is forbidden.
  CHECK(hex(section_of(bytes, "kerb_bans")) == "01000000010000000000000001000000");
  // Piece; direction, side, contraflow, doubtful, lane, lanes; hours, who, doubt, source.
  CHECK(hex(section_of(bytes, "bus_lanes")) ==
        "00000000010201010203000001000000010000000000000000000000");
}

}  // namespace
}  // namespace loopwright
