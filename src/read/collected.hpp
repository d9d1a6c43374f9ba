// Objects of one kind as they come out of an extract, then in order of id and each id once.
//
//   Collected<mark::RawWay> ways;   ways.add(way, raw_way(way));   ways.in_order(repeated);
//
// Rules: private to read. Of objects with the same id the highest version stays, of equal versions the
// first in the file; the others are counted.
#pragma once

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <osmium/osm/object.hpp>
#include <vector>

namespace loopwright::read {

template <class T>
class Collected {
 public:
  void add(const osmium::OSMObject& source, T&& object) {
    rows_.push_back({source.id(), source.version(), std::move(object)});
  }

  void expect(std::size_t count) { rows_.reserve(count); }

  /// By id, each id once.
  void put_in_order(std::int64_t& repeated) {
    const auto before = [](const Row& a, const Row& b) {
      return a.id != b.id ? a.id < b.id : a.version > b.version;
    };
    if (!std::is_sorted(rows_.begin(), rows_.end(), before)) {
      std::stable_sort(rows_.begin(), rows_.end(), before);
    }
    const auto end = std::unique(rows_.begin(), rows_.end(),
                                 [](const Row& a, const Row& b) { return a.id == b.id; });
    repeated += std::distance(end, rows_.end());
    rows_.erase(end, rows_.end());
  }

  [[nodiscard]] const auto& rows() const { return rows_; }

  std::vector<T> in_order(std::int64_t& repeated) {
    put_in_order(repeated);
    std::vector<T> objects;
    objects.reserve(rows_.size());
    for (Row& row : rows_) objects.push_back(std::move(row.object));
    rows_ = {};
    return objects;
  }

 private:
  struct Row {
    std::int64_t id = 0;
    std::uint32_t version = 0;
    T object;
  };
  std::vector<Row> rows_;
};

}  // namespace loopwright::read
