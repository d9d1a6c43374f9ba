// The surroundings of test centres, which a mock test keeps off at the hours of tests: said once, kept in the book.
//
//   keep_centre(book, {"Stavely", "54.30,2.60;54.31,2.60;54.31,2.62", "Mo-Fr 08:00-16:30", day});
//   for (const Centre& one : centres_on(centres(book), lesson_day)) keep_off(one.outline, one.hours);
//
// Rules: all of it is the instructor's word; no centre and no route of a test is known to the program. They are of no pupil,
// and stay when one is erased. Capitals and small letters of a name are the same. In a school's book mocks of all instructors keep
// off them; who kept one under that name first, and the office, change it and take it out: the database holds others to it.
// Why the day: hours of tests change, and a lesson is planned by those of its own day.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/book.hpp"

namespace loopwright::book {

struct Centre {
  std::string name;
  std::string outline;       ///< corners, LAT,LON;LAT,LON;LAT,LON, three or more
  std::string hours;         ///< of tests, as opening hours are written
  Date since;                ///< the first day on which both are so
  std::string kept_by = {};  ///< a login, of a school's book; not written
  friend bool operator==(const Centre&, const Centre&) = default;
};

/// All that are kept, by name, the earlier day first.
std::vector<Centre> centres(const Book& book);
/// Writes one down; it takes the place of what is kept by that name since that day. Throws InputError when another keeps it.
void keep_centre(Book& book, const Centre& centre);
/// How many lines of that name were taken out. Throws InputError when another keeps it; nothing is taken out then.
int drop_centre(Book& book, std::string_view name);

/// Of each name what holds on a day; nothing of one that begins later.
std::vector<Centre> centres_on(std::span<const Centre> all, Date day);

}  // namespace loopwright::book
