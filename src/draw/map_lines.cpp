// Method: plain loops over the points; lines are cut at a box segment by segment (Liang and Barsky, ACM
// Transactions on Graphics 3(1), 1984).
#include "draw/map_lines.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

namespace loopwright::draw {
namespace {

double dot(Spot a, Spot b) {
  return a.x * b.x + a.y * b.y;
}

Spot between(Spot a, Spot b, double part) {
  return a + part * (b - a);
}

double distance_to_segment(Spot a, Spot b, Spot spot) {
  const Spot along = b - a;
  const double length2 = dot(along, along);
  const double part = length2 > 0 ? std::clamp(dot(spot - a, along) / length2, 0.0, 1.0) : 0;
  return length_of(between(a, b, part) - spot);
}

/// The parts of a segment, 0 to 1, at which it enters and leaves the box; none when it misses it.
std::optional<std::array<double, 2>> inside(Spot a, Spot b, const Box& box) {
  const Spot step = b - a;
  const std::array<double, 4> slopes{-step.x, step.x, -step.y, step.y};
  const std::array<double, 4> rooms{a.x - box.x, box.x + box.width - a.x, a.y - box.y,
                                    box.y + box.height - a.y};
  double enter = 0, leave = 1;
  for (std::size_t side = 0; side < slopes.size(); ++side) {
    if (slopes[side] == 0) {
      if (rooms[side] < 0) return std::nullopt;
    } else if (slopes[side] < 0) {
      enter = std::max(enter, rooms[side] / slopes[side]);
    } else {
      leave = std::min(leave, rooms[side] / slopes[side]);
    }
  }
  if (enter >= leave) return std::nullopt;
  return std::array{enter, leave};
}

/// The parts of a segment, 0 to 1, at which it enters and leaves a circle; none when it misses it.
std::optional<std::array<double, 2>> in_circle(Spot a, Spot b, Spot middle, double radius) {
  const Spot step = b - a, from = a - middle;
  const double square = dot(step, step), half = dot(from, step);
  const double root = half * half - square * (dot(from, from) - radius * radius);
  if (square <= 0 || root <= 0) return std::nullopt;
  const double enter = (-half - std::sqrt(root)) / square;
  const double leave = (-half + std::sqrt(root)) / square;
  if (enter >= 1 || leave <= 0) return std::nullopt;
  return std::array{enter, leave};
}

/// Lines by the spots they end at.
class Ends {
 public:
  explicit Ends(const std::vector<Line>& lines) : lines_(lines), used_(lines.size(), false) {
    for (std::size_t i = 0; i < lines.size(); ++i)
      for (const Spot end : {lines[i].front(), lines[i].back()}) at_.emplace(key(end), i);
  }

  /// Uses a line; false when it was used before.
  bool use(std::size_t line) {
    const bool first = !used_[line];
    used_[line] = true;
    return first;
  }

  /// Goes on at the end of a line as far as there are unused ones.
  void extend(Line& line) {
    for (bool longer = true; longer;) {
      longer = false;
      const auto [first, last] = at_.equal_range(key(line.back()));
      for (auto it = first; it != last && !longer; ++it)
        if (use(it->second)) append_from(line, lines_[it->second]), longer = true;
    }
  }

 private:
  static std::pair<double, double> key(Spot spot) { return {spot.x, spot.y}; }

  static void append_from(Line& line, const Line& next) {
    const bool turned = !(next.front() == line.back());
    append(line, turned ? reversed(next) : next);
  }

  const std::vector<Line>& lines_;
  std::multimap<std::pair<double, double>, std::size_t> at_;
  std::vector<bool> used_;
};

}  // namespace

double distance_to(const Line& line, Spot spot) {
  double least =
      line.size() == 1 ? length_of(line[0] - spot) : std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < line.size(); ++i)
    least = std::min(least, distance_to_segment(line[i - 1], line[i], spot));
  return least;
}

bool passes_near(const Line& line, Spot spot, double reach) {
  bool left = true, right = true, above = true, below = true;
  for (const Spot at : line) {
    left = left && at.x < spot.x - reach, right = right && at.x > spot.x + reach;
    above = above && at.y < spot.y - reach, below = below && at.y > spot.y + reach;
  }
  return !(left || right || above || below);
}

Line with_steps(const Line& line, double step) {
  Line dense;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double parts = std::max(1.0, std::ceil(length_of(line[i + 1] - line[i]) / step));
    for (double part = 0; part < parts; ++part)
      dense.push_back(between(line[i], line[i + 1], part / parts));
  }
  if (!line.empty()) dense.push_back(line.back());
  return dense;
}

std::vector<Line> cut_evenly(const Line& line, std::size_t parts) {
  const double length = length_of(line);
  if (length <= 0 || parts == 0) return {};
  std::vector<Line> cut{{line.front()}};
  double at = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double leg = length_of(line[i] - line[i - 1]);
    for (double end = length * static_cast<double>(cut.size()) / static_cast<double>(parts);
         cut.size() < parts && at + leg > end && leg > 0;
         end = length * static_cast<double>(cut.size()) / static_cast<double>(parts)) {
      const Spot spot = between(line[i - 1], line[i], (end - at) / leg);
      cut.back().push_back(spot);
      cut.push_back({spot});
    }
    cut.back().push_back(line[i]);
    at += leg;
  }
  return cut;
}

std::vector<Line> joined(std::vector<Line> lines) {
  std::erase_if(lines, [](const Line& line) { return line.size() < 2; });
  Ends ends(lines);
  std::vector<Line> chains;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!ends.use(i)) continue;
    Line chain = lines[i];
    ends.extend(chain);
    chain = reversed(std::move(chain));
    ends.extend(chain);
    chains.push_back(std::move(chain));
  }
  return chains;
}

std::vector<Line> clipped(const Line& line, const Box& box) {
  std::vector<Line> parts;
  bool open = false;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const auto cut = inside(line[i - 1], line[i], box);
    if (!cut) {
      open = false;
      continue;
    }
    if (!open || (*cut)[0] > 0) parts.push_back({between(line[i - 1], line[i], (*cut)[0])});
    parts.back().push_back(between(line[i - 1], line[i], (*cut)[1]));
    open = (*cut)[1] == 1;
  }
  return parts;
}

void cut_circle(const Line& line, Spot middle, double radius, std::vector<Line>& parts) {
  bool open = false;
  const auto add = [&](Spot from, Spot to) {
    if (!open) parts.push_back({from});
    parts.back().push_back(to);
  };
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Spot a = line[i - 1], b = line[i];
    const auto cut = in_circle(a, b, middle, radius);
    if (!cut) {
      add(a, b);
      open = true;
      continue;
    }
    if ((*cut)[0] > 0) add(a, between(a, b, (*cut)[0]));
    open = false;
    if ((*cut)[1] < 1) add(between(a, b, (*cut)[1]), b);
    open = (*cut)[1] < 1;
  }
}

bool holds(const Box& box, Spot spot) {
  return spot.x >= box.x && spot.x <= box.x + box.width && spot.y >= box.y &&
         spot.y <= box.y + box.height;
}

Box within(const Box& box, double margin) {
  return {box.x + margin, box.y + margin, box.width - 2 * margin, box.height - 2 * margin};
}

}  // namespace loopwright::draw
