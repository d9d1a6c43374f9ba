// 1. The info block as text; one part for it, one for the extract's name and one for each column, in
//    file order.
// 2. Lay the parts out one behind the other; checksum of each, and the id over all.
// 3. Write header, section table and parts to a file beside the target, then rename it.
// Byte layout: store/layout.hpp.
#include <cassert>
#include <cstring>
#include <string>
#include <vector>

#include "loopwright/base/hex.hpp"
#include "loopwright/store/area.hpp"
#include "loopwright/store/format.hpp"
#include "store/digest.hpp"
#include "store/info.hpp"
#include "store/layout.hpp"
#include "store/structure.hpp"
#include "store/whole_file.hpp"

namespace loopwright::store {
namespace {

constexpr char zeros[section_alignment] = {};

struct Part {
  std::string_view name;
  const void* content;
  std::size_t bytes;
  std::size_t row_bytes;
  [[nodiscard]] std::size_t filling() const { return filled_up(bytes) - bytes; }
};

std::vector<Part> parts_of(const std::string& info, const std::string& source,
                           const road::Tables& tables) {
  std::vector<Part> parts = {{info_name, info.data(), info.size(), 1},
                             {source_name, source.data(), source.size(), 1}};
  road::for_each_column(tables, [&parts](std::string_view name, const auto& column) {
    constexpr std::size_t row_bytes = sizeof(column[0]);
    parts.push_back({name, column.data(), column.size() * row_bytes, row_bytes});
  });
  return parts;
}

std::vector<Section> lay_out(const std::vector<Part>& parts) {
  std::vector<Section> sections;
  std::uint64_t offset = sizeof(Header) + parts.size() * sizeof(Section);
  for (const Part& part : parts) {
    assert(part.name.size() < name_bytes);
    Section& section = sections.emplace_back();
    std::memcpy(section.name, part.name.data(), part.name.size());
    section.offset = offset;
    section.bytes = part.bytes;
    section.row_bytes = static_cast<std::uint32_t>(part.row_bytes);
    Digest digest(Digest::Width::bits_64);
    digest.add(part.content, part.bytes);
    digest.add(zeros, part.filling());
    section.checksum = digest.number();
    offset += filled_up(part.bytes);
  }
  return sections;
}

AreaId id_of(const std::vector<Part>& parts, const std::vector<Section>& sections) {
  Digest digest(Digest::Width::bits_128);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (is_outside_id(parts[i].name)) continue;
    digest.add(sections[i].name, name_bytes);
    digest.add(&sections[i].bytes, sizeof sections[i].bytes);
    digest.add(parts[i].content, parts[i].bytes);
  }
  return digest.id();
}

Header header_for(const std::vector<Section>& sections, const AreaId& id) {
  Header header;
  std::memcpy(header.magic, magic.data(), magic.size());
  header.sections = static_cast<std::uint32_t>(sections.size());
  header.length = sections.back().offset + filled_up(sections.back().bytes);
  std::memcpy(header.id, id.data(), id.size());
  Digest digest(Digest::Width::bits_64);
  digest.add(&header, sizeof header);
  digest.add(sections.data(), sections.size() * sizeof(Section));
  header.checksum = digest.number();
  return header;
}

}  // namespace

std::string write_area(const std::filesystem::path& file, const road::Tables& tables,
                       const road::AreaInfo& info) {
  assert(!count_fault(road::view_of(tables, info)));
  assert(!row_fault(road::view_of(tables, info)));
  const std::string info_text = write_info(info);
  const std::string source = write_source(info);
  const std::vector<Part> parts = parts_of(info_text, source, tables);
  const std::vector<Section> sections = lay_out(parts);
  const AreaId id = id_of(parts, sections);
  const Header header = header_for(sections, id);

  WholeFile out(file);
  out.write(&header, sizeof header);
  out.write(sections.data(), sections.size() * sizeof(Section));
  for (const Part& part : parts) {
    out.write(part.content, part.bytes);
    out.write(zeros, part.filling());
  }
  out.keep();
  return hex(id);
}

std::uint32_t area_format() {
  return format_number;
}

}  // namespace loopwright::store
