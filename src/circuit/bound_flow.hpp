// The greatest flow between two nodes, and the smallest cuts on either side.
//
//   Flow f(node_count);  f.add(0, 1, 500);  f.run(0, 1, enough);  f.near_source();
//
// Rules: whole capacities, so that the answer is exact; run() starts from no flow each time.
#pragma once

#include <cstdint>
#include <vector>

namespace loopwright::circuit {

class Flow {
 public:
  explicit Flow(std::uint32_t nodes) : first_(nodes, none) {}

  std::uint32_t add(std::uint32_t from, std::uint32_t to, std::int64_t capacity);
  void set(std::uint32_t arc, std::int64_t capacity) { arcs_[arc].capacity = capacity; }

  /// The greatest flow, or `enough` when there is so much.
  std::int64_t run(std::uint32_t source, std::uint32_t sink, std::int64_t enough);

  /// After a run that found less than enough: by node, 1 for those beyond the cut nearest to the source, or
  /// nearest to the sink.
  [[nodiscard]] std::vector<std::uint8_t> beyond_source() const;
  [[nodiscard]] std::vector<std::uint8_t> before_sink() const;

 private:
  static constexpr std::uint32_t none = 0xffffffff;
  struct Arc {
    std::uint32_t to, next;
    std::int64_t capacity, left;
  };

  bool layer();
  std::int64_t push(std::uint32_t at, std::int64_t most);

  std::uint32_t source_ = 0, sink_ = 0;
  std::vector<std::uint32_t> first_, level_, at_arc_;
  std::vector<Arc> arcs_;  ///< each beside its opposite
};

}  // namespace loopwright::circuit
