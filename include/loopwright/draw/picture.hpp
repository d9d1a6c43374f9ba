// A drawing as plain data: strokes, filled outlines and words on a sheet of so many millimetres.
//
//   Picture ring{40, 40};  ring.add(Stroke{{{20, 38}, {20, 26}}, 1.2});  to_svg(ring);
//
// Rules: millimetres from the upper left corner, y downwards; later marks lie over earlier ones. Words
// are UTF-8. A page of a document is a picture too; pictures are put into one another (place).
// Why: what is drawn where can be tested without a renderer, and paper, screen and tests see the same.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace loopwright::draw {

struct Spot {
  double x = 0, y = 0;
  friend bool operator==(const Spot&, const Spot&) = default;
};

/// Left, top, width and height.
struct Box {
  double x = 0, y = 0, width = 0, height = 0;
};

/// Ours: ink on paper, one pale tone for roads not taken, one grey for what may be skipped.
enum class Ink : std::uint8_t { black, grey, pale, paper };

enum class Cap : std::uint8_t { butt, round };

/// A line along some points, corners rounded.
struct Stroke {
  std::vector<Spot> way;  ///< at least two
  double width = 0.4;
  Ink ink = Ink::black;
  Cap cap = Cap::butt;
  std::vector<double> dashes = {};  ///< lengths of dash and gap in turn; empty: unbroken
};

/// A closed outline, filled; what is inside several of them an even number of times is left out.
struct Fill {
  std::vector<std::vector<Spot>> outlines;
  Ink ink = Ink::black;
};

/// A circle: filled, or drawn by a line, or both.
struct Disc {
  Spot middle;
  double radius = 1;
  std::optional<Ink> fill = {};
  double line = 0.4;  ///< width of the line around it; 0: none
  Ink ink = Ink::black;
};

enum class Align : std::uint8_t { left, middle, right };

/// How words look.
struct Type {
  double points = 9;  ///< size of the letters, as printers count it: 72 in an inch
  bool bold = false;
  Ink ink = Ink::black;
  Align align = Align::left;
};

/// Words. They begin, stand around or end at `at`, its y being their upper edge; with a width they are
/// broken into lines no wider than that, in a column whose upper left corner is `at`.
struct Label {
  Spot at;
  std::string text;
  Type type = {};
  double width = 0;   ///< 0: one line
  double turned = 0;  ///< degrees clockwise around `at`
  double halo = 0;    ///< paper left blank around the letters; 0: none
};

using Mark = std::variant<Stroke, Fill, Disc, Label>;

struct Picture {
  double width = 0, height = 0;
  std::vector<Mark> marks = {};

  void add(Mark mark);
};

/// Puts all of `inner` into `outer`, `scale` times as large, its upper left corner at `at`. Words grow
/// and shrink with it.
void place(Picture& outer, const Picture& inner, Spot at, double scale = 1);

/// Width and height that words take, in millimetres; of a column the lines it is broken into.
struct Extent {
  double width = 0, height = 0;
};
/// Measured with the typeface that is printed. Throws InputError when there is no typeface at all.
Extent extent_of(const Label& label);

}  // namespace loopwright::draw
