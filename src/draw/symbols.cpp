#include "loopwright/draw/symbols.hpp"

#include <array>
#include <cassert>

#include "draw/symbol_pen.hpp"

namespace loopwright::draw {

Picture kind_symbol(road::Kind kind) {
  SymbolPen pen;
  for (const auto symbol_of : {junction_symbol, crossing_symbol, road_symbol, manoeuvre_symbol}) {
    const SymbolOf draw = symbol_of(kind);
    if (draw == nullptr) continue;
    draw(pen);
    return pen.picture();
  }
  assert(false && "a kind without a symbol");
  return pen.picture();
}

std::vector<Picture> symbol_sheet(const std::string& title,
                                  const std::function<std::string(road::Kind)>& name_of) {
  constexpr double width = 210, height = 297, margin = 16, head = 30, step = 19;
  constexpr std::size_t columns = 4, rows = 13;
  std::vector<Picture> pages;
  std::size_t number = 0;
  for (const road::Kind kind : road::all_kinds()) {
    const std::size_t on_page = number++ % (columns * rows);
    if (on_page == 0) {
      pages.push_back({width, height});
      pages.back().add(Label{{margin, 15}, title, {15, true}});
    }
    constexpr double wide = (width - 2 * margin) / columns;
    const Spot at{margin + wide * static_cast<double>(on_page / rows),
                  head + step * static_cast<double>(on_page % rows)};
    place(pages.back(), kind_symbol(kind), at);
    place(pages.back(), kind_symbol(kind), at + Spot{12, 5}, 0.5);
    pages.back().add(Label{at + Spot{18.5, 1}, name_of(kind), {9}, wide - 20});
  }
  return pages;
}

}  // namespace loopwright::draw
