// 1. Map the file; its magic, then its format number, then its length, then the checksum of header
//    and section table, so that the commonest mistake gets the plainest line.
// 2. The section table once more by itself: sections follow each other to the file's end.
// 3. Columns by name, each with the row size this program knows; the info block; row counts.
// 4. verify: the checksum of each section, the id, each row number in each column, each value that
//    must be one of a few.
// Byte layout: store/layout.hpp.
#include <algorithm>
#include <cstring>
#include <string>
#include <vector>

#include "loopwright/base/error.hpp"
#include "loopwright/base/hex.hpp"
#include "loopwright/store/area.hpp"
#include "store/digest.hpp"
#include "store/info.hpp"
#include "store/layout.hpp"
#include "store/mapping.hpp"
#include "store/structure.hpp"
#include "store/values.hpp"

namespace loopwright::store {
namespace {

constexpr std::string_view rebuild = "; build it again with 'loopwright build'";

/// An area file whose header and section table are as they should be.
class Opened {
 public:
  Opened(const std::filesystem::path& file, Reading reading)
      : file_(file), mapping_(map_file(file, reading)) {
    read_header();
    read_sections();
  }
  [[nodiscard]] const Mapping& mapping() const { return mapping_; }
  [[nodiscard]] const std::vector<Section>& sections() const { return sections_; }
  [[nodiscard]] const std::byte* content(const Section& section) const {
    return mapping_.bytes.get() + section.offset;
  }
  [[nodiscard]] AreaId id() const {
    AreaId id;
    std::memcpy(id.data(), header_.id, id.size());
    return id;
  }
  [[nodiscard]] InputError fault(const std::string& what) const {
    return InputError(file_.string() + ": " + what + std::string(rebuild));
  }
  [[nodiscard]] road::Roads roads() const;

 private:
  void read_header();
  void read_sections();
  [[nodiscard]] const Section& section(std::string_view name, std::size_t row_bytes) const;
  [[nodiscard]] std::string_view text(std::string_view name) const;

  std::filesystem::path file_;
  Mapping mapping_;
  Header header_;
  std::vector<Section> sections_;
};

std::string_view name_of(const Section& section) {
  return {section.name, ::strnlen(section.name, name_bytes)};
}

std::string quoted(const Section& section) {
  return "'" + std::string(name_of(section)) + "'";
}

void Opened::read_header() {
  const std::size_t length = mapping_.length;
  const std::size_t magic_there = std::min(length, magic.size());
  if (std::memcmp(mapping_.bytes.get(), magic.data(), magic_there) != 0) {
    throw InputError(file_.string() + ": is not an area file; build one with 'loopwright build'");
  }
  const std::string cut_short = "cut short at byte " + std::to_string(length);
  if (length < sizeof header_) throw fault(cut_short);
  std::memcpy(&header_, mapping_.bytes.get(), sizeof header_);
  if (header_.format != format_number) {
    throw fault("was written by another version (format " + std::to_string(header_.format) +
                ", this program reads " + std::to_string(format_number) + ")");
  }
  const std::uint64_t table_bytes = std::uint64_t{header_.sections} * sizeof(Section);
  if (length < sizeof header_ + table_bytes) throw fault(cut_short);
  Header unsigned_header = header_;
  unsigned_header.checksum = 0;
  Digest digest(Digest::Width::bits_64);
  digest.add(&unsigned_header, sizeof unsigned_header);
  digest.add(mapping_.bytes.get() + sizeof header_, table_bytes);
  if (digest.number() != header_.checksum) throw fault("its header is damaged");
  if (length < header_.length) throw fault(cut_short);
  if (length > header_.length) {
    throw fault("goes on after its end at byte " + std::to_string(header_.length));
  }
}

void Opened::read_sections() {
  sections_.resize(header_.sections);
  if (sections_.empty()) throw fault("has no sections");
  std::memcpy(sections_.data(), mapping_.bytes.get() + sizeof header_,
              sections_.size() * sizeof(Section));
  std::uint64_t next = sizeof header_ + sections_.size() * sizeof(Section);
  for (const Section& section : sections_) {
    const std::uint64_t room = header_.length - next;
    if (section.offset != next || section.bytes > room || filled_up(section.bytes) > room) {
      throw fault("section " + quoted(section) + " lies outside its place");
    }
    next += filled_up(section.bytes);
  }
  if (next != header_.length) throw fault("its sections end at byte " + std::to_string(next));
}

const Section& Opened::section(std::string_view name, std::size_t row_bytes) const {
  for (const Section& section : sections_) {
    if (name_of(section) != name) continue;
    if (section.row_bytes != row_bytes || section.bytes % row_bytes != 0) {
      throw fault("rows of " + quoted(section) + " are not " + std::to_string(row_bytes) +
                  " bytes long");
    }
    return section;
  }
  throw fault("has no section '" + std::string(name) + "'");
}

std::string_view Opened::text(std::string_view name) const {
  const Section& found = section(name, 1);
  return {reinterpret_cast<const char*>(content(found)), found.bytes};
}

road::Roads Opened::roads() const {
  road::Columns<road::View> columns;
  road::for_each_column(columns, [this](std::string_view name, auto& column) {
    using Row = typename std::remove_reference_t<decltype(column)>::value_type;
    const Section& found = section(name, sizeof(Row));
    column = {reinterpret_cast<const Row*>(content(found)), found.bytes / sizeof(Row)};
  });
  if (const auto wrong = count_fault(columns)) throw fault(*wrong);
  road::AreaInfo info = read_info(text(info_name), file_);
  info.source_file = text(source_name);
  info.id = hex(id());
  return {columns, std::move(info)};
}

}  // namespace

Area open_area(const std::filesystem::path& file) {
  const Opened opened(file, Reading::in_places);
  Area area;
  area.roads_ = opened.roads();
  area.mapping_ = opened.mapping().bytes;
  return area;
}

void verify_area(const std::filesystem::path& file) {
  const Opened opened(file, Reading::whole);
  Digest id(Digest::Width::bits_128);
  for (const Section& section : opened.sections()) {
    const std::byte* content = opened.content(section);
    if (checksum_of(content, filled_up(section.bytes)) != section.checksum) {
      throw opened.fault("section " + quoted(section) + " at byte " +
                         std::to_string(section.offset) + " is damaged");
    }
    if (is_outside_id(name_of(section))) continue;
    id.add(section.name, name_bytes);
    id.add(&section.bytes, sizeof section.bytes);
    id.add(content, section.bytes);
  }
  if (id.id() != opened.id()) throw opened.fault("its id is not that of its content");
  const road::Roads roads = opened.roads();
  if (const auto wrong = row_fault(roads)) throw opened.fault(*wrong);
  if (const auto wrong = value_fault(roads)) throw opened.fault(*wrong);
}

}  // namespace loopwright::store
