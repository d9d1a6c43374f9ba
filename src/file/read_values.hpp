// Values that several objects of the loop file are made of, each with the range it may have.
//
// Rules: each throws InputError naming the member that isn't as it should be.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "file/cursor.hpp"
#include "loopwright/base/ids.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::file::values {

/// Whole numbers that every JSON reader keeps exactly (RFC 8259 section 6).
inline constexpr std::int64_t greatest_id = 9007199254740991;
inline constexpr std::size_t most_wants = most_listed;
inline constexpr int most_minutes = 24 * 60;

template <class Read>
auto or_none(const Cursor& value, Read read) -> std::optional<decltype(read(value))> {
  const auto there = value.unless_null();
  return there ? std::optional(read(*there)) : std::nullopt;
}

template <class Read>
auto list(const Cursor& value, std::size_t most, Read read) {
  std::vector<decltype(read(value))> result;
  for (const Cursor& item : value.items(most)) result.push_back(read(item));
  return result;
}

int small(const Cursor& value, int least, int most);
std::int64_t map_id(const Cursor& value);
/// A text that is one of a few.
std::string one_of(const Cursor& value, std::initializer_list<std::string_view> words);
Point point(const Cursor& value);
Date date(const Cursor& value);
Instant instant(const Cursor& value);
road::Kind kind(const Cursor& value);
road::Movement movement(const Cursor& value);
wish::Verdict verdict(const Cursor& value);
/// How often it is asked for stands under `count_key`.
wish::Want want(const Cursor& value, std::string_view count_key);

}  // namespace loopwright::file::values

namespace loopwright::file {

/// The member "wish" of a loop file.
wish::Wish read_wish(const Cursor& value);

}  // namespace loopwright::file
