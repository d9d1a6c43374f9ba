// 1. The number as mapped; else a mapped range that holds it ("12-16" holds 14; of odd ends or even
//    ends, as houses of one side are counted).
// 2. Else between the next lower and the next higher mapped number of the same parity, when they are
//    near in number and on the ground and lie on one side of the street: there in proportion.
//    Limits are ours: 20 numbers are ten houses, at ten metres each a hundred metres or two.
// 3. Else nothing, with the nearest numbers.
#include "place/houses.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "loopwright/base/text.hpp"
#include "loopwright/place/spelling.hpp"
#include "place/letters.hpp"

namespace loopwright::place {
namespace {

constexpr int widest_gap = 20;
constexpr double widest_gap_m = 200;
constexpr std::size_t most_nearest = 2;

struct Numbered {
  const road::Address* house = nullptr;
  HouseNumber number;
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Digits at the start of a text, taken off it.
std::optional<int> take_number(std::string_view& text) {
  const auto end = std::ranges::find_if_not(text, is_digit);
  const auto digits = text.substr(0, static_cast<std::size_t>(end - text.begin()));
  if (digits.size() > 6) return std::nullopt;
  text.remove_prefix(digits.size());
  return read_int(digits);
}

bool holds(const HouseNumber& range, const HouseNumber& number) {
  if (!range.last || !number.first || number.last || !number.letter.empty()) return false;
  if (*number.first < *range.first || *number.first > *range.last) return false;
  const bool one_side = (*range.first - *range.last) % 2 == 0;
  return !one_side || (*number.first - *range.first) % 2 == 0;
}

/// -1 or 1: the side of the street's nearest piece a point lies on, seen along its way.
int side_of(const road::Roads& roads, const Street& street, Point at) {
  double nearest_m = std::numeric_limits<double>::infinity();
  int side = 0;
  for (const PieceId piece : street.pieces) {
    const auto shape = roads.shape_of(piece);
    const Foot foot = nearest_on_line(shape, at);
    if (foot.off_m >= nearest_m) continue;
    nearest_m = foot.off_m;
    const Point behind = point_along(shape, foot.along_m - 1),
                ahead = point_along(shape, foot.along_m + 1);
    side = heading_change_deg(bearing_deg(behind, ahead), bearing_deg(foot.at, at)) < 0 ? -1 : 1;
  }
  return side;
}

Point in_proportion(const Numbered& low, const Numbered& high, int number) {
  const double share =
      static_cast<double>(number - *low.number.first) / (*high.number.first - *low.number.first);
  const auto between = [share](double a, double b) { return a + share * (b - a); };
  const Point a = low.house->at, b = high.house->at;
  return point_from_degrees(between(a.lat(), b.lat()), between(a.lon(), b.lon()));
}

/// The mapped neighbours a missing number lies between; none when they don't tell where.
std::optional<std::pair<Numbered, Numbered>> neighbours(const std::vector<Numbered>& houses,
                                                        int number) {
  const Numbered *low = nullptr, *high = nullptr;
  for (const Numbered& house : houses) {
    if (!house.number.first || house.number.last || (*house.number.first - number) % 2 != 0)
      continue;
    const int mapped = *house.number.first;
    if (mapped < number && (low == nullptr || mapped > *low->number.first)) low = &house;
    if (mapped > number && (high == nullptr || mapped < *high->number.first)) high = &house;
  }
  if (low == nullptr || high == nullptr) return std::nullopt;
  if (*high->number.first - *low->number.first > widest_gap) return std::nullopt;
  if (distance_m(low->house->at, high->house->at) > widest_gap_m) return std::nullopt;
  return std::pair(*low, *high);
}

std::vector<const road::Address*> nearest_to(std::vector<Numbered> houses, int number) {
  std::erase_if(houses, [](const Numbered& house) { return !house.number.first; });
  std::ranges::stable_sort(houses, {}, [number](const Numbered& house) {
    return std::abs(*house.number.first - number);
  });
  std::vector<const road::Address*> nearest;
  for (const Numbered& house : houses) {
    const bool is_known = std::ranges::any_of(
        nearest, [&](const road::Address* known) { return known->number == house.house->number; });
    if (!is_known && nearest.size() < most_nearest) nearest.push_back(house.house);
  }
  return nearest;
}

}  // namespace

HouseNumber read_house_number(std::string_view text) {
  std::string small = lower(text);
  std::erase(small, ' ');
  HouseNumber number{small, {}, {}, {}};
  std::string_view rest = small;
  number.first = take_number(rest);
  if (!number.first) {
    number.text = squeezed(key_of(text));  // a house name, compared as names are
    return number;
  }
  if (!rest.empty() && rest[0] == '-') {
    rest.remove_prefix(1);
    number.last = take_number(rest);
  }
  if (number.last && (!rest.empty() || *number.last <= *number.first)) number.last.reset();
  number.letter = rest;
  return number;
}

bool looks_like_house_number(std::string_view text) {
  constexpr std::size_t longest = 8;  // "1001-1003" is rarer than a typing slip
  return !text.empty() && text.size() <= longest && is_digit(text[0]) &&
         std::ranges::all_of(plain_letters(text), [](char c) {
           return is_digit(c) || c == ' ' || (c >= 'a' && c <= 'z');
         });
}

HouseAnswer house_numbered(const road::Roads& roads, const Street& street,
                           const std::vector<const road::Address*>& houses,
                           std::string_view number) {
  const HouseNumber wanted = read_house_number(number);
  HouseAnswer answer;
  std::vector<Numbered> all;
  for (const road::Address* house : houses) {
    all.push_back({house, read_house_number(roads.text(house->number))});
    if (all.back().number.text == wanted.text) answer.houses.push_back(house);
  }
  if (!answer.houses.empty()) return answer;
  for (const Numbered& house : all) {
    if (holds(house.number, wanted)) answer.houses.push_back(house.house);
  }
  if (!answer.houses.empty() || !wanted.first) return answer;
  const auto between = wanted.letter.empty() ? neighbours(all, *wanted.first) : std::nullopt;
  if (between && side_of(roads, street, between->first.house->at) ==
                     side_of(roads, street, between->second.house->at)) {
    answer.between = in_proportion(between->first, between->second, *wanted.first);
    answer.nearest = {between->first.house, between->second.house};
  } else {
    answer.nearest = nearest_to(std::move(all), *wanted.first);
  }
  return answer;
}

}  // namespace loopwright::place
