// bare_read EXTRACT: what reading every object of an extract costs, and nothing else. The yardstick
// for `loopwright build` in tools/bench.
#include <cstdio>
#include <exception>
#include <osmium/io/any_input.hpp>
#include <osmium/osm.hpp>

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  try {
    osmium::io::Reader reader(argv[1]);
    std::size_t objects = 0;
    while (const osmium::memory::Buffer buffer = reader.read()) {
      for (const osmium::OSMObject& object : buffer.select<osmium::OSMObject>()) {
        objects += object.id() != 0 ? 1 : 0;
      }
    }
    reader.close();
    std::printf("%zu\n", objects);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s: %s\n", argv[1], error.what());
    return 1;
  }
  return 0;
}
