// Values that several objects of the loop file are made of, as JSON.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string_view>

#include "loopwright/wish/wish.hpp"

namespace loopwright::file::values {

using Json = nlohmann::ordered_json;

template <class Value, class Write>
Json or_null(const std::optional<Value>& value, Write write) {
  return value ? Json(write(*value)) : Json(nullptr);
}

template <class Rows, class Write>
Json list(const Rows& rows, Write write) {
  Json result = Json::array();
  for (const auto& row : rows) result.push_back(write(row));
  return result;
}

/// A text that may be absent: null when empty.
Json text_or_null(std::string_view text);
Json point(const Point& at);
/// How often a want is asked for stands under another name in the wish than in what was met.
Json want(const wish::Want& want, const char* count_key);

}  // namespace loopwright::file::values

namespace loopwright::file {

/// The member "wish" of a loop file.
values::Json write_wish(const wish::Wish& wish);

}  // namespace loopwright::file
