// Method: union-find over the pieces. Their ends, ordered by node, bring together those that meet.
#include "connected.hpp"

#include <algorithm>
#include <numeric>

namespace loopwright::mark {
namespace {

constexpr std::size_t nobody = static_cast<std::size_t>(-1);

class Sets {
 public:
  explicit Sets(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t find(std::size_t item) {
    while (parent_[item] != item) item = parent_[item] = parent_[parent_[item]];
    return item;
  }
  /// The smaller root stays, so that groups are named by their first piece.
  void join(std::size_t a, std::size_t b) {
    a = find(a), b = find(b);
    if (a < b) parent_[b] = a;
    if (b < a) parent_[a] = b;
  }

 private:
  std::vector<std::size_t> parent_;
};

/// An end of a piece: the stretch that leaves its node, and the piece's place among those asked for.
struct End {
  NodeId node;
  StretchId away;
  std::size_t piece;
};

/// Ordered by node.
std::vector<End> ends_of(const road::Roads& roads, std::span<const PieceId> pieces) {
  std::vector<End> ends;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const road::Piece& piece = roads.pieces[pieces[i].index()];
    ends.push_back({piece.a, StretchId(pieces[i], false), i});
    ends.push_back({piece.b, StretchId(pieces[i], true), i});
  }
  std::ranges::stable_sort(ends, {}, &End::node);
  return ends;
}

std::vector<PieceGroup> groups_of(std::span<const PieceId> pieces, Sets& sets) {
  std::vector<std::size_t> group_of(pieces.size(), nobody);
  std::vector<PieceGroup> groups;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    std::size_t& group = group_of[sets.find(i)];
    if (group == nobody) group = groups.size(), groups.emplace_back();
    groups[group].push_back(pieces[i]);
  }
  return groups;
}

}  // namespace

std::vector<PieceGroup> connected_groups(const road::Roads& roads,
                                         std::span<const PieceId> pieces) {
  return connected_groups(roads, pieces, [](StretchId, StretchId) { return true; });
}

std::vector<PieceGroup> connected_groups(const road::Roads& roads, std::span<const PieceId> pieces,
                                         const HangTogether& hang_together) {
  const std::vector<End> ends = ends_of(roads, pieces);
  Sets sets(pieces.size());
  for (std::size_t e = 1; e < ends.size(); ++e) {
    for (std::size_t before = e; before-- > 0 && ends[before].node == ends[e].node;) {
      if (sets.find(ends[before].piece) != sets.find(ends[e].piece) &&
          hang_together(ends[before].away, ends[e].away))
        sets.join(ends[before].piece, ends[e].piece);
    }
  }
  return groups_of(pieces, sets);
}

double length_of_group(const road::Roads& roads, std::span<const PieceId> group) {
  double sum = 0;
  for (const PieceId piece : group) sum += roads.pieces[piece.index()].length_m;
  return sum;
}

}  // namespace loopwright::mark
