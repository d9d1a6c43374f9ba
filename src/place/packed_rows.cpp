// Each number as its distance from the one before, in groups of seven bits, the lowest first, the
// highest bit of a byte saying that more follow (LEB128): rows of one street lie close together,
// so most take one byte.
#include "place/index.hpp"

namespace loopwright::place {

std::string packed(std::span<const std::uint32_t> rows) {
  std::string bytes;
  std::uint32_t before = 0;
  for (const std::uint32_t row : rows) {
    std::uint32_t step = row - before;
    for (; step >= 0x80U; step >>= 7U) bytes += static_cast<char>((step & 0x7fU) | 0x80U);
    bytes += static_cast<char>(step);
    before = row;
  }
  return bytes;
}

std::vector<std::uint32_t> unpacked(std::string_view bytes) {
  std::vector<std::uint32_t> rows;
  std::uint32_t row = 0, step = 0;
  unsigned shift = 0;
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    if (shift < 32) step |= (byte & 0x7fU) << shift;
    shift += 7;
    if ((byte & 0x80U) != 0) continue;
    rows.push_back(row += step);
    step = 0, shift = 0;
  }
  return rows;
}

}  // namespace loopwright::place
