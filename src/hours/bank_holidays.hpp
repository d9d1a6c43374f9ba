// The table of bank holidays, by region and day.
//
// Rules: private to hours.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"

namespace loopwright::hours {

struct BankHoliday {
  std::int64_t day = 0;  ///< since the epoch
  std::string_view name;
};

/// Of one region, by day; empty for a region the table doesn't know.
std::vector<BankHoliday> bank_holidays_of(std::string_view region);

/// First and last year of the table.
struct TableYears {
  int first = 0, last = 0;
};
TableYears bank_holiday_years();

}  // namespace loopwright::hours
