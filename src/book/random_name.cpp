#include "book/random_name.hpp"

#include <array>
#include <cstdint>
#include <random>

#include "loopwright/base/hex.hpp"

namespace loopwright::book {

std::string random_name() {
  std::random_device random;
  std::uniform_int_distribution<unsigned> byte(0, 0xFF);
  std::array<std::uint8_t, 16> bytes{};
  for (std::uint8_t& one : bytes) one = static_cast<std::uint8_t>(byte(random));
  bytes[6] = (bytes[6] & 0x0FU) | 0x40U;  // version and variant of a random UUID (RFC 4122, 4.4)
  bytes[8] = (bytes[8] & 0x3FU) | 0x80U;
  std::string name = hex(bytes);
  for (const std::size_t dash : {20U, 16U, 12U, 8U}) name.insert(dash, 1, '-');
  return name;
}

}  // namespace loopwright::book
