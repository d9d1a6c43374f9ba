// 1. A node railway=tram_level_crossing, or one where the rails of a tram cross the road
//    (tram_rails.cpp; room read cuts the road there). Crossings within 30 m of each other along one
//    road are one, over several tracks (30 m is ours).
// 2. A chance for each way through that crosses rails: neither arriving nor going on along them.
//    Turning into a street with rails in it is the start of a run of its kind instead.
// 3. An untagged crossing is as certain: the tag is the tram's own.
// Sources: OSM wiki, pages Tag:railway=tram and Tag:railway=tram_level_crossing; Highway Code
// rules 300 to 307.
#include <string>

#include "loopwright/mark/rules.hpp"
#include "series.hpp"
#include "tag_words.hpp"
#include "tram_rails.hpp"

namespace loopwright::mark {
namespace {

constexpr double one_crossing_m = 30;

class TramCrossings {
 public:
  explicit TramCrossings(Draft& draft) : draft_(draft), roads_(draft.roads()), rails_(draft.raw) {}
  void mark();

 private:
  [[nodiscard]] bool on_rails(StretchId stretch, NodeId node) const;
  [[nodiscard]] bool crosses(const MetThing& met) const;
  void add(const Spot& spot);

  Draft& draft_;
  road::Roads roads_;
  TramRails rails_;
  ThingRule rule_{road::node_flag::tram_crossing, {}};
};

/// True when rails lie in the road where it touches the node.
bool TramCrossings::on_rails(StretchId stretch, NodeId node) const {
  const road::Piece& piece = roads_.piece(stretch);
  const std::vector<std::int64_t>& nodes = draft_.way(stretch.piece()).nodes;
  if (piece.b == node && rails_.join(nodes[piece.to_index - 1], nodes[piece.to_index])) return true;
  return piece.a == node && rails_.join(nodes[piece.from_index], nodes[piece.from_index + 1]);
}

bool TramCrossings::crosses(const MetThing& met) const {
  return !on_rails(met.on, met.node) && !on_rails(met.next, met.node);
}

void TramCrossings::add(const Spot& spot) {
  road::Place place;
  place.kind = road::Kind::tram_crossing;
  place.source = node_object(roads_, spot.nodes.front());
  place.at = middle_of(roads_, spot.nodes);
  const PlaceId id = draft_.add_place(place, spot.nodes, spot.inside);
  for (const Path& path : ways_through(roads_, spot)) {
    for (const MetThing& met : things_met(roads_, rule_, path)) {
      if (!crosses(met)) continue;
      const Tags& tags = draft_.node_tags(met.node);
      const bool tagged = tags.is("railway", "tram_level_crossing");
      add_passing(draft_, id, path,
                  {.tag = tagged ? tag_text(tags, "railway") : "railway=tram across the road",
                   .source = node_object(roads_, met.node)});
      break;
    }
  }
}

void TramCrossings::mark() {
  const SeriesRule series{.within_m = one_crossing_m};
  for (const Spot& spot : series_of(roads_, things_on_road(roads_, rule_), series)) add(spot);
}

}  // namespace

void mark_tram_crossings(Draft& draft) {
  TramCrossings(draft).mark();
}

}  // namespace loopwright::mark
