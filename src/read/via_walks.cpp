// 1. Start with each stretch of `from`, in both directions.
// 2. At its end, step on to the first via way, in either direction the way offers.
// 3. After each stretch: go on along the same way in the same direction, or change to the next
//    way that leaves here; the last change, to `to`, completes a walk.
// 4. A walk never has more stretches of one way than the way has (closed ways would go round).
// Ways have few pieces, so trying all is cheap; of those for which it isn't nothing is told.
#include "via_walks.hpp"

#include <algorithm>

namespace loopwright::read {
namespace {

class Walker {
 public:
  Walker(const road::Roads& roads, std::vector<std::int64_t> ways)
      : roads_(roads), ways_(std::move(ways)) {}

  /// Nothing when there are too many.
  std::optional<std::vector<StretchPath>> walks() {
    for (const road::Piece& piece : roads_.pieces_of_way(ways_[0])) {
      for (const bool against : {false, true}) {
        path_ = {StretchId(roads_.id_of(piece), against)};
        change_way(1);
      }
    }
    if (steps_ > most_steps) return std::nullopt;
    return std::move(found_);
  }

 private:
  // Ours: real restrictions take some dozens of steps, and are some stretches long.
  static constexpr int most_steps = 100'000;
  static constexpr std::size_t longest_path = 1000;

  /// One more step was made; once it is true it stays so.
  bool is_too_much() {
    if (path_.size() >= longest_path) steps_ = most_steps;
    return ++steps_ > most_steps;
  }

  /// Tries each stretch of the way-th way that leaves the end of the path.
  void change_way(std::size_t way) {
    for (const StretchId next :
         stretches_leaving(roads_, ways_[way], roads_.to_node(path_.back()))) {
      if (next == path_.back().back()) continue;
      if (is_too_much()) return;
      path_.push_back(next);
      if (way + 1 == ways_.size()) {
        found_.push_back(path_);
      } else {
        follow(way, roads_.pieces_of_way(ways_[way]).size());
      }
      path_.pop_back();
    }
  }

  /// The path's last stretch is on the way-th way: change here, or go on along it.
  void follow(std::size_t way, std::size_t pieces_left) {
    change_way(way + 1);
    if (pieces_left <= 1) return;
    const StretchId last = path_.back();
    for (const StretchId next : stretches_leaving(roads_, ways_[way], roads_.to_node(last))) {
      if (next == last.back() || next.against() != last.against()) continue;
      if (is_too_much()) return;
      path_.push_back(next);
      follow(way, pieces_left - 1);
      path_.pop_back();
    }
  }

  const road::Roads& roads_;
  std::vector<std::int64_t> ways_;
  StretchPath path_;
  std::vector<StretchPath> found_;
  int steps_ = 0;
};

std::optional<std::vector<StretchPath>> walks_over(const road::Roads& roads,
                                                   std::vector<std::int64_t> ways) {
  auto found = Walker(roads, std::move(ways)).walks();
  if (!found || found->size() <= 1) return found;
  std::vector<StretchPath> driven;
  std::ranges::copy_if(*found, std::back_inserter(driven), [&](const StretchPath& path) {
    return std::ranges::all_of(path, [&](StretchId s) { return roads.drivable(s); });
  });
  return driven.empty() ? found : driven;
}

}  // namespace

std::vector<StretchId> stretches_leaving(const road::Roads& roads, std::int64_t way, NodeId node) {
  std::vector<StretchId> leaving;
  for (const StretchId stretch : roads.leaving(node)) {
    if (roads.piece(stretch).way == way) leaving.push_back(stretch);
  }
  return leaving;
}

std::optional<std::vector<StretchPath>> via_walks(const road::Roads& roads, std::int64_t from,
                                                  std::span<const std::int64_t> via,
                                                  std::int64_t to) {
  std::vector<std::int64_t> ways{from};
  ways.insert(ways.end(), via.begin(), via.end());
  ways.push_back(to);
  auto found = walks_over(roads, ways);
  if (!found || !found->empty() || via.size() < 2) return found;
  std::reverse(ways.begin() + 1, ways.end() - 1);
  return walks_over(roads, ways);
}

}  // namespace loopwright::read
