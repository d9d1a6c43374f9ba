// Method: lines are cut by Boost.Geometry and put into commands of the specification (section 4.3): move to, line to,
// each step from where the last one ended, as zigzag numbers. Keys and values stand once in a layer (section 4.4).
#include "page/tile_writer.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/box.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <cmath>
#include <protozero/pbf_writer.hpp>

namespace loopwright::page {
namespace {

namespace geometry = boost::geometry;
using Corner = geometry::model::d2::point_xy<double>;
using Line = geometry::model::linestring<Corner>;
using Lines = geometry::model::multi_linestring<Line>;

// Fields of the messages Tile, Layer, Feature and Value, and numbers of commands and geometry types.
enum TileField : std::uint8_t { tile_layers = 3 };
enum LayerField : std::uint8_t {
  layer_name = 1,
  layer_features = 2,
  layer_keys = 3,
  layer_values = 4,
  layer_extent = 5,
  layer_version = 15
};
enum FeatureField : std::uint8_t { feature_tags = 2, feature_type = 3, feature_geometry = 4 };
enum ValueField : std::uint8_t { value_string = 1, value_sint = 6, value_bool = 7 };
constexpr std::uint32_t move_to = 1, line_to = 2;
constexpr std::int32_t type_point = 1, type_line = 2;
constexpr std::uint32_t version = 2;

/// The cursor of a feature's geometry.
class Pen {
 public:
  explicit Pen(std::vector<std::uint32_t>& commands) : commands_(commands) {}
  void command(std::uint32_t what, std::size_t times) {
    commands_.push_back(static_cast<std::uint32_t>(times) << 3U | what);
  }
  void step_to(std::int32_t x, std::int32_t y) {
    commands_.push_back(protozero::encode_zigzag32(x - x_));
    commands_.push_back(protozero::encode_zigzag32(y - y_));
    x_ = x, y_ = y;
  }

 private:
  std::vector<std::uint32_t>& commands_;
  std::int32_t x_ = 0, y_ = 0;
};

struct Dot {
  std::int32_t x, y;
  friend bool operator==(const Dot&, const Dot&) = default;
};

Dot rounded(double x, double y) {
  return {static_cast<std::int32_t>(std::lround(x)), static_cast<std::int32_t>(std::lround(y))};
}

std::vector<Dot> dots_of(const Line& line) {
  std::vector<Dot> dots;
  for (const Corner& corner : line) {
    const Dot dot = rounded(corner.x(), corner.y());
    if (dots.empty() || dot != dots.back()) dots.push_back(dot);
  }
  return dots;
}

Lines parts_inside(std::span<const Spot> line) {
  Line whole;
  for (const Spot& spot : line) whole.emplace_back(spot.x, spot.y);
  const geometry::model::box<Corner> inside({-tile_margin, -tile_margin},
                                            {tile_extent + tile_margin, tile_extent + tile_margin});
  Lines parts;
  geometry::intersection(whole, inside, parts);
  return parts;
}

std::string bytes_of(const Value& value) {
  std::string bytes;
  protozero::pbf_writer writer(bytes);
  if (const auto* text = std::get_if<std::string>(&value)) writer.add_string(value_string, *text);
  if (const auto* number = std::get_if<std::int64_t>(&value))
    writer.add_sint64(value_sint, *number);
  if (const auto* yes = std::get_if<bool>(&value)) writer.add_bool(value_bool, *yes);
  return bytes;
}

}  // namespace

void Layer::add_line(std::span<const Spot> line, const Values& values) {
  Feature feature{.tags = {}, .commands = {}, .line = true};
  Pen pen(feature.commands);
  for (const Line& part : parts_inside(line)) {
    const std::vector<Dot> dots = dots_of(part);
    if (dots.size() < 2) continue;
    pen.command(move_to, 1);
    pen.step_to(dots[0].x, dots[0].y);
    pen.command(line_to, dots.size() - 1);
    for (std::size_t k = 1; k < dots.size(); ++k) pen.step_to(dots[k].x, dots[k].y);
  }
  if (feature.commands.empty()) return;
  feature.tags = tags_of(values);
  features_.push_back(std::move(feature));
}

void Layer::add_point(Spot at, const Values& values) {
  const auto outside = [](double where) {
    return where < -tile_margin || where > tile_extent + tile_margin;
  };
  if (outside(at.x) || outside(at.y)) return;
  Feature feature{.tags = tags_of(values), .commands = {}, .line = false};
  Pen pen(feature.commands);
  pen.command(move_to, 1);
  const Dot dot = rounded(at.x, at.y);
  pen.step_to(dot.x, dot.y);
  features_.push_back(std::move(feature));
}

std::vector<std::uint32_t> Layer::tags_of(const Values& values) {
  std::vector<std::uint32_t> tags;
  for (const auto& [key, value] : values) {
    const auto [key_row, new_key] =
        key_rows_.try_emplace(std::string(key), static_cast<std::uint32_t>(keys_.size()));
    if (new_key) keys_.emplace_back(key);
    const auto [value_row, new_value] =
        value_rows_.try_emplace(value, static_cast<std::uint32_t>(values_.size()));
    if (new_value) values_.push_back(value);
    tags.push_back(key_row->second);
    tags.push_back(value_row->second);
  }
  return tags;
}

std::string Layer::bytes() const {
  std::string bytes;
  protozero::pbf_writer writer(bytes);
  writer.add_string(layer_name, name_);
  for (const Feature& feature : features_) {
    protozero::pbf_writer inside(writer, layer_features);
    inside.add_packed_uint32(feature_tags, feature.tags.begin(), feature.tags.end());
    inside.add_enum(feature_type, feature.line ? type_line : type_point);
    inside.add_packed_uint32(feature_geometry, feature.commands.begin(), feature.commands.end());
  }
  for (const std::string& key : keys_) writer.add_string(layer_keys, key);
  for (const Value& value : values_) writer.add_message(layer_values, bytes_of(value));
  writer.add_uint32(layer_extent, tile_extent);
  writer.add_uint32(layer_version, version);
  return bytes;
}

Layer& TileWriter::layer(std::string_view name) {
  const auto known = std::ranges::find(layers_, name, &Layer::name);
  return known != layers_.end() ? *known : layers_.emplace_back(name);
}

std::string TileWriter::bytes() const {
  std::string bytes;
  protozero::pbf_writer writer(bytes);
  for (const Layer& layer : layers_)
    if (!layer.empty()) writer.add_message(tile_layers, layer.bytes());
  return bytes;
}

}  // namespace loopwright::page
