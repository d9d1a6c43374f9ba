// What of a loop lies along the road, read from JSON: its stretches, its places to pull up, its ways home.
//
// Rules: each throws InputError naming the member that isn't as it should be; what points at a stretch, a
// pass or a place points at one the loop has.
#pragma once

#include "file/read_values.hpp"

namespace loopwright::file::values {

inline constexpr double greatest_seconds = 1e6;  ///< eleven days
inline constexpr std::size_t most_stretches = 100'000;
inline constexpr std::size_t most_passes = 100'000;

/// The number of one of so many rows.
std::size_t row_of(const Cursor& value, std::size_t rows);
double seconds(const Cursor& value);
double metres(const Cursor& value);
wish::Range range(const Cursor& value);
wish::LoopStretch stretch(const Cursor& value);
/// Members "pull_ups" and "stops_after" of a loop. Rules: its stretches and passes are read.
void read_pull_ups(const Cursor& value, wish::Loop& loop);
/// Member "ways_home". Rules: its stretches are read.
void read_ways_home(const Cursor& value, wish::Loop& loop);
/// Member "independent". Rules: its stretches are read.
void read_independent(const Cursor& value, wish::Loop& loop);

}  // namespace loopwright::file::values
