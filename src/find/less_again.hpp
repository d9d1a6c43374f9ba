// A finished drive with less road driven twice and fewer corners: what it passes stays, what lies between is
// driven elsewhere.
//
//   LessAgain less(hunt);   drive = less.bettered(std::move(drive), most_searches);
//
// Rules: one thread; searches are counted, so the same drive always becomes the same one.
#pragma once

#include <vector>

#include "find/plan.hpp"

namespace loopwright::find {

class LessAgain {
 public:
  explicit LessAgain(const Hunt& hunt);
  /// As good against the wish and worth no less; most_searches: how many ways round are looked for.
  std::vector<Vertex> bettered(std::vector<Vertex> drive, int most_searches);
  /// The same, where the drive has many corners: each is a row to be spoken.
  std::vector<Vertex> with_fewer_corners(std::vector<Vertex> drive, int most_searches);

 private:
  /// Rows of a drive, both included: the first and last stay, what lies between is looked for anew.
  struct Between {
    std::size_t first = 0, last = 0;
    friend bool operator==(const Between&, const Between&) = default;
  };
  [[nodiscard]] std::vector<std::uint8_t> wanted_rows(std::span<const Vertex> drive) const;
  struct Scored {
    std::vector<Vertex> vertices;
    Score score;
  };
  [[nodiscard]] std::vector<Between> places_to_change(std::span<const Vertex> drive) const;
  [[nodiscard]] std::vector<Between> spans_with_corners(std::span<const Vertex> drive) const;
  [[nodiscard]] Scored scored(std::vector<Vertex> drive) const;
  [[nodiscard]] std::int64_t value_at_most(std::span<const Vertex> drive) const;
  bool change_one(const std::vector<Between>& parts, Scored& drive, int& searches);
  [[nodiscard]] bool counts_twice(std::uint32_t piece) const;
  [[nodiscard]] std::int64_t part_ms(std::span<const Vertex> drive, Between part) const;
  void learn_others(std::span<const Vertex> drive, Between part);
  double again_on(std::span<const Vertex> path);
  std::vector<Vertex> way_via(Vertex via) const;
  std::vector<Vertex> elsewhere(std::span<const Vertex> drive, Between part, std::int64_t whole_ms);

  const Hunt& hunt_;
  reach::LocalSweep out_, back_;
  std::vector<std::int32_t> extra_ms_;  ///< by vertex
  std::vector<std::uint8_t> others_;    ///< by dense piece: how often the rest of the drive has it
  std::vector<std::uint32_t> seen_;     ///< by dense piece: stamps of again_on
  std::uint32_t stamp_ = 0;
};

}  // namespace loopwright::find
