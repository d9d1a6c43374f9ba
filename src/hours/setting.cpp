// 1. Bank holidays are picked out of the table once, for the region.
// 2. The zone is looked up once; offsets by the date library over the system's zone files.
// 3. Working out the sun of a day takes as long as a thousand answers. So that of the last few days
//    asked for is remembered, since a text asks for the same day again and again; and that of some
//    hundred days, for who asks all over a year. Its moments become minutes on the clock of the day,
//    rounded to the nearest.
#include "loopwright/hours/setting.hpp"

#include <date/tz.h>

#include <algorithm>

#include "hours/bank_holidays.hpp"
#include "hours/sun.hpp"
#include "hours/sun_kept.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::hours {

/// What is looked up once.
struct Setting::Tables {
  std::vector<BankHoliday> holidays;
  TableYears years;
  const date::time_zone* zone = nullptr;
  std::unique_ptr<SunKept> sun;  ///< with a place only
};

namespace {

const date::time_zone* located(std::string_view zone) {
  if (zone.empty()) return nullptr;
  try {
    return date::locate_zone(zone);
  } catch (const std::runtime_error&) {
    throw InputError("the system has no time zone '" + std::string(zone) + "'; install tzdata");
  }
}

date::sys_info info_at(const date::time_zone& zone, std::int64_t unix_s) {
  return zone.get_info(date::sys_seconds(std::chrono::seconds(unix_s)));
}

const BankHoliday* find(const std::vector<BankHoliday>& holidays, std::int64_t day) {
  const auto found = std::ranges::lower_bound(holidays, day, {}, &BankHoliday::day);
  return found != holidays.end() && found->day == day ? &*found : nullptr;
}

/// Empty where the sun doesn't rise or set that day.
std::optional<SunTimes> times_on(std::int64_t day, std::int32_t offset_s, Point place) {
  const auto moments = sun_on(date_from_days(day), offset_s, place);
  if (!moments) return std::nullopt;
  const auto minute = [&](std::int64_t unix_s) {
    return static_cast<int>((unix_s + offset_s - day * 86'400 + 30) / 60);
  };
  const auto twilight = [&](const std::optional<std::int64_t>& unix_s) {
    return unix_s ? std::optional(minute(*unix_s)) : std::nullopt;
  };
  return SunTimes{twilight(moments->dawn), minute(moments->sunrise), minute(moments->sunset),
                  twilight(moments->dusk)};
}

}  // namespace

Setting::Setting(std::string_view region, std::string_view zone, std::optional<Point> place,
                 SchoolTerms terms)
    : region_(region), zone_(zone), place_(place), terms_(std::move(terms)) {
  Tables tables;
  tables.holidays = bank_holidays_of(region);
  tables.years = bank_holiday_years();
  tables.zone = located(zone);
  if (place) tables.sun = std::make_unique<SunKept>();
  tables_ = std::make_shared<const Tables>(std::move(tables));
}

Tri Setting::bank_holiday(Date day) const {
  const bool in_table = tables_ && !tables_->holidays.empty() && tables_->years.first <= day.year &&
                        day.year <= tables_->years.last;
  if (!in_table) return Tri::unknown;
  return find(tables_->holidays, days_since_epoch(day)) != nullptr ? Tri::yes : Tri::no;
}

std::string_view Setting::bank_holiday_name(Date day) const {
  const BankHoliday* holiday = tables_ ? find(tables_->holidays, days_since_epoch(day)) : nullptr;
  return holiday != nullptr ? holiday->name : std::string_view();
}

std::optional<SunTimes> Setting::sun(Date day) const {
  if (!place_ || !tables_) return std::nullopt;
  const std::int64_t number = days_since_epoch(day);
  SunOfDay& last = sun_[static_cast<std::size_t>((number % 8 + 8) % 8)];
  if (last.day == number) return last.times;
  auto kept = tables_->sun->of(number);
  if (!kept) {
    // Noon has the offset that holds from the small hours on, when clocks are changed that night.
    const std::int32_t offset_s = on_clock({number * 86'400 + 43'200, 0}).offset_s;
    kept = times_on(number, offset_s, *place_);
    tables_->sun->keep(number, *kept);
  }
  last = {number, *kept};
  return last.times;
}

Instant Setting::on_clock(const Instant& at) const {
  if (!tables_ || tables_->zone == nullptr) return {at.unix_s, 0};
  return {at.unix_s, static_cast<std::int32_t>(info_at(*tables_->zone, at.unix_s).offset.count())};
}

std::optional<Instant> Setting::next_clock_change(const Instant& at) const {
  if (!tables_ || tables_->zone == nullptr) return std::nullopt;
  const date::sys_info info = info_at(*tables_->zone, at.unix_s);
  const std::int64_t end_s = info.end.time_since_epoch().count();
  constexpr std::int64_t far_s =
      4'102'444'800;  // 2100: zones without changes end in the year 32767
  if (end_s <= at.unix_s || end_s > far_s) return std::nullopt;
  return on_clock({end_s, 0});
}

}  // namespace loopwright::hours
