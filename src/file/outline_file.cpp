// 1. GeoJSON: the rings of every polygon, whatever it is wrapped in. Others are refused: who hands in a line meant
//    something else.
// 2. A polygon file: a name; sections of a name, lines of longitude and latitude, and END; a last END. A '!' before a
//    section's name says that it is a hole.
#include "loopwright/file/outline_file.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "file/cursor.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/nesting.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::file {
namespace {

using Rings = std::vector<Ring>;

constexpr std::size_t most_points = 5'000'000, most_features = 100'000;

Point outline_point(const Cursor& value) {
  const auto numbers = value.items(3);  // a third is the height
  if (numbers.size() < 2) value.fail("a position of longitude and latitude");
  return point_from_degrees(numbers[1].number(-90, 90), numbers[0].number(-180, 180));
}

void add_rings(Rings& rings, const Cursor& polygon) {
  // RFC 7946 3.1.6: the first ring is the outer one; four positions or more, the last is the first.
  auto role = Ring::Role::area;
  for (const Cursor& ring : polygon.items(most_features)) {
    std::vector<Point> points;
    for (const Cursor& at : ring.items(most_points)) points.push_back(outline_point(at));
    if (points.size() < 4) ring.fail("a ring of four positions or more");
    rings.emplace_back(std::move(points), role);
    role = Ring::Role::hole;
  }
}

void add_polygons(Rings& rings, const Cursor& value) {
  const Cursor type_of = value.at("type");
  const std::string type = type_of.text();
  if (type == "FeatureCollection") {
    for (const Cursor& feature : value.at("features").items(most_features))
      add_polygons(rings, feature);
  } else if (type == "Feature") {
    add_polygons(rings, value.at("geometry"));
  } else if (type == "MultiPolygon") {
    for (const Cursor& polygon : value.at("coordinates").items(most_features))
      add_rings(rings, polygon);
  } else if (type == "Polygon") {
    add_rings(rings, value.at("coordinates"));
  } else {
    type_of.fail("\"Polygon\" or \"MultiPolygon\", perhaps in a Feature or a FeatureCollection");
  }
}

Rings rings_of_geojson(std::string_view text, const std::string& name) {
  Rings rings;
  if (nests_deeper(text, most_nested))
    throw InputError(name + ": its collections lie too deep in each other");
  try {
    const auto json = nlohmann::json::parse(text);
    add_polygons(rings, Cursor(json, name));
  } catch (const nlohmann::json::parse_error& error) {
    throw InputError(name + ": is no JSON at byte " + std::to_string(error.byte) +
                     "; an outline is GeoJSON or a .poly file");
  } catch (const nlohmann::json::out_of_range&) {
    throw InputError(name + ": holds a number that is too large");
  }
  return rings;
}

/// The lines of a polygon file, numbered as people count.
class PolyReader {
 public:
  PolyReader(std::string_view text, const std::string& name)
      : lines_(split(text, '\n')), name_(name) {}

  Rings rings() {
    Rings rings;
    next("the name of the outline");
    for (auto head = next("a section or END"); head != "END"; head = next("a section or END")) {
      std::vector<Point> points;
      for (auto line = next("a position or END"); line != "END"; line = next("a position or END"))
        points.push_back(position(line));
      if (points.size() < 3) fail("three positions or more before END");
      rings.emplace_back(std::move(points),
                         head.starts_with('!') ? Ring::Role::hole : Ring::Role::area);
    }
    return rings;
  }

 private:
  std::string_view next(std::string_view expected) {
    while (at_ < lines_.size())
      if (const auto line = trim(lines_[at_++]); !line.empty()) return line;
    fail("that " + std::string(expected) + " comes; it ends here");
  }

  [[nodiscard]] Point position(std::string_view line) const {
    const auto blank = line.find_first_of(" \t");
    const auto lon = read_number(trim(line.substr(0, blank)));
    const auto lat =
        blank == std::string_view::npos ? std::nullopt : read_number(trim(line.substr(blank)));
    if (!lon || !lat || !(std::abs(*lon) <= 180) || !(std::abs(*lat) <= 90))
      fail("longitude and latitude in degrees, parted by a blank");
    return point_from_degrees(*lat, *lon);
  }

  [[noreturn]] void fail(const std::string& expected) const {
    throw InputError(name_ + ":" + std::to_string(at_) + ": expected " + expected);
  }

  std::vector<std::string_view> lines_;
  const std::string& name_;
  std::size_t at_ = 0;
};

}  // namespace

std::vector<Ring> read_outline(std::string_view text, std::string_view file_name) {
  const std::string name(file_name);
  const bool poly = name.ends_with(".poly");
  if (!poly && !name.ends_with(".geojson") && !name.ends_with(".json"))
    throw InputError(name + ": an outline is a file that ends in .geojson, .json or .poly");
  Rings rings = poly ? PolyReader(text, name).rings() : rings_of_geojson(text, name);
  if (std::ranges::find(rings, Ring::Role::area, &Ring::role) == rings.end())
    throw InputError(name + ": holds no outline");
  return rings;
}

}  // namespace loopwright::file
