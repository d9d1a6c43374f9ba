// What follows a comma, and what to write there: settlement, postcode, street.
#pragma once

#include <string>
#include <string_view>

#include "place/lookup.hpp"

namespace loopwright::place {

/// far: kept is what lies nearest, and that is not near.
enum class Narrowed { done, far, none_left, unknown };

class Narrowing {
 public:
  Narrowing(const road::Roads& roads, const Names& names) : roads_(roads), lookup_(roads, names) {}

  /// Keeps the hits that fit the tail. Nothing changes when it is unknown, or when none would be left.
  [[nodiscard]] Narrowed narrow(Hits& hits, std::string_view tail) const;

  /// Fills `near` of the first `count` hits, with what tells each from the others.
  void tell_apart(Hits& hits, std::size_t count) const;

 private:
  [[nodiscard]] Narrowed narrow_by_words(Hits& hits, std::string_view tail) const;
  [[nodiscard]] Narrowed by_settlement(Hits& hits, const Candidate& settlement) const;
  [[nodiscard]] std::string settlement_near(Point at) const;
  [[nodiscard]] std::string postcode_near(Point at) const;
  [[nodiscard]] std::string street_near(const Hit& hit) const;

  const road::Roads& roads_;
  Lookup lookup_;
};

}  // namespace loopwright::place
