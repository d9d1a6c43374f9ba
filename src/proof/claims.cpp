// Method: plain text, the same wherever it is made, so that tests can compare it.
#include "proof/claims.hpp"

#include <array>
#include <cstdio>

namespace loopwright::proof {
namespace {

std::string both(std::string_view where, const std::string& file, const std::string& area) {
  return std::string(where) + ": the file says " + file + ", the area says " + area;
}

}  // namespace

bool Claims::agree(std::string_view where, const Compared& numbers) {
  const double apart = numbers.file - numbers.area;
  // Written so that a number that isn't one is false too.
  return hold(apart <= numbers.tolerance && -apart <= numbers.tolerance, [&] {
    const std::string unit = numbers.unit.empty() ? "" : " " + std::string(numbers.unit);
    return both(where, tenths(numbers.file) + unit, tenths(numbers.area) + unit);
  });
}

bool Claims::agree(std::string_view where, std::string_view file, std::string_view area) {
  return hold(file == area, [&] {
    return both(where, "'" + std::string(file) + "'", "'" + std::string(area) + "'");
  });
}

std::string tenths(double value) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%.1f", value);
  return text.data();
}

std::string words_for(const OsmObject& object) {
  constexpr std::array<const char*, 3> types{"node ", "way ", "relation "};
  return types.at(static_cast<std::size_t>(object.type)) + std::to_string(object.id);
}

}  // namespace loopwright::proof
