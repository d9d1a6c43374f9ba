// What a picture shows, measured anew: words as boxes, ink as lines. Nothing of room draw's own
// geometry is used, so that its mistakes are seen.
#pragma once

#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "loopwright/draw/picture.hpp"

namespace loopwright::test {

struct Words {
  std::string text;
  double points = 0;
  std::array<draw::Spot, 4> corners;  ///< as printed, all round the lines
};

inline Words words_of(const draw::Label& label) {
  const draw::Extent extent = draw::extent_of(label);
  double left = 0;
  if (label.width <= 0 && label.type.align == draw::Align::middle) left = -extent.width / 2;
  if (label.width <= 0 && label.type.align == draw::Align::right) left = -extent.width;
  const double angle = label.turned * std::numbers::pi / 180;
  const auto corner = [&](double x, double y) {
    return draw::Spot{label.at.x + x * std::cos(angle) - y * std::sin(angle),
                      label.at.y + x * std::sin(angle) + y * std::cos(angle)};
  };
  return {label.text,
          label.type.points,
          {corner(left, 0), corner(left + extent.width, 0),
           corner(left + extent.width, extent.height), corner(left, extent.height)}};
}

inline std::vector<Words> words_on(const draw::Picture& page) {
  std::vector<Words> words;
  for (const draw::Mark& mark : page.marks)
    if (const auto* label = std::get_if<draw::Label>(&mark)) words.push_back(words_of(*label));
  return words;
}

/// True when an edge of `a` has all of `b` on its outer side, or touches it.
inline bool parted_by_an_edge(const Words& a, const Words& b) {
  constexpr double touching = 0.02;
  for (std::size_t i = 0; i < 4; ++i) {
    const draw::Spot from = a.corners[i], to = a.corners[(i + 1) % 4];
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    bool outside = true;
    for (const draw::Spot c : b.corners)
      outside = outside && ((to.x - from.x) * (c.y - from.y) - (to.y - from.y) * (c.x - from.x)) <
                               touching * length;
    if (outside) return true;
  }
  return false;
}

/// Words that touch others or reach beyond the page, each told.
inline std::vector<std::string> badly_set(const draw::Picture& page) {
  const std::vector<Words> words = words_on(page);
  std::vector<std::string> bad;
  for (std::size_t i = 0; i < words.size(); ++i) {
    for (std::size_t j = i + 1; j < words.size(); ++j)
      if (!parted_by_an_edge(words[i], words[j]) && !parted_by_an_edge(words[j], words[i]))
        bad.push_back("'" + words[i].text + "' touches '" + words[j].text + "'");
    for (const draw::Spot c : words[i].corners)
      if (c.x < -0.01 || c.y < -0.01 || c.x > page.width + 0.01 || c.y > page.height + 0.01) {
        bad.push_back("'" + words[i].text + "' is cut");
        break;
      }
  }
  return bad;
}

inline draw::Spot middle_of(const Words& words) {
  return {(words.corners[0].x + words.corners[2].x) / 2,
          (words.corners[0].y + words.corners[2].y) / 2};
}

inline double distance_to_segment(draw::Spot spot, draw::Spot a, draw::Spot b) {
  const double x = b.x - a.x, y = b.y - a.y, square = x * x + y * y;
  double part = square > 0 ? ((spot.x - a.x) * x + (spot.y - a.y) * y) / square : 0;
  part = part < 0 ? 0 : part > 1 ? 1 : part;
  return std::hypot(a.x + part * x - spot.x, a.y + part * y - spot.y);
}

/// From a spot to the nearest ink of black strokes.
inline double distance_to_ink(const draw::Picture& page, draw::Spot spot) {
  double least = 1e9;
  for (const draw::Mark& mark : page.marks) {
    const auto* stroke = std::get_if<draw::Stroke>(&mark);
    if (stroke == nullptr || stroke->ink != draw::Ink::black) continue;
    for (std::size_t i = 0; i + 1 < stroke->way.size(); ++i)
      least = std::min(
          least, distance_to_segment(spot, stroke->way[i], stroke->way[i + 1]) - stroke->width / 2);
  }
  return least;
}

}  // namespace loopwright::test
