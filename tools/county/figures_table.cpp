// A figure a line: its name, its value on either map, how many times A's it is of B's, and a mark
// when that is beyond a factor of two. The reason, if there is one, stands under the line.
#include <algorithm>
#include <array>
#include <cstdio>
#include <ostream>

#include "county/figures.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

constexpr double factor = 2;
constexpr int name_width = 33, cell_width = 16;

std::string number(double value, int decimals) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
  return text.data();
}

std::string cell(const Figure& figure) {
  std::string text = number(figure.value, figure.decimals);
  if (figure.count) text += " (" + std::to_string(*figure.count) + ")";
  return text;
}

std::string padded_left(std::string text, int width) {
  const auto wanted = static_cast<std::size_t>(width);
  return text.size() < wanted ? std::string(wanted - text.size(), ' ') + text : text;
}

std::string padded(std::string text, int width) {
  text.resize(std::max(text.size(), static_cast<std::size_t>(width)), ' ');
  return text;
}

std::string ratio(const Figure& a, const Figure& b) {
  if (b.value == 0) return a.value == 0 ? "-" : "none in B";
  return number(a.value / b.value, 2);
}

/// Sizes of the maps aren't meant to be alike.
bool is_size(const Figure& figure) {
  return figure.name.starts_with("km of ");
}

}  // namespace

bool alike(const Figure& a, const Figure& b) {
  const double least = std::min(a.value, b.value), most = std::max(a.value, b.value);
  return most <= factor * least;
}

Reasons read_reasons(std::string_view text) {
  Reasons reasons;
  std::size_t number = 0;
  for (const std::string_view line : split(text, '\n')) {
    ++number;
    if (line.empty() || line.front() == '#') continue;
    const std::vector<std::string_view> cells = split(line, '|');
    if (cells.size() != 2 || cells[0].empty() || cells[1].empty()) {
      throw InputError("line " + std::to_string(number) +
                       ": write a reason as \"figure | reason\"");
    }
    reasons[std::string(cells[0])] = std::string(cells[1]);
  }
  return reasons;
}

std::size_t print_comparison(std::ostream& out, const std::vector<Figure>& a,
                             const std::vector<Figure>& b, const Reasons& reasons) {
  out << padded("", name_width) << padded_left("A", cell_width) << padded_left("B", cell_width)
      << padded_left("A/B", 11) << '\n';
  std::size_t unexplained = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const bool beyond = !is_size(a[i]) && !alike(a[i], b[i]);
    out << padded(a[i].name, name_width) << padded_left(cell(a[i]), cell_width)
        << padded_left(cell(b[i]), cell_width)
        << padded_left(is_size(a[i]) ? "" : ratio(a[i], b[i]), 11) << (beyond ? " !" : "") << '\n';
    if (!beyond) continue;
    const auto reason = reasons.find(a[i].name);
    if (reason == reasons.end()) {
      ++unexplained;
    } else {
      out << "    because " << reason->second << '\n';
    }
  }
  return unexplained;
}

}  // namespace loopwright::county
