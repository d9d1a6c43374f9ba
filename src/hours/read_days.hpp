// Reads the days of a rule: years, dates and months, weeks, weekdays and holidays.
//
// Rules: private to hours. Each at_…() tells whether such a selector begins here; each read_…()
// takes one with its list, and leaves a ',' that begins a rule. False, with the trouble kept, when
// it can't be read.
#pragma once

#include "hours/rules.hpp"
#include "hours/token_reader.hpp"

namespace loopwright::hours {

bool at_year(const TokenReader& reader);
bool read_years(TokenReader& reader, std::vector<YearRange>& years);

/// A date, a month, Easter, each with or without a year before it.
bool at_date(const TokenReader& reader);
bool read_dates(TokenReader& reader, std::vector<DateRange>& dates);

bool at_week(const TokenReader& reader);
bool read_weeks(TokenReader& reader, std::vector<WeekRange>& weeks);

bool at_day(const TokenReader& reader);
bool read_day_group(TokenReader& reader, std::vector<DayGroup>& groups);

}  // namespace loopwright::hours
