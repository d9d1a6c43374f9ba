// The houses of a street, by number.
//
//   const HouseAnswer answer = house_numbered(roads, houses, "14");
//
// Rules: never silently another house: what isn't mapped lies between two mapped neighbours of its
// own side and says so, or isn't found.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "place/streets.hpp"

namespace loopwright::place {

/// A house number as typed or mapped: "14a" is 14 and "a"; "12-16" is 12 to 16. Neither: only text.
struct HouseNumber {
  std::string text;  ///< small letters, no spaces: "14a", "4/2", "rosecottage"
  std::optional<int> first, last;
  std::string letter;
};
HouseNumber read_house_number(std::string_view text);

/// True for what may stand before or after a street's name as its number: "4", "14a", "12-16".
bool looks_like_house_number(std::string_view text);

struct HouseAnswer {
  std::vector<const road::Address*> houses;   ///< with this number; several when mapped twice
  std::optional<Point> between;               ///< when none: between two mapped neighbours
  std::vector<const road::Address*> nearest;  ///< when none: the neighbours, or the nearest numbers
};

/// The house of a number among the houses of one street.
HouseAnswer house_numbered(const road::Roads& roads, const Street& street,
                           const std::vector<const road::Address*>& houses,
                           std::string_view number);

}  // namespace loopwright::place
