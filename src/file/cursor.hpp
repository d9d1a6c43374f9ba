// One value of a JSON text, and where it stands in it; every question about it names what was
// expected when the answer isn't that.
//
//   const Cursor way = stretch.at("way");   way.whole(1, 9);
//   // loops.json: /loops/0/stretches/3/way: expected a whole number from 1 to 9, found "x"
//
// Rules: throws InputError. The JSON value and the file's name must outlive the cursor.
#pragma once

#include <cstdint>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::file {

class Cursor {
 public:
  Cursor(const nlohmann::json& value, std::string_view file_name)
      : value_(&value), file_name_(file_name) {}

  /// The member with this key. Rules: throws when it is missing, or this is no object.
  [[nodiscard]] Cursor at(std::string_view key) const;
  /// The same, empty when it is missing: for what later versions of the file added.
  [[nodiscard]] std::optional<Cursor> find(std::string_view key) const;
  /// Empty when it is null.
  [[nodiscard]] std::optional<Cursor> unless_null() const;

  [[nodiscard]] bool is_text() const;
  [[nodiscard]] std::vector<Cursor> items(std::size_t most) const;
  [[nodiscard]] std::string text() const;
  [[nodiscard]] std::int64_t whole(std::int64_t least, std::int64_t most) const;
  [[nodiscard]] double number(double least, double most) const;
  [[nodiscard]] bool yes_no() const;

  /// A text that `parse` makes a value of; `expected` says which texts those are.
  template <class Parse>
  [[nodiscard]] auto word(Parse parse, std::string_view expected) const {
    const auto parsed = parse(text());
    if (!parsed) fail(expected);
    return *parsed;
  }

  [[noreturn]] void fail(std::string_view expected) const;

 private:
  Cursor(const nlohmann::json& value, std::string_view file_name, std::string pointer)
      : value_(&value), file_name_(file_name), pointer_(std::move(pointer)) {}

  const nlohmann::json* value_;
  std::string_view file_name_;
  std::string pointer_;  ///< RFC 6901; none of our keys has a character to escape
};

}  // namespace loopwright::file
