// A condition alone is one clause of "yes"; so everything is asked of one conditional, whose values
// that may hold are yes, no (also the base), or both.
#include "loopwright/hours/timetable.hpp"

#include <algorithm>

namespace loopwright::hours {
namespace {

Conditional clauses_of(std::string_view text) {
  if (text.find('@') != std::string_view::npos) return read_conditional("no", text);
  return read_conditional("no", "yes @ (" + std::string(text) + ")");
}

bool is_yes(const Conditional& clauses, std::size_t bit) {
  return clauses.value(bit) == "yes";
}

Answer answer_of(const Conditional& clauses, const Possible& possible) {
  bool yes = false, no = false;
  for (std::size_t bit = 0; bit <= clauses.rows().size(); ++bit) {
    if (!possible.has(bit)) continue;
    (is_yes(clauses, bit) ? yes : no) = true;
  }
  if (yes && no) return {Tri::unknown, possible.reason, {}};
  const Reason reason = possible.reason == Reason::holiday ? Reason::holiday : Reason::stated;
  const std::int16_t holiday_days =
      reason == Reason::holiday ? possible.holiday_days : std::int16_t{0};
  return {yes ? Tri::yes : Tri::no, reason, {}, holiday_days};
}

}  // namespace

Timetable::Timetable(std::string_view text) : text_(text), clauses_(clauses_of(text)) {}

bool Timetable::readable() const {
  return std::ranges::all_of(clauses_.rows(), [](const Conditional::Row& row) {
    return std::ranges::all_of(row.condition.parts(), [](const ConditionPart& part) {
      return part.kind != PartKind::other &&
             (part.kind != PartKind::hours || part.hours.readable());
    });
  });
}

Answer Timetable::at(const Instant& at, const Setting& setting) const {
  return answer_of(clauses_, clauses_.at(setting.on_clock(at).civil(), setting));
}

Answer Timetable::through(const Instant& from, const Instant& to, const Setting& setting) const {
  return answer_of(clauses_, clauses_.through(from, to, setting));
}

std::optional<Instant> Timetable::next_change(const Instant& at_moment, const Setting& setting,
                                              int ahead_days) const {
  const Tri now = at(at_moment, setting).in_force;
  const Instant last = at_moment.plus_seconds(std::int64_t{86'400} * ahead_days);
  // The clauses may change hands without the answer changing.
  for (auto change = clauses_.next_change(at_moment, setting, {}, ahead_days);
       change && change->unix_s <= last.unix_s;
       change = clauses_.next_change(*change, setting, {}, ahead_days)) {
    if (at(*change, setting).in_force != now) return change;
  }
  return std::nullopt;
}

}  // namespace loopwright::hours
