// libFuzzer: an area file of the fuzzers' town, damaged as the input says.
//
// 1. Bytes are changed, or the end cut off. What is as it was written opens and verifies; what isn't
//    is refused by opening or by verifying.
// 2. Another half of the inputs is signed again: checksums are right and rows aren't (forged_area.hpp).
//    When even then verifying finds nothing wrong, commands must live with what they read.
#include <cstddef>
#include <cstdint>
#include <string>

#include "bytes.hpp"
#include "forged_area.hpp"
#include "loopwright/store/area.hpp"
#include "support/scratch_folder.hpp"
#include "town.hpp"
#include "trial.hpp"
#include "use_area.hpp"

namespace {

using namespace loopwright;

/// Bytes at places given; then, of some inputs, a cut.
std::string damaged(const std::string& whole, fuzz::Bytes& bytes) {
  std::string area = whole;
  const bool cut = bytes.one() % 4 == 0;
  if (cut) area.resize(bytes.word() % (area.size() + 1));
  while (!bytes.empty() && !area.empty())
    area[bytes.word() % area.size()] = static_cast<char>(bytes.one());
  return area;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::string whole = test::read_bytes(fuzz::town_area());
  fuzz::Bytes bytes(data, size);
  const bool is_forged = bytes.one() % 4 != 0;
  const std::string area = is_forged ? fuzz::forged_area(whole, bytes) : damaged(whole, bytes);
  const std::filesystem::path file = fuzz::scratch_file("damaged.area", area);
  const bool opens = !fuzz::refused([&] { store::open_area(file); });
  const bool good = !fuzz::refused([&] { store::verify_area(file); });
  fuzz::require(!good || opens);
  fuzz::require(is_forged || good == (area == whole));
  if (good && area != whole) fuzz::use_area(file);
  return 0;
}
