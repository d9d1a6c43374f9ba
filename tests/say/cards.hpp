// Cards of random loops over a map, driven by the blind driver from what is printed, and their
// wording checked.
//
//   Cards cards(roads);
//   cards.fault_of(7, say::Sides::left_right)   // "": card 7 leads round its loop; else what is wrong
//
// Rules: the same card for the same number and map.
#pragma once

#include <string>
#include <vector>

#include "loopwright/reach/reach.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::test {

class Cards {
 public:
  explicit Cards(const road::Roads& roads);

  /// A random loop of some sixty stretches and the way home.
  [[nodiscard]] wish::Loop loop(std::uint32_t number) const;
  /// Why the card of that loop fails; empty when all is well.
  [[nodiscard]] std::string fault_of(std::uint32_t number, say::Sides sides) const;

 private:
  road::Roads roads_;
  reach::Costs costs_;
};

/// Why the rows of a loop don't lead along it; empty when they do.
std::string astray(const road::Roads& roads, const wish::Loop& loop,
                   const std::vector<say::Row>& rows);

/// What is wrong with the wording of a loop's rows: forbidden words, too many of them, spoken too
/// late for the speed; empty when nothing is.
std::string ill_worded(const road::Roads& roads, const wish::Loop& loop,
                       const std::vector<say::Row>& rows);

/// The rows as a card has them: what is said, how far before it is said as printed, what is joined;
/// all else is left out. "My side" is put back into left or right, as the pupil does.
std::vector<say::Row> as_printed(const road::Roads& roads, const std::vector<say::Row>& rows);

}  // namespace loopwright::test
