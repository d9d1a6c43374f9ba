#include "command/print.hpp"

#include <algorithm>
#include <iomanip>
#include <ostream>
#include <sstream>
#include "loopwright/base/object_text.hpp"

namespace loopwright::command {
namespace {

constexpr double metres_a_mile = 1609.344;

/// Characters of a UTF-8 text, as columns count them.
std::size_t width_of(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U; }));
}

}  // namespace

std::string fixed(double value, int decimals) {
  std::ostringstream out;
  out << std::fixed << std::setprecision(decimals) << value;
  return out.str();
}

std::string degrees(Point at) {
  return fixed(at.lat(), 5) + "," + fixed(at.lon(), 5);
}

std::string long_distance(double metres, SpeedUnit unit) {
  if (unit == SpeedUnit::mph) return fixed(metres / metres_a_mile, 1) + " miles";
  return fixed(metres / 1000, 1) + " km";
}

std::string object(const OsmObject& object) {
  return text_of(object);
}

std::string limit(const road::LimitOnDay& limit) {
  if (limit.value == 0) return "no limit";
  return std::to_string(limit.value) + " " + std::string(name(limit.unit));
}

void Table::print(std::ostream& out) const {
  std::vector<std::size_t> widths;
  for (const auto& row : rows_) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t c = 0; c < row.size(); ++c) widths[c] = std::max(widths[c], width_of(row[c]));
  }
  for (const auto& row : rows_) {
    for (std::size_t c = 0; c < row.size(); ++c) {
      out << row[c];
      if (c + 1 < row.size()) out << std::string(widths[c] - width_of(row[c]) + 2, ' ');
    }
    out << '\n';
  }
}

}  // namespace loopwright::command
