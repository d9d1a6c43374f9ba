// Method: A4 in normal print is the measure; A5 keeps its letters and halves the rows, large print scales all
// but the page by the square root of two.
#include "card/page_style.hpp"

#include <numbers>

namespace loopwright::card {

double letters_of(const PageStyle& style) {
  return style.text / PageStyle{}.text;
}

PageStyle scaled(PageStyle style, double scale) {
  style.say *= scale;
  style.text *= scale;
  return style;
}

PageStyle style_of(Paper paper, Print print) {
  PageStyle style;
  if (paper == Paper::a5) {
    style.width = 148, style.height = 210, style.margin = 8;
    style.rows /= 2;
    style.columns = 1;
  }
  if (print == Print::large) {
    style = scaled(style, std::numbers::sqrt2);
    style.shape_width *= std::numbers::sqrt2;
    style.shape_height *= std::numbers::sqrt2;
    style.rows /= 2;
    style.columns = 1;
  }
  return style;
}

draw::Type plain(const PageStyle& style) {
  return {style.text};
}

draw::Type bold(const PageStyle& style) {
  return {style.text, true};
}

draw::Type grey(const PageStyle& style) {
  return {style.text, false, draw::Ink::grey};
}

}  // namespace loopwright::card
