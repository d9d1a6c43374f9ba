// Method: union-find over the pieces. Their ends, ordered by node, bring together those that meet.
#include "connected.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

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

}  // namespace

std::vector<PieceGroup> connected_groups(const road::Roads& roads,
                                         std::span<const PieceId> pieces) {
  std::vector<std::pair<NodeId, std::size_t>> ends;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const road::Piece& piece = roads.pieces[pieces[i].index()];
    ends.emplace_back(piece.a, i);
    ends.emplace_back(piece.b, i);
  }
  std::ranges::sort(ends);
  Sets sets(pieces.size());
  for (std::size_t e = 1; e < ends.size(); ++e) {
    if (ends[e].first == ends[e - 1].first) sets.join(ends[e].second, ends[e - 1].second);
  }
  std::vector<std::size_t> group_of(pieces.size(), nobody);
  std::vector<PieceGroup> groups;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    std::size_t& group = group_of[sets.find(i)];
    if (group == nobody) group = groups.size(), groups.emplace_back();
    groups[group].push_back(pieces[i]);
  }
  return groups;
}

double length_of_group(const road::Roads& roads, std::span<const PieceId> group) {
  double sum = 0;
  for (const PieceId piece : group) sum += roads.pieces[piece.index()].length_m;
  return sum;
}

}  // namespace loopwright::mark
