// Bytes of an area file that are changed and then signed again, as a program of another kind might
// write them. The layout is that of src/store/layout.hpp, written down here once more by hand.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

#define XXH_INLINE_ALL
#include <xxhash.h>

namespace loopwright::test {

inline constexpr std::size_t header_bytes = 48;
inline constexpr std::size_t entry_bytes = 56;

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

inline std::size_t entry_of(const std::string& bytes, std::string_view section) {
  for (std::size_t at = header_bytes;; at += entry_bytes) {
    if (std::string_view(bytes.data() + at) == section) return at;
  }
}

inline std::size_t offset_of(const std::string& bytes, std::string_view section) {
  return number_at<std::uint64_t>(bytes, entry_of(bytes, section) + 24);
}

/// Header checksum anew.
inline std::string signed_header(std::string bytes) {
  put(bytes, 40, std::uint64_t{0});
  const auto sections = number_at<std::uint32_t>(bytes, 12);
  put(bytes, 40, std::uint64_t{XXH3_64bits(bytes.data(), header_bytes + sections * entry_bytes)});
  return bytes;
}

/// All checksums and the id anew.
inline std::string signed_again(std::string bytes) {
  XXH3_state_t state;
  XXH3_128bits_reset(&state);
  for (std::size_t i = 0; i < number_at<std::uint32_t>(bytes, 12); ++i) {
    const std::size_t entry = header_bytes + i * entry_bytes;
    const auto offset = number_at<std::uint64_t>(bytes, entry + 24);
    const auto length = number_at<std::uint64_t>(bytes, entry + 32);
    put(bytes, entry + 48, std::uint64_t{XXH3_64bits(bytes.data() + offset, (length + 7) / 8 * 8)});
    const std::string_view name = bytes.data() + entry;
    if (name == "source" || name == "place_index") continue;  // no part of the id
    XXH3_128bits_update(&state, bytes.data() + entry, 24);
    XXH3_128bits_update(&state, bytes.data() + entry + 32, 8);
    XXH3_128bits_update(&state, bytes.data() + offset, length);
  }
  XXH128_canonical_t id;
  XXH128_canonicalFromHash(&id, XXH3_128bits_digest(&state));
  put(bytes, 24, id);
  return signed_header(bytes);
}

}  // namespace loopwright::test
