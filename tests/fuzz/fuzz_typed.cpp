// libFuzzer: any bytes as words for a place, typed at the command line or into a wish.
//
// 1. Looking for them never fails; what is meant is among what was found, and else a reason is given.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "loopwright/place/place.hpp"
#include "town.hpp"
#include "trial.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  static const road::Roads roads = fuzz::town_roads();
  static const place::Finder finder(roads);
  const place::Finding found = finder.find({reinterpret_cast<const char*>(data), size});
  fuzz::require(found.meant <= found.candidates.size());
  fuzz::require(found.meant > 0 || !found.why.empty());
  return 0;
}
