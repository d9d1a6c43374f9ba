// Method: plain scans over the bytes; numbers by std::from_chars, which never looks at the locale.
#include "loopwright/base/text.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace loopwright {
namespace {

template <class Number>
std::optional<Number> read_whole(std::string_view text) {
  Number number{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return number;
}

}  // namespace

std::string_view trim(std::string_view text) {
  constexpr std::string_view blank = " \t\r\n";
  const auto first = text.find_first_not_of(blank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

std::vector<std::string_view> split(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(separator, at), text.size());
    parts.push_back(trim(text.substr(at, end - at)));
    at = end + 1;
  }
  return parts;
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

std::optional<int> read_int(std::string_view text) {
  return read_whole<int>(text);
}

std::optional<std::int64_t> read_int64(std::string_view text) {
  return read_whole<std::int64_t>(text);
}

std::optional<double> read_number(std::string_view text) {
  const std::optional<double> number = read_whole<double>(text);
  return number && std::isfinite(*number) ? number : std::nullopt;
}

}  // namespace loopwright
