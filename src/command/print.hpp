// Figures and tables as the commands print them.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "loopwright/base/ids.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/base/region.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// "12.5"
std::string fixed(double value, int decimals);

/// "54.29731,2.59812", good to about a metre.
std::string degrees(Point at);

/// "18.4 miles", "29.6 km"
std::string long_distance(double metres, SpeedUnit unit);

/// "way/123"
std::string object(const OsmObject& object);

/// "30 mph", "no limit"
std::string limit(const road::LimitOnDay& limit);

/// Rows of cells under a head line, each column as wide as it needs, the last one free.
class Table {
 public:
  explicit Table(std::vector<std::string> head) { rows_.push_back(std::move(head)); }
  void add(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }
  [[nodiscard]] bool empty() const { return rows_.size() == 1; }
  void print(std::ostream& out) const;

 private:
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace loopwright::command
