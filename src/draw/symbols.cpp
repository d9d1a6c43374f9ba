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

}  // namespace loopwright::draw
