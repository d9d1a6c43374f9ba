// Method: a name is tried at many places along its road, where the road is straight for as long as the
// name; beside the way, on either side, and on the middle of roads that aren't driven. The place
// nearest to the middle of its road is taken. A long road is named again.
#include "draw/street_names.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <string>

#include "draw/map_lines.hpp"
#include "draw/way_ink.hpp"

namespace loopwright::draw {
namespace {

// 7.5 pt: overview.hpp says why.
constexpr Type driven_type{7.5, true}, other_type{7.5, false, Ink::grey};
constexpr double looked_at_every_mm = 2, again_mm = 110, bend_mm = 1.1;
/// Of a name that must lie along its road.
constexpr double least_part = 0.35;

/// A stretch of one name on paper.
struct NamedLine {
  std::string name;
  Line line;
};

/// The place for words of this extent on a line round a length along it; none where it bends.
std::optional<Area> on_line(const Line& line, double middle, const Extent& words) {
  const double whole = length_of(line);
  const double from = std::max(middle - words.width / 2, 0.0);
  const double to = std::min(middle + words.width / 2, whole);
  if (to - from < least_part * words.width) return std::nullopt;
  const Spot a = along(line, from), b = along(line, to);
  if (length_of(b - a) < 0.3 * words.width) return std::nullopt;
  for (const Spot spot : part_of(line, from, to))
    if (distance_to({a, b}, spot) > bend_mm) return std::nullopt;
  double turned = angle_deg(b - a) - 90;
  if (turned > 90) turned -= 180;
  return Area{0.5 * (a + b), words.width, words.height, turned};
}

/// Moved towards the upper edge of its words.
Area moved(Area area, double up) {
  area.middle = area.middle + up * left_of(towards_deg(area.turned + 90));
  return area;
}

/// Lengths along a line to try, from its middle outwards.
std::vector<double> tries(double length) {
  std::vector<double> at{length / 2};
  const double step = std::max(looked_at_every_mm, length / 40);
  for (double out = step; out < length / 2; out += step) {
    at.push_back(length / 2 - out);
    at.push_back(length / 2 + out);
  }
  return at;
}

bool write_along(Picture& page, Taken& taken, const NamedLine& road, Type type,
                 std::span<const double> shifts) {
  // Paper before and behind, so that two names on one road don't read as one.
  constexpr double gap = 2.5;
  Extent words = extent_of(Label{{}, road.name, type});
  words.width += gap;
  if (length_of(road.line) < least_part * words.width) return false;
  for (const double at : tries(length_of(road.line))) {
    const auto middle = on_line(road.line, at, words);
    if (!middle) continue;
    for (const double shift : shifts) {
      const Area area = moved(*middle, shift);
      if (!taken.free(area)) continue;
      taken.add(area);
      page.add(label_in(area, road.name, type));
      return true;
    }
  }
  return false;
}

std::string name_of(const road::Roads& roads, const road::Piece& piece) {
  const std::string_view name = roads.text(piece.name);
  return std::string(name.empty() ? roads.text(piece.ref) : name);
}

/// Runs of the way on one street, each ground once.
std::vector<NamedLine> driven_lines(const MapOf& map) {
  std::vector<NamedLine> lines;
  std::map<PieceId, bool> seen;
  std::string last;
  for (std::size_t i = 1; i + 1 < map.loop.stretches.size(); ++i) {
    const StretchId stretch = map.loop.stretches[i].stretch;
    const std::string name = name_of(map.roads, map.roads.piece(stretch));
    const bool again = !seen.emplace(stretch.piece(), true).second;
    if (name.empty() || again) {
      last.clear();
      continue;
    }
    const double from = i == 1 ? 0 : map.way.along[map.way.end_of(i - 1)];
    const Line part = map.way.part(from, map.way.along[map.way.end_of(i)]);
    if (name != last) lines.push_back({name, {}});
    append(lines.back().line, part);
    last = name;
  }
  return lines;
}

/// Long roads in parts, so that they are named again.
std::vector<NamedLine> in_parts(const std::vector<NamedLine>& lines) {
  std::vector<NamedLine> parts;
  for (const NamedLine& road : lines) {
    const double length = length_of(road.line);
    const double count = std::max(1.0, std::round(length / again_mm));
    for (double i = 0; i < count; ++i)
      parts.push_back(
          {road.name, part_of(road.line, i * length / count, (i + 1) * length / count)});
  }
  std::stable_sort(parts.begin(), parts.end(), [](const NamedLine& a, const NamedLine& b) {
    return length_of(a.line) > length_of(b.line);
  });
  return parts;
}

void draw_driven(Picture& page, const MapOf& map, Taken& taken) {
  const double off = way_thick / 2 + 0.25 + extent_of(Label{{}, "A", driven_type}).height / 2;
  std::map<std::string, int> written;
  const std::vector<NamedLine> parts = in_parts(driven_lines(map));
  for (const NamedLine& part : parts) {
    // A second label of a street only where it is long enough to be lost without.
    if (written[part.name] > 0 && length_of(part.line) < again_mm / 2) continue;
    if (write_along(page, taken, part, driven_type,
                    std::array{off, -off, off + 0.9, -off - 0.9, off + 1.8, -off - 1.8}))
      ++written[part.name];
  }
}

/// True for roads from tertiary up, and for streets close to the way: one may take them by mistake.
bool matters(const MapOf& map, const road::Piece& piece, const Line& line) {
  constexpr double close_mm = 9;
  if (road::rank(piece.road_class) <= 4) return true;
  if (road::rank(piece.road_class) > 5) return false;
  const Spot middle = along(line, length_of(line) / 2);
  return std::any_of(map.way.line.begin(), map.way.line.end(),
                     [&](Spot spot) { return near(spot, middle, close_mm); });
}

/// Roads that aren't driven, joined where pieces of one name follow each other.
std::vector<NamedLine> other_lines(const MapOf& map, const std::vector<TownRoad>& town) {
  std::vector<NamedLine> lines;
  std::map<std::string, bool> driven;
  for (const wish::LoopStretch& row : map.loop.stretches)
    driven[name_of(map.roads, map.roads.piece(row.stretch))] = true;
  for (const TownRoad& one : town) {
    const road::Piece& piece = map.roads.pieces[one.piece.index()];
    const std::string name = name_of(map.roads, piece);
    if (name.empty() || driven.contains(name) || !matters(map, piece, one.line)) continue;
    const bool on = !lines.empty() && lines.back().name == name &&
                    length_of(lines.back().line.back() - one.line.front()) < 0.01;
    if (!on) lines.push_back({name, {}});
    append(lines.back().line, one.line);
  }
  return lines;
}

void draw_others(Picture& page, const MapOf& map, const std::vector<TownRoad>& town, Taken& taken) {
  std::map<std::string, bool> written;
  for (const NamedLine& part : in_parts(other_lines(map, town))) {
    if (written[part.name]) continue;
    written[part.name] = write_along(page, taken, part, other_type, std::array{0.0});
  }
}

}  // namespace

void draw_names(Picture& page, const MapOf& map, const std::vector<TownRoad>& town, Taken& taken) {
  draw_driven(page, map, taken);
  draw_others(page, map, town, taken);
}

}  // namespace loopwright::draw
