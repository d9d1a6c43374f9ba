// Three looks at the objects of an extract, which may come in any order. A small extract is read once
// and kept in memory for the second and third. When only what an outline sees is wanted, a look at all nodes comes
// before them.
// What is kept of them: gathering.cpp.
// Whatever the library says of a file it can't read becomes one line that names the file and what
// to do.
#include <algorithm>
#include <functional>
#include <new>
#include <optional>
#include <osmium/io/any_input.hpp>
#include <system_error>

#include "gathering.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/read/build.hpp"

namespace loopwright::read {
namespace {

using Path = std::filesystem::path;

/// The newest data as the header tells it, "" when it doesn't.
std::string timestamp_of(const osmium::io::Header& header) {
  const std::string replicated = header.get("osmosis_replication_timestamp");
  return replicated.empty() ? header.get("timestamp") : replicated;
}

[[noreturn]] void refuse(const Path& file, const std::string& why) {
  throw InputError(file.string() + ": " + why);
}

void check_before_reading(const Path& file, const osmium::io::File& map_file) {
  std::error_code error;
  if (std::filesystem::is_directory(file, error)) refuse(file, "is a folder; name a map extract");
  const auto bytes = std::filesystem::file_size(file, error);
  if (error) refuse(file, error.message() + "; check the name");
  if (bytes == 0) refuse(file, "is empty; fetch the extract again");
  if (map_file.is_true("xml_change_format"))
    refuse(file,
           "holds changes, not a map; lay them on the map they belong to with 'osmium "
           "apply-changes' and build from that");
  const auto format = map_file.format();
  if (format != osmium::io::file_format::pbf && format != osmium::io::file_format::xml &&
      format != osmium::io::file_format::opl) {
    refuse(file,
           "its name is not that of a map extract; use .osm.pbf, .osm, .osm.bz2, .osm.gz or .opl");
  }
}

void take_all(Gathering& gathering, const osmium::memory::Buffer& buffer) {
  for (const auto& node : buffer.select<osmium::Node>()) gathering.take(node);
  for (const auto& way : buffer.select<osmium::Way>()) gathering.take(way);
  for (const auto& relation : buffer.select<osmium::Relation>()) gathering.take(relation);
}

void take_outlines(Gathering& gathering, const osmium::memory::Buffer& buffer) {
  for (const auto& way : buffer.select<osmium::Way>()) gathering.take_outline(way);
}

void take_points(Gathering& gathering, const osmium::memory::Buffer& buffer) {
  for (const auto& node : buffer.select<osmium::Node>()) gathering.take_point(node);
}

/// Hands over the objects of some kinds, buffer by buffer; returns the header's timestamp.
template <class Take>
std::string for_each_buffer(const osmium::io::File& file, osmium::osm_entity_bits::type kinds,
                            Take take, const std::function<void(double)>& told) {
  osmium::io::Reader reader(file, kinds);
  const osmium::io::Header header = reader.header();
  if (header.has_multiple_object_versions() || file.has_multiple_object_versions()) {
    refuse(file.filename(),
           "holds the map's history; cut one day out of it with 'osmium time-filter'");
  }
  const auto size = static_cast<double>(std::max<std::size_t>(reader.file_size(), 1));
  int percent = -1;
  while (osmium::memory::Buffer buffer = reader.read()) {
    take(std::move(buffer));
    const double share = static_cast<double>(reader.offset()) / size;
    if (static_cast<int>(100 * share) != percent) told(share);
    percent = static_cast<int>(100 * share);
  }
  reader.close();
  return timestamp_of(header);
}

/// A small extract is read once: what can be taken at once is, the rest from memory.
mark::RawMap read_once(const osmium::io::File& file, const Seen* seen, const Progress& progress) {
  Gathering gathering(seen);
  std::vector<osmium::memory::Buffer> buffers;
  const auto take = [&](osmium::memory::Buffer&& buffer) {
    take_all(gathering, buffer);
    buffers.push_back(std::move(buffer));
  };
  const std::string timestamp =
      for_each_buffer(file, osmium::osm_entity_bits::nwr, take,
                      [&](double done) { tell(progress, "reading the map", done); });
  gathering.list_needed_ways();
  for (const auto& buffer : buffers) take_outlines(gathering, buffer);
  gathering.list_needed_nodes();
  for (const auto& buffer : buffers) take_points(gathering, buffer);
  return gathering.finish(timestamp);
}

/// A large one is read three times, since it wouldn't fit.
mark::RawMap read_in_passes(const osmium::io::File& file, const Seen* seen,
                            const Progress& progress) {
  namespace bits = osmium::osm_entity_bits;
  Gathering gathering(seen);
  const std::string timestamp = for_each_buffer(
      file, bits::nwr, [&](const osmium::memory::Buffer& buffer) { take_all(gathering, buffer); },
      [&](double done) { tell(progress, "reading roads", done); });
  gathering.list_needed_ways();
  for_each_buffer(
      file, bits::way,
      [&](const osmium::memory::Buffer& buffer) { take_outlines(gathering, buffer); },
      [&](double done) { tell(progress, "reading outlines", done); });
  gathering.list_needed_nodes();
  for_each_buffer(
      file, bits::node,
      [&](const osmium::memory::Buffer& buffer) { take_points(gathering, buffer); },
      [&](double done) { tell(progress, "reading points", done); });
  return gathering.finish(timestamp);
}

/// What of the file is seen; nothing when there is no outline.
std::optional<Seen> seen_in(const osmium::io::File& file, const Outline* outline,
                            const Progress& progress) {
  if (outline == nullptr) return std::nullopt;
  std::optional<Seen> seen(*outline);
  for_each_buffer(
      file, osmium::osm_entity_bits::node,
      [&](const osmium::memory::Buffer& buffer) {
        for (const auto& node : buffer.select<osmium::Node>()) seen->take(node);
      },
      [&](double done) { tell(progress, "looking at the outline", done); });
  return seen;
}

mark::RawMap read_whole(const Path& file, const Outline* outline, const Progress& progress) {
  // Unpacked, an extract takes some twenty-five times its size: 400 MB.
  constexpr std::uintmax_t small_bytes = 16'000'000;
  const osmium::io::File map_file(file.string());
  check_before_reading(file, map_file);
  const bool packed_twice = file.extension() == ".bz2" || file.extension() == ".gz";
  const auto length = std::filesystem::file_size(file);
  const auto written = std::filesystem::last_write_time(file);
  const bool is_small = length <= small_bytes && !packed_twice;
  const std::optional<Seen> seen = seen_in(map_file, outline, progress);
  const Seen* only = seen ? &*seen : nullptr;
  mark::RawMap map =
      is_small ? read_once(map_file, only, progress) : read_in_passes(map_file, only, progress);
  // A map that is cut while it is read may seem to end between two of its blocks.
  if (std::filesystem::file_size(file) != length ||
      std::filesystem::last_write_time(file) != written)
    refuse(file, "was changed while it was read; build again when it is whole");
  return map;
}

}  // namespace

mark::RawMap scan_map(const Path& extract, const Progress& progress, const Outline* outline) {
  try {
    mark::RawMap map = read_whole(extract, outline, progress);
    if (map.ways.empty() && outline != nullptr)
      refuse(extract, "holds no road for cars inside that outline; choose another");
    if (map.ways.empty()) refuse(extract, "holds no road for cars; choose another extract");
    return map;
  } catch (const Error&) {
    throw;
  } catch (const std::bad_alloc&) {
    throw;
  } catch (const std::system_error& error) {
    if (error.code() == std::errc::resource_unavailable_try_again)
      throw;  // no thread: main says so
    refuse(extract, error.code().message() + "; check the name and its permissions");
  } catch (const std::exception& error) {
    refuse(extract, "can't be read as a map (" + std::string(error.what()) +
                        "); it may be cut short: fetch it again");
  }
}

}  // namespace loopwright::read
