// Parts of a lesson: their words, and what they mean for the search, the proof and the card alike.
//
//   wish.parts.push_back(read_part("20 quiet: turn-off:left=3, emerge:left=2"));
//   if (begins_in(pass, rows_of(loop.parts[1]))) …
//
// Rules: of the wish and the loop alone. A pass is of the part in which it begins: each is of one part.
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/stops.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

inline constexpr int least_part_minutes = 3;
inline constexpr std::size_t most_parts = 12;

/// Reads "20", "20 quiet", "30 busier hardest 3: roundabout:right=3, signals=max": minutes, then which roads,
/// how hard at most, and behind a colon what is wanted. Throws UsageError.
Part read_part(std::string_view text);
/// The same text again, "20 quiet: turn-off:left=3, emerge:left=2".
std::string write_part(const Part& part);

/// "any", "quiet", "busier"
std::string_view name(RoadsAllowed roads);
std::optional<RoadsAllowed> parse_roads(std::string_view text);

/// The roads a part keeps to: a piece with these flags (road::piece_flag) is one of them.
constexpr bool allows(RoadsAllowed roads, std::uint32_t piece_flags) {
  const bool quiet = (piece_flags & road::piece_flag::quiet) != 0;
  return roads == RoadsAllowed::any || quiet == (roads == RoadsAllowed::quiet);
}

/// The lesson is put together from drives of its own: it has parts, a ramp, or the instructor drives some of it.
inline bool is_in_parts(const Wish& wish) {
  return !wish.parts.empty() || wish.easy_first || wish.drive_out || wish.drive_back;
}

/// Everything that is wanted, that of the parts in their order.
std::vector<Want> all_wants(const Wish& wish);

/// Rows of a loop, both included.
struct RowSpan {
  std::size_t first = 0, last = std::numeric_limits<std::size_t>::max();
  friend bool operator==(const RowSpan&, const RowSpan&) = default;
};
/// Those the learner drives.
inline RowSpan practice_of(const Loop& loop) {
  if (loop.practice) return {(*loop.practice)[0], (*loop.practice)[1]};
  return {0, loop.stretches.empty() ? 0 : loop.stretches.size() - 1};
}
inline RowSpan rows_of(const LoopPart& part) {
  return {part.first, part.last};
}

/// All of the pass is driven on these rows, the entry of a junction included.
inline bool lies_in(const Pass& pass, RowSpan rows) {
  return pass.first >= rows.first && pass.last <= rows.last;
}
inline bool begins_in(const Pass& pass, RowSpan rows) {
  return begin_row(pass) >= rows.first && begin_row(pass) <= rows.last;
}
/// Some of it lies on these rows; the entry of a junction alone is no part of it.
inline bool touches(const Pass& pass, RowSpan rows) {
  return begin_row(pass) <= rows.last && pass.last >= rows.first;
}

/// Likely seconds from the start to the beginning of a row; one beyond the last: to the end of the drive.
inline double begins_s(const Loop& loop, std::size_t row) {
  return row < loop.stretches.size() ? loop.stretches[row].arrive_s.likely
                                     : loop.seconds.likely + loop.stop_seconds;
}
/// What the drive takes on some rows, manoeuvres counted but no planned stops.
double driven_s(const Loop& loop, RowSpan rows);

/// How far a part may be from its minutes: so many seconds, whichever of the two is more.
struct PartLeeway {
  double share = 0;  ///< of its minutes
  double least_s = 0;
  [[nodiscard]] double of(int minutes) const { return std::max(least_s, share * 60 * minutes); }
};

/// The ramp: nothing harder than `early` begins in the first share of the practice, and nothing harder than
/// `late` ends in its last.
struct Ramp {
  double first_share = 0, last_share = 0;
  int early = 5, late = 5;
};
/// The passes that are too hard for where they are, as indices into loop.passes.
std::vector<std::size_t> off_ramp(const Loop& loop, const Ramp& ramp);

/// How the shortfall of a lesson begins that couldn't be kept easy at its beginning or its end.
inline constexpr std::string_view not_easy = "not easy ";

}  // namespace loopwright::wish
