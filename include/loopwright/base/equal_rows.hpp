// The run of rows with one key, in rows that are ordered by it.
//
//   for (const Piece& piece : equal_rows(pieces, way, &Piece::way)) …
//
// Why not std::ranges::equal_range: it gives a subrange, which clang 14 can't compile with Debian 12's
// C++ library.
#pragma once

#include <algorithm>
#include <span>

namespace loopwright {

/// Rules: rows lie in one block (a vector, a span) and ascend by key; key_of is a member or a function
/// of a row. Valid while the rows are.
template <class Rows, class Key, class KeyOf>
auto equal_rows(const Rows& rows, const Key& key, KeyOf key_of) {
  const std::span all(rows.data(), rows.size());
  const auto from = std::ranges::lower_bound(all, key, {}, key_of);
  const auto to = std::ranges::upper_bound(from, all.end(), key, {}, key_of);
  return all.subspan(static_cast<std::size_t>(from - all.begin()),
                     static_cast<std::size_t>(to - from));
}

}  // namespace loopwright
