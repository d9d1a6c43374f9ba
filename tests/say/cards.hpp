// Cards of random loops over a map, driven by the blind driver from what is printed, and their
// wording checked.
//
//   Cards cards(roads);
//   cards.judge(7, say::Sides::left_right).fault   // "": card 7 leads round its loop; else what is wrong
//
// Rules: the same card for the same number and map.
#pragma once

#include <string>
#include <vector>

#include "loopwright/reach/reach.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::test {

struct JudgedCard {
  std::string fault;  ///< why it fails; empty when all is well
  std::size_t rows = 0;
  std::size_t crowded = 0;  ///< rows that are the fourth or later in one breath
};

class Cards {
 public:
  explicit Cards(const road::Roads& roads);

  /// A random loop of some sixty stretches and the way home.
  [[nodiscard]] wish::Loop loop(std::uint32_t number) const;
  [[nodiscard]] JudgedCard judge(std::uint32_t number, say::Sides sides) const;
  /// Why the words for one way through a roundabout or mini lead elsewhere; empty when they don't.
  [[nodiscard]] std::string fault_at(const road::Chance& ring) const;

 private:
  road::Roads roads_;
  reach::Costs costs_;
};

/// Why the rows of a loop don't lead along it; empty when they do.
std::string astray(const road::Roads& roads, const wish::Loop& loop,
                   const std::vector<say::Row>& rows);

/// What is wrong with the wording of a loop's rows: forbidden words, too many of them, spoken too
/// late for the speed; empty when nothing is.
std::string ill_worded(const wish::Loop& loop, const std::vector<say::Row>& rows);

/// Rows said in one breath with three or more before them.
std::size_t crowded_rows(const std::vector<say::Row>& rows);

/// The rows as a card has them: what is said, how far before it is said as printed, what is joined;
/// all else is left out. "My side" is put back into left or right, as the pupil does.
std::vector<say::Row> as_printed(const road::Roads& roads, const std::vector<say::Row>& rows);

}  // namespace loopwright::test
