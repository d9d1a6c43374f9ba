// Writes a vector tile: layers of features, each a line or a point with named values.
//
//   TileWriter tile;   Layer& roads = tile.layer("roads");
//   roads.add_line(spots, {{"class", "primary"}, {"lanes", 2}});   tile.bytes();
//
// Rules: what lies beyond the margin is cut off; a line in several pieces is one feature. A feature of which nothing is
// left isn't written, nor a layer without features. Coordinates are rounded to whole units, and a line's points that
// fall on the one before are dropped.
// Source: Vector Tile Specification 2.1 (github.com/mapbox/vector-tile-spec).
#pragma once

#include <cstdint>
#include <deque>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "page/tile_grid.hpp"

namespace loopwright::page {

/// How far beyond its edge a tile is drawn, in its units: wide lines and names reach over.
inline constexpr double tile_margin = 128;

using Value = std::variant<std::string, std::int64_t, bool>;
using Values = std::vector<std::pair<std::string_view, Value>>;

class Layer {
 public:
  explicit Layer(std::string_view name) : name_(name) {}
  /// Rules: at least two spots.
  void add_line(std::span<const Spot> line, const Values& values);
  void add_point(Spot at, const Values& values);

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] bool empty() const { return features_.empty(); }
  [[nodiscard]] std::string bytes() const;

 private:
  struct Feature {
    std::vector<std::uint32_t> tags, commands;
    bool line = false;
  };
  std::vector<std::uint32_t> tags_of(const Values& values);

  std::string name_;
  std::vector<Feature> features_;
  std::vector<std::string> keys_;
  std::vector<Value> values_;
  std::map<std::string, std::uint32_t, std::less<>> key_rows_;
  std::map<Value, std::uint32_t> value_rows_;
};

class TileWriter {
 public:
  /// The layer of that name, made when it is first asked for; layers are written in that order.
  Layer& layer(std::string_view name);
  [[nodiscard]] std::string bytes() const;

 private:
  std::deque<Layer> layers_;
};

}  // namespace loopwright::page
