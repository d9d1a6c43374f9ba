// What of a page is taken already, so that words and marks find free paper.
//
//   Taken taken(page);  taken.add_line(way.line, 1);
//   if (taken.free(area)) taken.add(area);
//
// Rules: areas may be turned; nothing may reach beyond the page.
#pragma once

#include <array>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "draw/lines.hpp"
#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {

/// A turned rectangle round its middle.
struct Area {
  Spot middle;
  double width = 0, height = 0;
  double turned = 0;  ///< degrees clockwise
};

/// Where a one-line label's words are, as the renderer puts them.
Area area_of(const Label& label);
/// The label whose words lie in the middle of an area.
Label label_in(const Area& area, std::string text, Type type);

class Taken {
 public:
  explicit Taken(const Box& page) : page_(page) {}

  void add(const Area& area);
  void add_disc(Spot middle, double radius);
  /// A line with so much on either side of it.
  void add_line(const Line& line, double half_width);

  /// True when it lies on the page and touches nothing that was added.
  [[nodiscard]] bool free(const Area& area) const;
  [[nodiscard]] bool free_disc(Spot middle, double radius) const;

 private:
  struct Round {
    Spot middle;
    double radius = 0;
  };
  /// An area with what is asked of it again and again.
  struct Kept {
    Area area;
    std::array<Spot, 2> sides;  ///< directions: along its words, and down
    std::array<Spot, 4> corners;
    double reach = 0;  ///< from its middle to a corner
  };
  static Kept kept(const Area& area);
  static bool parted_by(const Kept& one, const Kept& other);
  static bool touch(const Kept& kept, Spot middle, double radius);
  [[nodiscard]] bool touches_disc(const Kept& kept) const;

  Box page_;
  std::vector<Kept> areas_;
  std::unordered_map<std::int64_t, std::vector<Round>> discs_;  ///< by cell of paper
};

}  // namespace loopwright::draw
