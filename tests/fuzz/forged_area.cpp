// Method: a change is four bytes and a value: section, where in it, how wide. Checksums and the id are
// made anew as src/store/layout.hpp says, with a library's own functions and not the program's.
#include "forged_area.hpp"

#include <cstring>
#include <string_view>

#define XXH_INLINE_ALL
#include <xxhash.h>

namespace loopwright::fuzz {
namespace {

constexpr std::size_t header_bytes = 48, entry_bytes = 56;

template <class Number>
Number number_at(const std::string& bytes, std::size_t at) {
  Number number;
  std::memcpy(&number, bytes.data() + at, sizeof number);
  return number;
}

template <class Number>
void put(std::string& bytes, std::size_t at, Number number) {
  std::memcpy(bytes.data() + at, &number, sizeof number);
}

struct Part {
  std::size_t entry, offset, length;
};

Part part_of(const std::string& area, std::size_t section) {
  const std::size_t entry = header_bytes + section * entry_bytes;
  return {entry, number_at<std::uint64_t>(area, entry + 24),
          number_at<std::uint64_t>(area, entry + 32)};
}

std::size_t sections_of(const std::string& area) {
  return number_at<std::uint32_t>(area, 12);
}

void sign_header(std::string& area) {
  put(area, 40, std::uint64_t{0});
  const std::size_t length = header_bytes + sections_of(area) * entry_bytes;
  put(area, 40, std::uint64_t{XXH3_64bits(area.data(), length)});
}

void sign(std::string& area) {
  XXH3_state_t state;
  XXH3_128bits_reset(&state);
  for (std::size_t k = 0; k < sections_of(area); ++k) {
    const auto [entry, offset, length] = part_of(area, k);
    put(area, entry + 48, std::uint64_t{XXH3_64bits(area.data() + offset, (length + 7) / 8 * 8)});
    const std::string_view name = area.data() + entry;
    if (name == "source" || name == "place_index") continue;  // no part of the id
    XXH3_128bits_update(&state, area.data() + entry, 24);
    XXH3_128bits_update(&state, area.data() + entry + 32, 8);
    XXH3_128bits_update(&state, area.data() + offset, length);
  }
  XXH128_canonical_t id;
  XXH128_canonicalFromHash(&id, XXH3_128bits_digest(&state));
  put(area, 24, id);
  sign_header(area);
}

void change(std::string& area, Bytes& bytes) {
  const Part part = part_of(area, bytes.one() % sections_of(area));
  const std::size_t where = bytes.number();
  const unsigned width = bytes.one();
  if (part.length < sizeof(std::uint32_t)) return;
  if (width % 2 == 0) {
    area[part.offset + where % part.length] = static_cast<char>(bytes.one());
  } else {
    const std::size_t words = part.length / sizeof(std::uint32_t);
    put(area, part.offset + where % words * sizeof(std::uint32_t), bytes.word());
  }
}

}  // namespace

std::string forged_area(std::string area, Bytes& bytes) {
  for (int changes = 0; changes < 8 && !bytes.empty(); ++changes) change(area, bytes);
  sign(area);
  return area;
}

}  // namespace loopwright::fuzz
