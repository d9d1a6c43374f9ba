// A node highway=passing_place anywhere on a two-way road says that the whole way is one car wide;
// a width or lanes tag that said so already keeps the word. Inferred, since the tag is about the
// place and not about the road.
// Source: OSM wiki, page Tag:highway=passing_place.
#include "piece_widths.hpp"

namespace loopwright::mark {

PieceWidths::PieceWidths(const Draft& draft)
    : draft_(&draft), passing_places_(draft.raw, [](const Tags& tags) {
        return tags.is("highway", "passing_place");
      }) {}

Widths PieceWidths::of(PieceId id) const {
  const road::Piece& piece = draft_->tables.pieces[id.index()];
  const RawWay& way = draft_->way(id);
  const bool one_way = one_way_of(way.tags, piece.road_class).one_way;
  Widths widths = widths_of(way.tags, piece.road_class, one_way);
  if (one_way || widths.single_track) return widths;
  if (passing_places_.count_on(way, 0, way.nodes.size() - 1) == 0) return widths;
  widths.narrow = widths.single_track = true;
  widths.certain = false;
  widths.tag = "highway=passing_place";
  return widths;
}

}  // namespace loopwright::mark
