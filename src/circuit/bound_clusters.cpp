// 1. Entries that share an exit form a place (union-find).
// 2. Distance of two places: quickest from one to the other and back, by passes' times.
// 3. Average linkage by chains of nearest neighbours (Murtagh 1983): each chain ends in two places that are
//    each other's nearest, and these are joined; the same tree as joining the nearest first.
#include "circuit/bound_clusters.hpp"

#include <algorithm>
#include <numeric>

#include "circuit/bound_times.hpp"

namespace loopwright::circuit {

namespace {

std::uint32_t root(std::vector<std::uint32_t>& parent, std::uint32_t at) {
  while (parent[at] != at) at = parent[at] = parent[parent[at]];
  return at;
}

/// By entry, number of its place.
std::vector<std::uint32_t> places(const Problem& problem, std::uint32_t& count) {
  std::vector<std::uint32_t> parent(problem.entry_count);
  std::iota(parent.begin(), parent.end(), 0U);
  std::vector<std::uint32_t> first(problem.exit_count, no_cluster);
  for (const Pass& pass : problem.passes) {
    if (first[pass.exit] == no_cluster) first[pass.exit] = pass.entry;
    parent[root(parent, pass.entry)] = root(parent, first[pass.exit]);
  }
  std::vector<std::uint32_t> number(problem.entry_count, no_cluster), result;
  for (std::uint32_t entry = 0; entry < problem.entry_count; ++entry) {
    std::uint32_t& at = number[root(parent, entry)];
    if (at == no_cluster) at = count++;
    result.push_back(at);
  }
  return result;
}

/// Places being joined: rows of a distance matrix.
class Linkage {
 public:
  Linkage(const Problem& problem, const std::vector<std::uint32_t>& place, std::uint32_t count)
      : count_(count),
        far_(static_cast<std::size_t>(count) * count, 0),
        size_(count, 0),
        cluster_(count) {
    std::vector<std::int64_t> way(far_.size(), no_way);
    const QuickestWays times(problem, 0);
    for (std::uint32_t a = 0; a < problem.entry_count; ++a)
      for (std::uint32_t b = 0; b < problem.entry_count; ++b) {
        std::int64_t& ms = way[at(place[a], place[b])];
        ms = std::min(ms, times.between(a, b));
      }
    for (std::uint32_t a = 0; a < count; ++a)
      for (std::uint32_t b = 0; b < count; ++b)
        far_[at(a, b)] = static_cast<double>(plus(way[at(a, b)], way[at(b, a)]));
    result_.all.resize(count);
    for (std::uint32_t entry = 0; entry < problem.entry_count; ++entry)
      result_.all[place[entry]].entries.push_back(entry);
    for (std::uint32_t a = 0; a < count; ++a) {
      size_[a] = 1;
      cluster_[a] = a;
    }
  }

  Clusters join_all() {
    std::vector<std::uint32_t> chain;
    for (std::uint32_t joined = 1; joined < count_;) {
      if (chain.empty()) chain.push_back(first_left());
      const std::uint32_t last = chain.back();
      const std::uint32_t before = chain.size() > 1 ? chain[chain.size() - 2] : no_cluster;
      const std::uint32_t next = nearest(last, before);
      if (next != before) {
        chain.push_back(next);
        continue;
      }
      chain.resize(chain.size() - 2);
      join(before, last);
      ++joined;
    }
    return std::move(result_);
  }

 private:
  [[nodiscard]] std::size_t at(std::uint32_t a, std::uint32_t b) const {
    return static_cast<std::size_t>(a) * count_ + b;
  }

  [[nodiscard]] std::uint32_t first_left() const {
    std::uint32_t row = 0;
    while (size_[row] == 0) ++row;
    return row;
  }

  /// Of equally near ones `before`, so that chains end.
  [[nodiscard]] std::uint32_t nearest(std::uint32_t row, std::uint32_t before) const {
    std::uint32_t best = before;
    for (std::uint32_t other = 0; other < count_; ++other) {
      if (other == row || size_[other] == 0) continue;
      if (best == no_cluster || far_[at(row, other)] < far_[at(row, best)]) best = other;
    }
    return best;
  }

  void join(std::uint32_t a, std::uint32_t b) {
    Cluster both;
    const std::vector<std::uint32_t>&x = result_.all[cluster_[a]].entries,
          &y = result_.all[cluster_[b]].entries;
    both.entries.resize(x.size() + y.size());
    std::merge(x.begin(), x.end(), y.begin(), y.end(), both.entries.begin());
    const auto row = static_cast<std::uint32_t>(result_.all.size());
    result_.all[cluster_[a]].parent = result_.all[cluster_[b]].parent = row;
    result_.all.push_back(std::move(both));
    for (std::uint32_t other = 0; other < count_; ++other)
      far_[at(a, other)] = far_[at(other, a)] =
          (size_[a] * far_[at(a, other)] + size_[b] * far_[at(b, other)]) / (size_[a] + size_[b]);
    size_[a] += size_[b];
    size_[b] = 0;
    cluster_[a] = row;
  }

  std::uint32_t count_;
  std::vector<double> far_;
  std::vector<double> size_;            ///< in places; 0: joined to another row
  std::vector<std::uint32_t> cluster_;  ///< by row
  Clusters result_;
};

}  // namespace

std::uint32_t Clusters::common(std::uint32_t a, std::uint32_t b) const {
  while (a != b) (a < b ? a : b) = all[std::min(a, b)].parent;
  return a;
}

Clusters nested(const Problem& problem) {
  std::uint32_t count = 0;
  const std::vector<std::uint32_t> place = places(problem, count);
  Clusters result = Linkage(problem, place, count).join_all();
  result.place_count = count;
  result.of_group.assign(problem.groups.size(), no_cluster);
  for (const Pass& pass : problem.passes)
    for (const std::uint32_t group : pass.groups) {
      std::uint32_t& at = result.of_group[group];
      at = at == no_cluster ? place[pass.entry] : result.common(at, place[pass.entry]);
    }
  return result;
}

}  // namespace loopwright::circuit
