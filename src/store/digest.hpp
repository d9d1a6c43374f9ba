// XXH3 over bytes that come in parts; only this room's checksums and the area id are made with it.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>

struct XXH3_state_s;

namespace loopwright::store {

using AreaId = std::array<std::uint8_t, 16>;

class Digest {
 public:
  enum class Width { bits_64, bits_128 };
  explicit Digest(Width width);

  void add(const void* bytes, std::size_t count);
  /// Rules: made with bits_64.
  [[nodiscard]] std::uint64_t number() const;
  /// Most significant byte first. Rules: made with bits_128.
  [[nodiscard]] AreaId id() const;

 private:
  struct Free {
    void operator()(XXH3_state_s* state) const;
  };
  Width width_;
  std::unique_ptr<XXH3_state_s, Free> state_;
};

/// 64-bit XXH3 of bytes in one place.
std::uint64_t checksum_of(const void* bytes, std::size_t count);

}  // namespace loopwright::store
