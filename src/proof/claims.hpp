// The tally of a proof: how many claims were looked at, and the first that is false.
//
//   if (!claims.hold(a == b, [&] { return where + ": the file says …"; })) return false;
//
// Rules: the text is only made when the claim is false; the first one stays.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "loopwright/base/ids.hpp"

namespace loopwright::proof {

/// A number in the file beside the area's own, and how far they may lie apart.
struct Compared {
  double file = 0, area = 0;
  double tolerance = 0;
  std::string_view unit;
};

class Claims {
 public:
  template <class Text>
  bool hold(bool is_true, Text&& text) {
    ++count_;
    if (!is_true && !false_claim_) false_claim_ = text();
    return is_true;
  }
  /// "<where>: the file says 120.0 m, the area says 118.2 m"
  bool agree(std::string_view where, const Compared& numbers);
  /// "<where>: the file says 'High Street', the area says 'Mill Street'"
  bool agree(std::string_view where, std::string_view file, std::string_view area);

  [[nodiscard]] std::int64_t count() const { return count_; }
  [[nodiscard]] const std::optional<std::string>& false_claim() const { return false_claim_; }

 private:
  std::int64_t count_ = 0;
  std::optional<std::string> false_claim_;
};

/// A number with one decimal: "118.2".
std::string tenths(double value);
/// "way 7"
std::string words_for(const OsmObject& object);

}  // namespace loopwright::proof
