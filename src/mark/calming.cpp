// Humps, tables, cushions, bumps and dips.
//
// 1. On a node, or along a way of at most 150 m (a raised junction or crossing drawn as a line).
//    Lists by ";" are looked at word by word; islands, rumble strips and narrowings aren't humps.
// 2. Those that follow each other along one street within 150 m are one place, so that a street
//    with a dozen humps is a practice, not a dozen (series.hpp). 150 m is the greatest distance
//    between humps that makes a series (council summary of the Highways (Road Humps) Regulations
//    1999: 20-150 m). Side streets that join in between are ways in and out.
// 3. A chance for each way through that goes over one. One bound to a direction counts only that
//    way: direction=forward on a node, traffic_calming:forward on a way.
// 4. A longer way that is tagged as a whole has humps somewhere: 150 m of it must be driven, and
//    the chance is inferred.
// Source: OSM wiki, page Key:traffic_calming.
#include <algorithm>
#include <optional>
#include <string>

#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/road/by_id.hpp"
#include "series.hpp"
#include "side_value.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;

constexpr double series_within_m = 150;

/// The hump among the words of a key, as "key=word"; empty when there is none.
std::string hump_among(const Tags& tags, std::string_view key) {
  for (const std::string_view word : split(tags.get(key), ';')) {
    if (is_hump(word)) return tag_text(key, word);
  }
  return {};
}

/// The same of a way, for who drives along it or against it.
std::string hump_on_way(const Tags& tags, bool against) {
  const std::string both = hump_among(tags, "traffic_calming");
  if (!both.empty()) return both;
  return hump_among(tags, against ? "traffic_calming:backward" : "traffic_calming:forward");
}

class Calming {
 public:
  explicit Calming(Draft& draft)
      : draft_(draft),
        roads_(draft.roads()),
        rule_{road::node_flag::calming, [this](PieceId piece) { return is_on(piece); }} {}
  void mark() {
    const SeriesRule series{series_within_m, Street::same};
    for (const Spot& spot : series_of(roads_, things_on_road(roads_, rule_), series)) add(spot);
  }

 private:
  struct Told {
    Confidence confidence = Confidence::certain;
    std::string tag;
    OsmObject source;
  };
  [[nodiscard]] bool is_on(PieceId piece) const;
  [[nodiscard]] bool is_long(PieceId piece) const;
  [[nodiscard]] Told at_node(const MetThing& met) const;
  [[nodiscard]] std::optional<Told> told_by(const Path& path) const;
  [[nodiscard]] OsmObject first_of(const Spot& spot) const;
  void add(const Spot& spot);

  Draft& draft_;
  road::Roads roads_;
  ThingRule rule_;
};

bool Calming::is_on(PieceId piece) const {
  const Tags& tags = draft_.way_tags(piece);
  if (!has_key_with(tags, "traffic_calming")) return false;
  return !hump_on_way(tags, false).empty() || !hump_on_way(tags, true).empty();
}

/// Step 4: tagged as a whole.
bool Calming::is_long(PieceId piece) const {
  double metres = 0;
  for (const road::Piece& part : road::whole_way(roads_.pieces, piece)) {
    metres += part.length_m;
  }
  return metres > series_within_m;
}

/// No tag when the one at the node is meant for others.
Calming::Told Calming::at_node(const MetThing& met) const {
  const Tags& tags = draft_.node_tags(met.node);
  const std::optional<bool> along = along_the_way(met);
  const std::string_view bound = tags.get("direction");
  if (along && ((bound == "forward" && !*along) || (bound == "backward" && *along))) return {};
  return {Confidence::certain, hump_among(tags, "traffic_calming"), node_object(roads_, met.node)};
}

/// The first hump on a path, a certain one before others; empty when it meets none.
std::optional<Calming::Told> Calming::told_by(const Path& path) const {
  std::optional<Told> somewhere;
  double somewhere_m = 0;
  for (const MetThing& met : things_met(roads_, rule_, path)) {
    Told told;
    if (met.node.known()) {
      told = at_node(met);
    } else {
      told.tag = hump_on_way(draft_.way_tags(met.on.piece()), met.on.against());
      told.source = way_object(roads_.piece(met.on).way);
    }
    if (told.tag.empty()) continue;
    if (met.node.known() || !is_long(met.on.piece())) return told;
    told.confidence = Confidence::inferred;
    if (!somewhere) somewhere = told;
    somewhere_m += roads_.piece(met.on).length_m;
  }
  return somewhere_m >= series_within_m ? somewhere : std::nullopt;
}

/// The first node or, when none of its nodes is one, the first way that is one.
OsmObject Calming::first_of(const Spot& spot) const {
  for (const NodeId node : spot.nodes) {
    const bool hump = (roads_.nodes[node.index()].flags & rule_.node_flag) != 0;
    if (hump) return node_object(roads_, node);
  }
  const auto piece = std::ranges::find_if(spot.inside, rule_.on_piece);
  return way_object(roads_.pieces[piece->index()].way);
}

void Calming::add(const Spot& spot) {
  road::Place place;
  place.kind = road::Kind::calming;
  place.source = first_of(spot);
  place.at = middle_of(roads_, spot.nodes);
  place.name = roads_.piece(roads_.leaving(spot.nodes.front()).front()).name;
  const PlaceId id = draft_.add_place(place, spot.nodes, spot.inside);
  for (const Path& path : ways_through(roads_, spot)) {
    const std::optional<Told> told = told_by(path);
    if (!told) continue;
    add_passing(draft_, id, path,
                {.confidence = told->confidence, .tag = told->tag, .source = told->source});
  }
}

}  // namespace

void mark_calming(Draft& draft) {
  Calming(draft).mark();
}

}  // namespace loopwright::mark
