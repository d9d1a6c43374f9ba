// Parts of a road where nothing that lies on it or beside it keeps cars from stopping: clear of
// junctions, drives, crossings, signals, bends, islands, bus stops, schools …
//
//   for (const KerbPart& part : ClearKerb(draft, roads, rules).parts(piece)) …
//
// Rules: private to mark. Metres from the piece's first node; both sides of the road alike, since
// rule 243 speaks of what lies opposite too. Needs the piece facts and the runs.
#pragma once

#include <map>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/mark/draft.hpp"
#include "pull_up_rules.hpp"

namespace loopwright::mark {

struct KerbPart {
  double from_m = 0, to_m = 0;
  [[nodiscard]] double metres() const { return to_m - from_m; }
};

class ClearKerb {
 public:
  ClearKerb(const Draft& draft, const road::Roads& roads, const PullUpRules& rules);
  /// In order. Empty when all of it is kept clear.
  [[nodiscard]] std::vector<KerbPart> parts(PieceId piece) const;

 private:
  /// A point of a piece and the metres kept clear to both sides of it.
  struct Block {
    PieceId piece;
    double at_m = 0, margin_m = 0;
  };
  [[nodiscard]] std::vector<Block> blocks_by(PieceId piece) const;
  void walk_beyond(StretchId towards_end, std::vector<Block>& blocks) const;
  [[nodiscard]] double margin_at(NodeId node) const;
  /// Of a node anywhere on a road: an island, a crossing without stripes; 0 for any other.
  [[nodiscard]] double margin_of_tags(const Tags& tags) const;
  void add_nodes(PieceId piece, std::vector<Block>& blocks) const;
  void add_bends(PieceId piece, std::vector<Block>& blocks) const;
  void add_around(Point at, double margin_m);
  void add_line(std::span<const Point> line, double margin_m);
  void add_features();
  /// The block, and what of its margin lies on the next piece.
  void add_point(const Block& block, std::vector<Block>& blocks) const;

  const Draft& draft_;
  const road::Roads& roads_;
  double junction_m_, dead_end_m_, crossing_m_, signals_m_, level_crossing_m_, narrowing_m_;
  double plain_crossing_m_, island_m_, bend_m_, bend_radius_m_;
  std::map<std::string_view, double> beside_m_;  // by the tag of a feature
  using NodeMargin = std::pair<std::int64_t, double>;
  std::vector<NodeMargin> on_nodes_;  // of drives, aisles and tags, by id and width
  std::vector<Block> blocks_;         // by piece once built
};

}  // namespace loopwright::mark
