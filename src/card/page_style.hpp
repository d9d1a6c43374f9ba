// Sizes of a printed page: millimetres, and points for letters.
//
// Rules: what is spoken is never printed under 12 pt, nothing under 9 pt. A5 holds half the rows of A4, large
// print half of those of the same paper.
#pragma once

#include "loopwright/card/pack.hpp"
#include "loopwright/draw/picture.hpp"

namespace loopwright::card {

struct PageStyle {
  double width = 210, height = 297;
  double margin = 11;
  int rows = 14;            ///< on a page
  double say = 13;          ///< points of what is spoken
  double text = 9;          ///< points of the rest
  double shape_width = 20;  ///< of a row's junction
  double shape_height = 15;
  int columns = 2;  ///< of a page of sections
};

PageStyle style_of(Paper paper, Print print);

/// How many times as large as in normal print the letters are.
double letters_of(const PageStyle& style);

/// Letters so many times as large.
PageStyle scaled(PageStyle style, double scale);

draw::Type plain(const PageStyle& style);
draw::Type bold(const PageStyle& style);
draw::Type grey(const PageStyle& style);

}  // namespace loopwright::card
