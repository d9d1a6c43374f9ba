// Method: counts are few, so a list searched in order keeps the order in which they came up.
#include "loopwright/road/report.hpp"

#include <algorithm>

namespace loopwright::road {
namespace {

template <class Counts>
auto find_count(Counts& counts, std::string_view what) {
  return std::find_if(counts.begin(), counts.end(),
                      [&](const auto& entry) { return entry.first == what; });
}

}  // namespace

void Report::count(std::string_view what, std::int64_t more) {
  const auto found = find_count(counts_, what);
  if (found != counts_.end()) {
    found->second += more;
  } else {
    counts_.emplace_back(what, more);
  }
}

void Report::odd(OsmObject object, std::string_view what, std::string_view detail) {
  oddities_.push_back({object, std::string(what), std::string(detail)});
}

void Report::cover(std::string_view streets, std::string_view fact, double all_m, double told_m) {
  auto row = std::ranges::find_if(
      coverage_, [&](const Coverage& c) { return c.streets == streets && c.fact == fact; });
  if (row == coverage_.end()) {
    row = coverage_.insert(row, {std::string(streets), std::string(fact), 0, 0});
  }
  row->all_m += all_m;
  row->told_m += told_m;
}

std::int64_t Report::counted(std::string_view what) const {
  const auto found = find_count(counts_, what);
  return found == counts_.end() ? 0 : found->second;
}

}  // namespace loopwright::road
