// libFuzzer: any bytes as a map extract, of the form that the first of them says.
//
// 1. Reading refuses it, or an area is built that can be opened and verified.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "built_map.hpp"
#include "trial.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  if (size == 0) return 0;
  constexpr std::string_view names[] = {"map.opl", "map.osm", "map.osm.pbf", "map.osm.gz"};
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  fuzz::check_build(fuzz::scratch_file(names[data[0] % 4], text), data[0]);
  return 0;
}
