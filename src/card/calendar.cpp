// Method: libical writes what RFC 5545 asks for (escapes, folded lines, line ends). UTC needs no VTIMEZONE.
// DTSTAMP is the start too: the clock is no argument here, and the same loop gives the same bytes.
#include "loopwright/card/calendar.hpp"

#include <libical/ical.h>

#include <cstdlib>
#include <memory>

#include "card/head.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/subject_of.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::card {
namespace {

struct ComponentCloser {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};

icaltimetype utc(const Instant& at) {
  return icaltime_from_timet_with_zone(at.unix_s, 0, icaltimezone_get_utc_timezone());
}

/// When it is over: the lesson, the drive that was asked for, or of an own drive what is likely.
Instant end_of(const Lesson& lesson, const CalendarEntry& entry) {
  constexpr std::int64_t seconds_per_minute = 60;
  const auto& minutes = entry.minutes ? entry.minutes : lesson.answer.wish.minutes;
  if (minutes) return lesson.loop.start.plus_seconds(seconds_per_minute * *minutes);
  return wish::likely_end(lesson.loop, lesson.setting);
}

}  // namespace

std::string write_calendar(const Lesson& lesson, const CalendarEntry& entry) {
  const SubjectOf all(lesson);
  const Head head = head_of(all.get());
  const std::string title = entry.pupil.empty() ? head.title : entry.pupil;
  const std::string uid = lesson.roads.info().id + "-" + write_time(lesson.loop.start) + "-" +
                          std::to_string(lesson.loop.id) + "@loopwright";
  std::vector<std::string> told = head.first;
  for (const std::string* line : {&head.goal, &head.driving, &head.back_by}) told.push_back(*line);
  told.push_back(cautions_in_one(all.get().words, lesson.loop, all.get().timed));
  told.push_back(write_credit(all.get().words, lesson.roads));
  const std::unique_ptr<icalcomponent, ComponentCloser> calendar(icalcomponent_vanew(
      ICAL_VCALENDAR_COMPONENT, icalproperty_new_version("2.0"),
      icalproperty_new_prodid("-//Loopwright//EN"),
      icalcomponent_vanew(ICAL_VEVENT_COMPONENT, icalproperty_new_uid(uid.c_str()),
                          icalproperty_new_dtstamp(utc(lesson.loop.start)),
                          icalproperty_new_dtstart(utc(lesson.loop.start)),
                          icalproperty_new_dtend(utc(end_of(lesson, entry))),
                          icalproperty_new_summary((title + ": " + head.purpose).c_str()),
                          icalproperty_new_description(joined(told, "\n").c_str()), nullptr),
      nullptr));
  const std::unique_ptr<char, decltype(&std::free)> text(
      icalcomponent_as_ical_string_r(calendar.get()), &std::free);
  return text.get();
}

}  // namespace loopwright::card
