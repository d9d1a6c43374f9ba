// 1. A thing is a node with the flag, or all pieces of one way the rule names. On service roads
//    (car parks, yards) it is no matter for a lesson.
// 2. Things that share a node are one. From each, the road is walked straight on both ways
//    (approach.hpp) until another is met or the limit is passed; the road between them is inside.
// 3. The street of a node is the name that most of its ends have, the first named of equals. So a
//    raised junction joins the humps of one of its streets, never a whole quarter.
// 4. Joined sets are kept as a forest: each thing points at an earlier one, or at itself.
#include "series.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <unordered_map>

#include "approach.hpp"

namespace loopwright::mark {
namespace {

bool is_service(const road::Piece& piece) {
  return piece.road_class == road::RoadClass::service;
}

class SeriesFinder {
 public:
  SeriesFinder(const road::Roads& roads, const std::vector<Spot>& things, const SeriesRule& rule)
      : roads_(roads), things_(things), rule_(rule), parent_(things.size()) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::vector<Spot> find();

 private:
  std::size_t root(std::size_t thing) {
    while (parent_[thing] != thing) thing = parent_[thing] = parent_[parent_[thing]];
    return thing;
  }
  void join(std::size_t a, std::size_t b) {
    a = root(a), b = root(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }
  void join_touching();
  void join_next(std::size_t thing, StretchId away);
  [[nodiscard]] TextId street_of(NodeId node) const;
  [[nodiscard]] bool stays(TextId street, StretchId stretch) const;

  const road::Roads& roads_;
  const std::vector<Spot>& things_;
  SeriesRule rule_;
  std::vector<std::size_t> parent_;
  std::unordered_map<NodeId, std::size_t> thing_at_;
  std::vector<std::pair<std::size_t, Spot>> between_;  // by one of the things joined
};

void SeriesFinder::join_touching() {
  for (std::size_t thing = 0; thing < things_.size(); ++thing) {
    for (const NodeId node : things_[thing].nodes) {
      join(thing_at_.try_emplace(node, thing).first->second, thing);
    }
  }
}

TextId SeriesFinder::street_of(NodeId node) const {
  std::map<TextId, int> ends;
  for (const StretchId away : roads_.leaving(node)) ++ends[roads_.piece(away).name];
  const auto most = std::ranges::max_element(ends, {}, [](const auto& end) { return end.second; });
  return most == ends.end() ? TextId{} : most->first;
}

/// True when a walk along a street may go on over this stretch.
bool SeriesFinder::stays(TextId street, StretchId stretch) const {
  if (rule_.street == Street::any) return true;
  if (roads_.piece(stretch).name != street) return false;
  const bool named = !roads_.text(street).empty();
  return named || road_ends(roads_, roads_.from_node(stretch)) <= 2;
}

void SeriesFinder::join_next(std::size_t thing, StretchId away) {
  const TextId street = street_of(roads_.from_node(away));
  Spot between;
  double metres = 0;
  for (StretchId s = away; s.known(); s = straight_on(roads_, s)) {
    metres += roads_.piece(s).length_m;
    if (metres > rule_.within_m || !stays(street, s)) return;
    between.inside.push_back(s.piece());
    between.nodes.push_back(roads_.to_node(s));
    const auto met = thing_at_.find(roads_.to_node(s));
    if (met == thing_at_.end()) continue;
    if (rule_.street == Street::same && street_of(roads_.to_node(s)) != street) return;
    join(thing, met->second);
    between_.emplace_back(thing, std::move(between));
    return;
  }
}

std::vector<Spot> SeriesFinder::find() {
  join_touching();
  for (std::size_t thing = 0; thing < things_.size(); ++thing) {
    for (const NodeId node : things_[thing].nodes) {
      for (const StretchId away : roads_.leaving(node)) {
        if (!things_[thing].holds(away.piece())) join_next(thing, away);
      }
    }
  }
  std::map<std::size_t, Spot> series;
  const auto put = [&](std::size_t thing, const Spot& spot) {
    Spot& whole = series[root(thing)];
    whole.nodes.insert(whole.nodes.end(), spot.nodes.begin(), spot.nodes.end());
    whole.inside.insert(whole.inside.end(), spot.inside.begin(), spot.inside.end());
  };
  for (std::size_t thing = 0; thing < things_.size(); ++thing) put(thing, things_[thing]);
  for (const auto& [thing, spot] : between_) put(thing, spot);
  std::vector<Spot> spots;
  for (auto& [first, spot] : series) {
    spot.tidy();
    spots.push_back(std::move(spot));
  }
  return spots;
}

}  // namespace

std::vector<Spot> things_on_road(const road::Roads& roads, const ThingRule& rule) {
  std::vector<Spot> things;
  for (std::size_t row = 0; row < roads.nodes.size(); ++row) {
    if ((roads.nodes[row].flags & rule.node_flag) == 0) continue;
    Spot spot{{NodeId{row}}, {}};
    if (is_on_road(roads, spot)) things.push_back(std::move(spot));
  }
  std::int64_t way = 0;  // of the last piece that is one; pieces are in order of their ways
  for (std::size_t row = 0; rule.on_piece && row < roads.pieces.size(); ++row) {
    const road::Piece& piece = roads.pieces[row];
    if (is_service(piece) || !rule.on_piece(PieceId{row})) continue;
    const Spot spot{{std::min(piece.a, piece.b), std::max(piece.a, piece.b)}, {PieceId{row}}};
    if (piece.way == way) {
      things.back().take(spot);
    } else {
      things.push_back(spot);
    }
    way = piece.way;
  }
  return things;
}

std::vector<Spot> series_of(const road::Roads& roads, const std::vector<Spot>& things,
                            const SeriesRule& rule) {
  return SeriesFinder(roads, things, rule).find();
}

std::vector<MetThing> things_met(const road::Roads& roads, const ThingRule& rule,
                                 const Path& path) {
  std::vector<MetThing> met;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    if (i > 0 && rule.on_piece && rule.on_piece(path[i].piece())) met.push_back({path[i], {}, {}});
    const NodeId node = roads.to_node(path[i]);
    if ((roads.nodes[node.index()].flags & rule.node_flag) != 0) {
      met.push_back({path[i], node, path[i + 1]});
    }
  }
  return met;
}

std::optional<bool> along_the_way(const MetThing& met) {
  if (met.next.known() && met.next.against() != met.on.against()) return std::nullopt;
  return !met.on.against();
}

}  // namespace loopwright::mark
