// A finished drive worth more: part after part of it is driven anew, all else stays.
//
//   MoreWorth more(hunt);   drive = more.bettered(std::move(drive), MoreWorth::small);
//
// Rules: one thread; work is counted, so the same drive always becomes the same one. It is as good against the
// wish as before, in its window, and worth no less. Drives for wishes with nothing as "max", or too much (part_search.hpp),
// stay as they are.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <unordered_set>
#include <vector>

#include "find/part_search.hpp"
#include "find/plan.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::find {

class MoreWorth {
 public:
  /// How many passes of worth a part holds, one width after the other, and how much one part may cost.
  struct Widths {
    std::array<std::size_t, 4> passes{};
    std::size_t most_labels = 0, of_all = 0;  ///< of each search, and of all together
    /// When nothing more is gained: so many parts at most are made otherwise, even if worth less, to go on from.
    std::size_t kicks = 0;
  };
  // Ours, tried on Newport and the county. Small parts first: they put in what a thin drive lacks, and cost little;
  // wide ones find what is left once a drive is dense. `at_once` takes some hundredths of a second, `small` a fifth, `wide` one.
  static constexpr Widths at_once{{1, 2, 3, 4}, 10'000, 50'000, 0};
  static constexpr Widths small{{1, 2, 3, 4}, 50'000, 500'000, 60};
  static constexpr Widths wide{{3, 4, 6, 5}, 100'000, 2'000'000, 60};
  static constexpr Widths widest{{2, 4, 6, 8}, 200'000, 4'000'000, 60};

  explicit MoreWorth(const Hunt& hunt) : hunt_(hunt), search_(hunt) {}
  std::vector<Vertex> bettered(std::vector<Vertex> drive, const Widths& widths);

 private:
  /// A pass of worth on the drive.
  struct Counted {
    WorthyPass pass;
    std::size_t first = 0, last = 0;  ///< rows
    std::int64_t begins_ms = 0, worth = 0;
  };
  struct Driven {
    std::vector<Vertex> vertices;
    Score score;
    std::vector<Counted> passes;        ///< in driving order
    std::vector<std::int64_t> ends_ms;  ///< by row
  };
  [[nodiscard]] Driven driven(std::vector<Vertex> drive) const;
  [[nodiscard]] std::vector<Counted> counted_on(const Drive& drive) const;
  /// Passes of worth, as rows of Driven::passes, both included.
  struct Window {
    std::size_t first = 0, last = 0;
  };
  /// Rows of a drive, both included: these two stay, what lies between is looked for anew.
  struct Rows {
    std::size_t from = 0, to = 0;
  };
  [[nodiscard]] static Rows around(const Driven& drive, Window window);
  [[nodiscard]] Part part_of(const Driven& drive, Window window, Rows rows) const;
  [[nodiscard]] static std::uint64_t number_of(const Driven& drive, Rows rows,
                                               std::int64_t most_ms);
  bool change(Driven& drive, Window window, std::size_t most_labels);
  bool take_better(Driven& drive, Rows rows, const std::vector<std::vector<Vertex>>& ways) const;
  [[nodiscard]] static std::vector<Vertex> with_way(const Driven& drive, Rows rows,
                                                    std::span<const Vertex> way);
  [[nodiscard]] static bool is_as_good(const Score& now, const Score& before);
  [[nodiscard]] static bool is_better(const Score& now, const Score& before);
  std::vector<std::vector<Vertex>> ways_of(Part part, std::size_t most_labels);
  void climb(Driven& drive, const Widths& widths);
  bool kick(Driven& drive, std::size_t most_labels);

  const Hunt& hunt_;
  PartSearch search_;
  std::size_t labels_left_ = 0;
  Dice dice_{1};
  /// Parts for which nothing better was found, while one drive is bettered.
  std::unordered_set<std::uint64_t> tried_;
};

}  // namespace loopwright::find
