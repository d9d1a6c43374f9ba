// A span may run into the next day, so the time of a day is held by spans of that day and of the
// day before. cut(): the part to take out is moved on to the clock of the day each span began on;
// what is left of a span after midnight becomes a span of the next day.
#include "hours/week.hpp"

#include <algorithm>

namespace loopwright::hours {
namespace {

int weekday(int day) {
  return (day + 7) % 7;
}

void keep(Week& week, int day, Span part) {
  if (part.from_minute >= part.to_minute) return;
  if (part.from_minute >= day_minutes) {
    week[weekday(day + 1)].push_back(
        {part.from_minute - day_minutes, part.to_minute - day_minutes});
  } else {
    week[weekday(day)].push_back(part);
  }
}

}  // namespace

void cut(Week& week, int day, Span out) {
  for (const int began : {day - 1, day, day + 1}) {
    const int moved = (day - began) * day_minutes;
    const Span there = {out.from_minute + moved, out.to_minute + moved};
    std::vector<Span> spans;
    spans.swap(week[weekday(began)]);
    for (const Span span : spans) {
      keep(week, began, {span.from_minute, std::min(span.to_minute, there.from_minute)});
      keep(week, began, {std::max(span.from_minute, there.to_minute), span.to_minute});
    }
  }
}

void tidy(Week& week) {
  for (std::vector<Span>& spans : week) {
    std::sort(spans.begin(), spans.end());
    std::vector<Span> joined;
    for (const Span span : spans) {
      if (joined.empty() || joined.back().to_minute < span.from_minute) {
        joined.push_back(span);
      } else {
        joined.back().to_minute = std::max(joined.back().to_minute, span.to_minute);
      }
    }
    spans = std::move(joined);
  }
}

bool covers(const Week& week, int day, int minute) {
  const auto holds = [](const std::vector<Span>& spans, int at) {
    return std::any_of(spans.begin(), spans.end(),
                       [at](Span s) { return s.from_minute <= at && at < s.to_minute; });
  };
  return holds(week[weekday(day)], minute) || holds(week[weekday(day - 1)], minute + day_minutes);
}

}  // namespace loopwright::hours
