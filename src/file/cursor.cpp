// Each question looks at the type first, then at the range; `fail` puts the line together: file,
// JSON pointer, what was expected, what is there (long texts, lists and objects by their kind only).
#include "file/cursor.hpp"

#include <nlohmann/json.hpp>

#include "loopwright/base/error.hpp"

namespace loopwright::file {
namespace {

constexpr std::size_t longest_quote = 40;

std::string described(const nlohmann::json& value) {
  if (value.is_array()) return "a list of " + std::to_string(value.size());
  if (value.is_object()) return "an object";
  const std::string text = value.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  return text.size() <= longest_quote ? text
                                      : "a text of " + std::to_string(text.size()) + " bytes";
}

std::string range(const std::string& least, const std::string& most) {
  return " from " + least + " to " + most;
}

}  // namespace

std::optional<Cursor> Cursor::find(std::string_view key) const {
  if (!value_->is_object()) fail("an object");
  const auto member = value_->find(key);
  if (member == value_->end()) return std::nullopt;
  return Cursor(*member, file_name_, pointer_ + "/" + std::string(key));
}

Cursor Cursor::at(std::string_view key) const {
  if (const auto found = find(key)) return *found;
  throw InputError(std::string(file_name_) + ": " + pointer_ + "/" + std::string(key) +
                   ": is missing");
}

std::optional<Cursor> Cursor::unless_null() const {
  return value_->is_null() ? std::nullopt : std::optional(*this);
}

bool Cursor::is_text() const {
  return value_->is_string();
}

std::vector<Cursor> Cursor::items(std::size_t most) const {
  if (!value_->is_array() || value_->size() > most) {
    fail("a list of at most " + std::to_string(most));
  }
  std::vector<Cursor> items;
  items.reserve(value_->size());
  for (std::size_t i = 0; i < value_->size(); ++i) {
    items.push_back(Cursor((*value_)[i], file_name_, pointer_ + "/" + std::to_string(i)));
  }
  return items;
}

std::string Cursor::text() const {
  if (!value_->is_string()) fail("a text");
  return value_->get<std::string>();
}

std::int64_t Cursor::whole(std::int64_t least, std::int64_t most) const {
  const bool fits =
      value_->is_number_unsigned()
          ? most >= 0 && value_->get<std::uint64_t>() <= static_cast<std::uint64_t>(most)
          : value_->is_number_integer() && value_->get<std::int64_t>() <= most;
  if (!fits || value_->get<std::int64_t>() < least) {
    fail("a whole number" + range(std::to_string(least), std::to_string(most)));
  }
  return value_->get<std::int64_t>();
}

double Cursor::number(double least, double most) const {
  const bool is_number = value_->is_number();
  if (!is_number || !(value_->get<double>() >= least && value_->get<double>() <= most)) {
    fail("a number" + range(nlohmann::json(least).dump(), nlohmann::json(most).dump()));
  }
  return value_->get<double>();
}

bool Cursor::yes_no() const {
  if (!value_->is_boolean()) fail("true or false");
  return value_->get<bool>();
}

void Cursor::fail(std::string_view expected) const {
  throw InputError(std::string(file_name_) + ": " + (pointer_.empty() ? "/" : pointer_) +
                   ": expected " + std::string(expected) + ", found " + described(*value_));
}

}  // namespace loopwright::file
