// A node highway=passing_place anywhere on a two-way road says that the whole way is one car wide:
// nobody builds a place to pass where two cars pass anyway. A width or lanes tag that said so
// already keeps the word; two lanes, or a measured width of 4.8 m or more, outweigh the node.
// Source: OSM wiki, page Tag:highway=passing_place.
#include "piece_widths.hpp"

#include "loopwright/base/text.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr double car_and_lorry_m = 4.8, two_lanes = 2;  // Manual for Streets, figure 7.1

bool has_room_for_two(const Tags& tags, const Widths& widths) {
  return widths.width_m >= car_and_lorry_m ||
         read_number(tags.get("lanes")).value_or(0) >= two_lanes;
}

}  // namespace

PieceWidths::PieceWidths(const Draft& draft)
    : draft_(&draft), passing_places_(draft.raw, [](const Tags& tags) {
        return tags.is("highway", "passing_place");
      }) {}

const Widths& PieceWidths::of(PieceId id) {
  const RawWay& way = draft_->way(id);
  if (way_ != &way) {
    way_ = &way;
    widths_ = read(way, draft_->tables.pieces[id.index()].road_class);
  }
  return widths_;
}

Widths PieceWidths::read(const RawWay& way, road::RoadClass road_class) const {
  const bool one_way = one_way_of(way.tags, road_class).one_way;
  Widths widths = widths_of(way.tags, road_class, one_way);
  if (one_way || widths.single_track || has_room_for_two(way.tags, widths)) return widths;
  const std::int64_t place = passing_places_.first_on(way, 0, way.nodes.size() - 1);
  if (place == 0) return widths;
  widths.narrow = widths.single_track = widths.certain = true;
  widths.tag = tag_on_node("highway=passing_place", place);
  return widths;
}

}  // namespace loopwright::mark
