// A file of map objects of one kind, of one moment and version.
//
//   Spool nodes("out/x.nodes");  nodes.node(attr::_id(7), …);  nodes.close();
//
// Rules: uncompressed PBF, for it is read again at once; libosmium's errors pass through.
#pragma once

#include <cstddef>
#include <filesystem>
#include <osmium/builder/attr.hpp>
#include <osmium/io/pbf_output.hpp>

namespace loopwright::county {

namespace attr = osmium::builder::attr;

/// When everything was mapped, as the invented maps have it.
inline constexpr const char* map_stamp = "2026-11-12T09:00:00Z";

class Spool {
 public:
  explicit Spool(const std::filesystem::path& path)
      : path_(path),
        writer_(osmium::io::File(path.string(), "osm.pbf,pbf_compression=none"),
                osmium::io::overwrite::allow),
        buffer_(buffer_bytes, osmium::memory::Buffer::auto_grow::yes) {}
  template <typename... Parts>
  void node(const Parts&... parts) {
    osmium::builder::add_node(buffer_, attr::_version(1), attr::_timestamp(map_stamp), parts...);
    pass_on();
  }
  template <typename... Parts>
  void way(const Parts&... parts) {
    osmium::builder::add_way(buffer_, attr::_version(1), attr::_timestamp(map_stamp), parts...);
    pass_on();
  }
  template <typename... Parts>
  void relation(const Parts&... parts) {
    osmium::builder::add_relation(buffer_, attr::_version(1), attr::_timestamp(map_stamp),
                                  parts...);
    pass_on();
  }
  void close() {
    flush();
    writer_.close();
  }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  static constexpr std::size_t buffer_bytes = 1U << 20U;

  void pass_on() {
    if (buffer_.committed() > buffer_bytes / 2) flush();
  }
  void flush() {
    if (buffer_.committed() == 0) return;
    writer_(std::move(buffer_));
    buffer_ = osmium::memory::Buffer(buffer_bytes, osmium::memory::Buffer::auto_grow::yes);
  }

  std::filesystem::path path_;
  osmium::io::Writer writer_;
  osmium::memory::Buffer buffer_;
};

}  // namespace loopwright::county
