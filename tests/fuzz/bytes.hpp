// The bytes of a fuzzer's input, taken one after the other; zeros when there are no more.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

namespace loopwright::fuzz {

class Bytes {
 public:
  Bytes(const std::uint8_t* data, std::size_t size) : at_(data), end_(data + size) {}
  [[nodiscard]] bool empty() const { return at_ == end_; }
  [[nodiscard]] std::uint8_t one() { return at_ == end_ ? std::uint8_t{0} : *at_++; }
  /// Two bytes, the greater one first.
  [[nodiscard]] std::uint16_t number() {
    const unsigned high = one();
    return static_cast<std::uint16_t>(high << 8U | one());
  }
  /// Four bytes, the greatest one first.
  [[nodiscard]] std::uint32_t word() {
    const std::uint32_t high = number();
    return high << 16U | number();
  }
  /// As many as the next byte says, at most what there is.
  [[nodiscard]] std::string text() {
    std::string text;
    for (unsigned left = one(); left > 0 && !empty(); --left) text += static_cast<char>(one());
    return text;
  }

 private:
  const std::uint8_t *at_, *end_;
};

}  // namespace loopwright::fuzz
