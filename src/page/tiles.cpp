// Method: pieces of road come from the area's grid; what lies at a point (places, settlements) is sorted by the same
// cells once. Each layer begins at the zoom from which it can be read.
#include "loopwright/page/tiles.hpp"

#include <algorithm>
#include <cassert>

#include "loopwright/road/in_box.hpp"
#include "page/tile_grid.hpp"
#include "page/tile_roads.hpp"
#include "page/tile_writer.hpp"

namespace loopwright::page {
namespace {

// Before these a layer would be a blot.
constexpr int places_zoom = 13, roadside_zoom = 15, quarters_zoom = 12;

bool is_settlement(std::string_view what) {
  return what.starts_with("place=");
}

bool is_quarter(std::string_view what) {
  return what != "place=city" && what != "place=town" && what != "place=village";
}

/// Rows whose cell the box touches, in their own order.
template <class Row>
std::vector<Row> in_box(const std::vector<std::pair<std::uint64_t, Row>>& by_cell,
                        const road::Box& box) {
  std::vector<Row> found;
  const auto cell_of = &std::pair<std::uint64_t, Row>::first;
  for (const road::CellRun& run : road::cell_runs(box)) {
    const auto first = std::ranges::lower_bound(by_cell, run.west, {}, cell_of);
    for (auto row = first; row != by_cell.end() && row->first <= run.east; ++row)
      found.push_back(row->second);
  }
  std::ranges::sort(found);
  return found;
}

struct Hardness {
  int least = 0, most = 0;  ///< 0: no chance begins here
  bool noted = false;       ///< one of them by a note
};

Hardness hardness_of(const road::Roads& roads, PlaceId place) {
  Hardness found;
  for (const NodeId node : roads.nodes_of(place)) {
    for (const StretchId leaving : roads.leaving(node)) {
      for (const road::Chance& chance : roads.chances_from(leaving.back())) {
        if (chance.place != place) continue;
        found.least =
            found.least == 0 ? chance.hardness : std::min<int>(found.least, chance.hardness);
        found.most = std::max<int>(found.most, chance.hardness);
        found.noted = found.noted || chance.confidence == road::Confidence::noted;
      }
    }
  }
  return found;
}

/// A place of the map at which notes leave nothing to practise.
bool is_taken_away(const road::Roads& map, PlaceId id, const Hardness& now) {
  return now.most == 0 && id.index() < map.places.size() && hardness_of(map, id).most > 0;
}

struct Noted {
  const road::Roads &roads, &map;
};

void add_places(TileWriter& out, const TileAddress& tile, const Noted& noted,
                std::span<const PlaceId> places) {
  const road::Roads& roads = noted.roads;
  Layer& layer = out.layer("places");
  for (const PlaceId id : places) {
    const road::Place& place = roads.places[id.index()];
    const road::KindForm form = road::form_of(place.kind);
    if (form == road::KindForm::run ||
        (form != road::KindForm::junction && tile.zoom < roadside_zoom))
      continue;
    Values values{{"kind", std::string(road::name(place.kind))},
                  {"source", std::int64_t{place.source.id}}};
    const Hardness hardness = hardness_of(roads, id);
    if (&noted.roads != &noted.map && is_taken_away(noted.map, id, hardness)) continue;
    if (hardness.noted) values.emplace_back("noted", true);
    if (hardness.most > 0) {
      values.emplace_back("easiest", std::int64_t{hardness.least});
      values.emplace_back("hardest", std::int64_t{hardness.most});
    }
    if (const auto name = roads.text(place.name); !name.empty())
      values.emplace_back("name", std::string(name));
    layer.add_point(spot_in(tile, place.at), values);
  }
}

void add_names(TileWriter& out, const TileAddress& tile, const road::Roads& roads,
               std::span<const std::size_t> rows) {
  Layer& layer = out.layer("names");
  for (const std::size_t row : rows) {
    const road::NamedSpot& spot = roads.named_spots[row];
    const std::string_view what = roads.text(spot.what);
    if (is_quarter(what) && tile.zoom < quarters_zoom) continue;
    layer.add_point(spot_in(tile, spot.at),
                    {{"name", std::string(roads.text(spot.name))},
                     {"what", std::string(what.substr(what.find('=') + 1))}});
  }
}

}  // namespace

bool is_tile(const TileAddress& tile) {
  return tile.zoom >= least_zoom && tile.zoom <= most_zoom && tile.column >> tile.zoom == 0 &&
         tile.row >> tile.zoom == 0;
}

Tiles::Tiles(const road::Roads& roads, const road::Roads& map) : roads_(roads), map_(map) {
  for (std::size_t row = 0; row < roads.places.size(); ++row)
    places_.emplace_back(road::grid_cell(roads.places[row].at), PlaceId{row});
  for (std::size_t row = 0; row < roads.named_spots.size(); ++row)
    if (is_settlement(roads.text(roads.named_spots[row].what)))
      spots_.emplace_back(road::grid_cell(roads.named_spots[row].at), row);
  std::ranges::sort(places_);
  std::ranges::sort(spots_);
}

std::string Tiles::tile(const TileAddress& tile, const lanes::Passing& when,
                        const hours::Setting& setting) const {
  assert(is_tile(tile));
  const road::Box box = box_of(tile, tile_margin);
  TileWriter out;
  add_roads(out, {tile, roads_, map_, when, setting}, road::pieces_in(roads_, box));
  if (tile.zoom >= places_zoom) add_places(out, tile, {roads_, map_}, in_box(places_, box));
  add_names(out, tile, roads_, in_box(spots_, box));
  return out.bytes();
}

}  // namespace loopwright::page
