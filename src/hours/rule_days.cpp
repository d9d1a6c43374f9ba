// 1. When only weekdays and holidays are named a week is tried, else four years (one a leap year) and
//    those that are named.
// 2. Each day with no holiday near and as a holiday alone; of a week also with holidays all round, and as
//    the only day that is none. So for bank and for school holidays.
#include "hours/rule_days.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <span>

#include "hours/day_match.hpp"
#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {
namespace {

constexpr std::size_t most_tries = 100'000;  // days times rules, some tens of milliseconds

bool names_dates(const Rule& rule) {
  const bool nth = std::ranges::any_of(rule.days, [](const DayGroup& group) {
    return std::ranges::count(group, DayItem::Kind::nth, &DayItem::kind) > 0;
  });
  return nth || !rule.years.empty() || !rule.dates.empty() || !rule.weeks.empty();
}

bool names_holidays(const Rule& rule) {
  return std::ranges::any_of(rule.days, [](const DayGroup& group) {
    return std::ranges::any_of(group, [](const DayItem& item) {
      return item.kind == DayItem::Kind::bank_holiday || item.kind == DayItem::Kind::school_holiday;
    });
  });
}

std::set<int> years_of(const Rules& rules) {
  std::set<int> years{2025, 2026, 2027, 2028};
  const auto add = [&](int year) {
    constexpr int last = 2999;
    if (year < last) years.insert({year - 1, year, year + 1});
  };
  for (const Rule& rule : rules.rules) {
    for (const YearRange& range : rule.years) add(range.from), add(range.to);
    for (const DateRange& range : rule.dates) {
      if (range.from.year) add(*range.from.year);
      if (range.to.year) add(*range.to.year);
    }
  }
  return years;
}

}  // namespace

void RuleDays::add_days(std::int64_t first, std::int64_t count, bool as_holidays) {
  // Assumption's bits of distance: bank holidays lowest, 4 is the day itself.
  constexpr std::uint32_t all = 0xff, itself = 0x10, school = 8;
  constexpr std::array<std::uint32_t, 4> ways{0, itself, all, all & ~itself};
  const std::size_t few = count > 7 ? 2 : ways.size();  // a year has days enough beside holidays
  for (std::int64_t day = first; day < first + count; ++day) {
    const int weekday = static_cast<int>(((day + 3) % 7 + 7) % 7);
    if (!as_holidays) {
      tried_.push_back({day, 0, weekday});
      continue;
    }
    for (const std::uint32_t bank : std::span(ways).first(few)) {
      for (const std::uint32_t shut : std::span(ways).first(few)) {
        tried_.push_back({day, bank | shut << school, weekday});
      }
    }
  }
}

RuleDays::RuleDays(const Rules& rules) {
  const bool dates = std::ranges::any_of(rules.rules, names_dates);
  const bool holidays = std::ranges::any_of(rules.rules, names_holidays);
  is_week_ = !dates && !holidays;
  if (!dates) {
    add_days(days_since_epoch({2026, 6, 1}), 7, holidays);
  } else {
    constexpr std::int64_t year_days = 366;
    for (const int year : years_of(rules)) {
      add_days(days_since_epoch({year, 1, 1}), year_days, holidays);
    }
  }
  if (tried_.size() * rules.rules.size() > most_tries) tried_.clear();
  const Setting nowhere;
  for (const Rule& rule : rules.rules) {
    std::vector<bool>& on = on_.emplace_back();
    std::vector<bool>& before = before_.emplace_back();
    for (const Tried& tried : tried_) {
      Assumption assumption(nowhere, tried.day, tried.holidays);
      on.push_back(speaks_of(rule, tried.day, assumption));
      before.push_back(speaks_of(rule, tried.day - 1, assumption));
    }
  }
}

bool RuleDays::share(std::size_t rule, std::size_t other) const {
  for (std::size_t day = 0; day < count(); ++day) {
    if (on(rule, day) && on(other, day)) return true;
  }
  return count() == 0;
}

bool RuleDays::within(std::size_t rule, std::size_t other) const {
  bool any = false;
  for (std::size_t day = 0; day < count(); ++day) {
    if (!on(rule, day)) continue;
    if (!on(other, day)) return false;
    any = true;
  }
  return any;
}

}  // namespace loopwright::hours
