// What a text of hours needs to know beside the time: whose bank holidays, when the schools are
// shut, where the sun stands, and when the clocks are changed.
//
//   Setting there("GB-SCT", "Europe/London", point);
//   there.bank_holiday({2026, 11, 30});   // Tri::yes, "St Andrew's Day"
//
// Rules: cheap to ask, nothing is read from disk but the system's time zones; scratch for one
// thread (it remembers the last days the sun was worked out for). Days outside the tables are unknown.
// Sources: src/rules/bank_holidays.txt; sunrise by libnova; time zones by the system's tz data.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/hours/answer.hpp"
#include "loopwright/hours/terms.hpp"

namespace loopwright::hours {

/// Minutes after midnight on the local clock of the day; civil twilight for dawn and dusk.
struct SunTimes {
  std::optional<int> dawn;  ///< empty where twilight doesn't end that night
  int sunrise = 0, sunset = 0;
  std::optional<int> dusk;  ///< may pass 24:00
};

class Setting {
 public:
  /// Nothing is known: no holidays, no terms, no sun; the clock is UTC.
  Setting() = default;
  /// region: "GB-SCT", "IE"; others have no bank holidays here. zone: IANA, empty for UTC.
  /// Throws InputError when the system has no such zone.
  Setting(std::string_view region, std::string_view zone, std::optional<Point> place,
          SchoolTerms terms = {});

  /// Yes, no, or unknown outside the tables.
  [[nodiscard]] Tri bank_holiday(Date day) const;
  /// "St Andrew's Day", "Boxing Day (substitute day)"; empty when it is none.
  [[nodiscard]] std::string_view bank_holiday_name(Date day) const;
  /// Unknown without term dates, and before the first and after the last of them.
  [[nodiscard]] Tri school_holiday(Date day) const { return terms_.holiday(day); }
  /// Empty without a place, or where the sun doesn't rise or set that day.
  [[nodiscard]] std::optional<SunTimes> sun(Date day) const;

  /// The moment as the clock on the wall shows it there: the same moment, with the zone's offset.
  [[nodiscard]] Instant on_clock(const Instant& at) const;
  /// The next moment after `at` at which the clocks are changed; empty when none is known.
  [[nodiscard]] std::optional<Instant> next_clock_change(const Instant& at) const;

  [[nodiscard]] const std::string& region() const { return region_; }

 private:
  struct SunOfDay {
    std::int64_t day = INT64_MIN;
    std::optional<SunTimes> times;
  };
  struct Tables;
  std::shared_ptr<const Tables> tables_;
  std::string region_, zone_;
  std::optional<Point> place_;
  SchoolTerms terms_;
  mutable std::array<SunOfDay, 8> sun_;
};

}  // namespace loopwright::hours
