// The line that all symbols are drawn in: thick for the car's way, thin for roads and what is beside.
#pragma once

#include <array>
#include <string>

#include "draw/lines.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::draw {

/// Spots are millimetres in the box of 10 by 10.
class SymbolPen {
 public:
  /// A thick line that ends in a bar.
  SymbolPen& way(const Line& line);
  /// A thick line without one.
  SymbolPen& thick(const Line& line);
  SymbolPen& thin(const Line& line);
  SymbolPen& dashed(const Line& line);
  /// Two thin edges, `width` apart.
  SymbolPen& road(const Line& line, double width);
  SymbolPen& ring(Spot middle, double radius, double line);
  SymbolPen& dot(Spot middle, double radius, Ink ink = Ink::black);
  SymbolPen& block(Box box, Ink ink = Ink::black);
  SymbolPen& area(const Line& outline, Ink ink = Ink::black);
  SymbolPen& frame(Box box);
  /// Three lamps in a box of this height, its middle at `at`.
  SymbolPen& lamps(Spot at, double height);
  /// Rails with sleepers.
  SymbolPen& rails(const Line& line);
  SymbolPen& number(const std::string& text, double points);

  [[nodiscard]] Picture picture() const { return picture_; }

 private:
  Picture picture_{10, 10};
};

using SymbolOf = void (*)(SymbolPen&);

/// How a kind is drawn, in the files symbols_*.cpp; null when it isn't of that file.
SymbolOf junction_symbol(road::Kind kind);
SymbolOf crossing_symbol(road::Kind kind);
SymbolOf road_symbol(road::Kind kind);
SymbolOf manoeuvre_symbol(road::Kind kind);

}  // namespace loopwright::draw
