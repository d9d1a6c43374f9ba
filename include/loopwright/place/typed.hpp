// What people type, cut into what it may mean.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loopwright::place {

/// "4, Lantern Row, ZQ1 4AA": the head "4 Lantern Row", and the tails that narrow it.
struct Typed {
  std::string head;
  std::vector<std::string> tails;
};
/// A British postcode at the end of the head is a tail too, with or without a comma.
Typed read_typed(std::string_view text);

struct NumberAndStreet {
  std::string number, street;
};
/// "4 Lantern Row", "Lantern Row 4"; empty when no word at an end could be a house number.
std::optional<NumberAndStreet> number_and_street(std::string_view head);

/// "A / B", "A & B", "corner of A and B": every way to cut it in two.
std::vector<std::pair<std::string, std::string>> two_streets(std::string_view head);

/// True for "Flat 2", "Unit 4": a part of a house, which maps rarely have.
bool is_part_of_house(std::string_view text);

}  // namespace loopwright::place
