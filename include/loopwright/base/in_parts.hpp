// The same work on many rows, none of which hangs on another, by two threads.
//
//   in_parts(nodes.size(), [&](std::size_t first, std::size_t end) { … });
//   each_in_order(ways.size(), [&](std::size_t row) { return read(ways[row]); },
//                 [&](std::size_t row, Facts&& facts) { all.push_back(std::move(facts)); });
//
// Rules: the work only reads what both threads see, or writes what belongs to its own rows; then the result is the same
// on one thread and on two. What is thrown comes out; of two the caller's own.
// Where no thread can be begun, the caller does it all.
// Why two: the computer this is for has two cores.
#pragma once

#include <algorithm>
#include <cstddef>
#include <functional>
#include <type_traits>
#include <utility>
#include <vector>

namespace loopwright {

/// Calls work(first, end) for parts that together are the rows 0 to count, in no order.
void in_parts(std::size_t count,
              const std::function<void(std::size_t first, std::size_t end)>& work);

/// Calls take(row, work(row)) for each row, in order, on the caller's thread; work is done before, for some
/// thousand rows at a time, so that their results take little room and take may write what work reads.
template <class Work, class Take>
void each_in_order(std::size_t count, const Work& work, const Take& take) {
  using Result = std::decay_t<decltype(work(std::size_t{0}))>;
  static_assert(!std::is_same_v<Result, bool>, "bits of one word can't be written by two threads");
  constexpr std::size_t rows_at_once = 32'768;
  std::vector<Result> results(std::min(count, rows_at_once));
  for (std::size_t begin = 0; begin < count; begin += rows_at_once) {
    const std::size_t rows = std::min(count - begin, rows_at_once);
    in_parts(rows, [&](std::size_t first, std::size_t end) {
      for (std::size_t k = first; k < end; ++k) results[k] = work(begin + k);
    });
    for (std::size_t k = 0; k < rows; ++k) take(begin + k, std::move(results[k]));
  }
}

}  // namespace loopwright
