// The bytes of an area file, format 8. Numbers are little-endian.
//
//    byte  bytes
//       0      8  magic: "LWAREA\r\n" (the line end shows a transfer that "corrects" text files)
//       8      4  format number
//      12      4  number of sections
//      16      8  length of the whole file
//      24     16  id: 128-bit XXH3 over each section's name, byte count and content, but for sections
//                 "source", for the same map under another name is the same map, and "place_index":
//                 its bytes hang on the version of SQLite, and say nothing that the other sections
//                 don't
//      40      8  64-bit XXH3 over header and section table, these eight bytes taken as zero
//      48   56 n  section table, for each section
//              0     24  name, filled up with zeros
//             24      8  offset in the file, a multiple of 8
//             32      8  bytes of content
//             40      4  bytes of one row
//             44      4  zero
//             48      8  64-bit XXH3 over the content and the zeros that fill it up
//    48 + 56 n    the sections without gaps, each filled up with zeros to a multiple of 8:
//                 "info" (lines "key=value"), "source" (the name of the extract), then the columns
//                 in the order of for_each_column
//
// Why: rows are mapped as they lie in memory, so the size of a row is part of the format. Whoever
// changes a row or adds a column raises the format number and corrects the byte test.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "loopwright/road/roads.hpp"

namespace loopwright::store {

inline constexpr std::string_view magic = "LWAREA\r\n";
inline constexpr std::uint32_t format_number = 8;
inline constexpr std::size_t section_alignment = 8;
inline constexpr std::size_t name_bytes = 24;
inline constexpr std::string_view info_name = "info", source_name = "source";

struct Header {
  char magic[8] = {};
  std::uint32_t format = format_number;
  std::uint32_t sections = 0;
  std::uint64_t length = 0;
  std::uint8_t id[16] = {};
  std::uint64_t checksum = 0;
};

struct Section {
  char name[name_bytes] = {};
  std::uint64_t offset = 0;
  std::uint64_t bytes = 0;
  std::uint32_t row_bytes = 0;
  std::uint32_t zero = 0;
  std::uint64_t checksum = 0;
};

/// True for what the id doesn't cover.
constexpr bool is_outside_id(std::string_view section_name) {
  return section_name == source_name || section_name == "place_index";
}

/// The next multiple of the section alignment.
constexpr std::uint64_t filled_up(std::uint64_t bytes) {
  return (bytes + section_alignment - 1) / section_alignment * section_alignment;
}

static_assert(std::endian::native == std::endian::little, "rows are mapped as they lie in memory");
static_assert(sizeof(Header) == 48 && offsetof(Header, checksum) == 40);
static_assert(sizeof(Section) == 56 && offsetof(Section, checksum) == 48);

// Each is the sum of its members: no row has bytes that nobody sets.
static_assert(sizeof(road::Node) == 24 && sizeof(road::Piece) == 80 && sizeof(road::Stretch) == 24);
static_assert(sizeof(Point) == 8 && sizeof(StretchId) == 4 && sizeof(road::Turn) == 8);
static_assert(sizeof(road::Place) == 48 && sizeof(road::Arm) == 16 && sizeof(road::Chance) == 48);
static_assert(sizeof(road::RunFact) == 16 && sizeof(road::TurnRule) == 32);
static_assert(sizeof(road::TimedRule) == 24 && sizeof(road::BusLane) == 28);
static_assert(sizeof(road::GridEntry) == 16 && sizeof(road::PullUp) == 24);
static_assert(sizeof(road::KerbBan) == 16);
static_assert(sizeof(road::SignedTo) == 12 && sizeof(road::Address) == 20);
static_assert(sizeof(road::NamedSpot) == 32);

}  // namespace loopwright::store
