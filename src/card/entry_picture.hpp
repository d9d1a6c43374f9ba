// One entry of a card as it is printed.
#pragma once

#include <optional>

#include "card/entries.hpp"
#include "card/page_style.hpp"

namespace loopwright::card {

/// What is drawn and said beside an entry's own words.
struct EntryExtras {
  std::optional<draw::Picture> shape;  ///< of its junction
  std::string look, hard, said, dual;  ///< "look for the sign", "hard", and the names of two boxes
  std::size_t digits = 2;              ///< room for the number: of the largest of the card
  Reader reader = Reader::instructor;
};

/// As high as it needs to be, at least as high as its shape.
draw::Picture entry_picture(const PageStyle& style, double width, const Entry& entry,
                            const EntryExtras& extras);

}  // namespace loopwright::card
