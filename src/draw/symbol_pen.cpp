#include "draw/symbol_pen.hpp"

#include "draw/way.hpp"

namespace loopwright::draw {
namespace {

constexpr double thick_wide = 1.15, thin_wide = 0.5, bar = 3.2;

}  // namespace

SymbolPen& SymbolPen::way(const Line& line) {
  draw_way(picture_, line, thick_wide, bar);
  return *this;
}

SymbolPen& SymbolPen::thick(const Line& line) {
  picture_.add(Stroke{line, thick_wide});
  return *this;
}

SymbolPen& SymbolPen::thin(const Line& line) {
  picture_.add(Stroke{line, thin_wide});
  return *this;
}

SymbolPen& SymbolPen::dashed(const Line& line) {
  picture_.add(Stroke{line, thin_wide, Ink::black, Cap::butt, {1, 0.8}});
  return *this;
}

SymbolPen& SymbolPen::road(const Line& line, double width) {
  return thin(shifted(line, width / 2)).thin(shifted(line, -width / 2));
}

SymbolPen& SymbolPen::ring(Spot middle, double radius, double line) {
  picture_.add(Disc{middle, radius, Ink::paper, line});
  return *this;
}

SymbolPen& SymbolPen::dot(Spot middle, double radius, Ink ink) {
  picture_.add(Disc{middle, radius, ink, 0});
  return *this;
}

SymbolPen& SymbolPen::block(Box box, Ink ink) {
  return area({{box.x, box.y},
               {box.x + box.width, box.y},
               {box.x + box.width, box.y + box.height},
               {box.x, box.y + box.height}},
              ink);
}

SymbolPen& SymbolPen::area(const Line& outline, Ink ink) {
  picture_.add(Fill{{outline}, ink});
  return *this;
}

SymbolPen& SymbolPen::frame(Box box) {
  const Spot a{box.x, box.y}, c{box.x + box.width, box.y + box.height};
  return thin({{a.x, a.y}, {c.x, a.y}, {c.x, c.y}, {a.x, c.y}, {a.x, a.y - thin_wide / 2}});
}

SymbolPen& SymbolPen::lamps(Spot at, double height) {
  draw_lamps(picture_, at, height);
  return *this;
}

SymbolPen& SymbolPen::rails(const Line& line) {
  draw_rails(picture_, along(line, length_of(line) / 2), direction_at(line, 0), length_of(line), 2);
  return *this;
}

SymbolPen& SymbolPen::number(const std::string& text, double points) {
  Label label{{5, 5}, text, {points, true, Ink::black, Align::middle}};
  label.at.y -= extent_of(label).height / 2;
  picture_.add(label);
  return *this;
}

}  // namespace loopwright::draw
