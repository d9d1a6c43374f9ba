// libFuzzer: bytes as instructions for a broken map (broken_map.hpp), which is built.
//
// 1. Reading refuses it, or an area is built that can be opened and verified.
#include <cstddef>
#include <cstdint>
#include <string>

#include "broken_map.hpp"
#include "built_map.hpp"
#include "bytes.hpp"
#include "trial.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  fuzz::Bytes bytes(data, size);
  const unsigned options = bytes.one();
  const std::string map = fuzz::broken_map(bytes);
  fuzz::check_build(fuzz::scratch_file("map.opl", map), options);
  return 0;
}
