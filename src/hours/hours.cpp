// The face of the room for a text of hours alone: reading is in parse.cpp, what rules say of a
// minute in evaluate.cpp, the walk over an interval in walk.hpp.
#include "loopwright/hours/hours.hpp"

#include <array>
#include <cassert>

#include "hours/evaluate.hpp"
#include "hours/parse.hpp"
#include "hours/walk.hpp"

namespace loopwright::hours {
namespace {

WallMinute wall_minute(const CivilTime& at) {
  return {days_since_epoch(at.date), at.hour * 60 + at.minute};
}

/// Hours in a setting, for walking.
struct Asked {
  const Hours& hours;
  const Setting& setting;
  [[nodiscard]] Answer ask(const CivilTime& at) const { return hours.at(at, setting); }
  [[nodiscard]] CivilTime next_look(const CivilTime& at) const {
    return hours.next_look(at, setting);
  }
};

}  // namespace

std::string_view words(Reason reason) {
  constexpr std::array<std::string_view, reason_count> texts{
      "",
      "",
      "the text can't be read",
      "the text itself says unknown",
      "the text gives words instead of hours",
      "it has a beginning, but no end is given",
      "bank holidays of that day aren't known here",
      "school holidays matter and no terms given reach that day",
      "sunrise and sunset there can't be told",
      "it hangs on what is seen on the day",
      "it hangs on who drives, or what for",
      "it hangs on a property of the vehicle",
      "an earlier part of the text names that time, but a later part replaces it",
      "it changes in that time",
      "the clocks are changed in that time"};
  return texts[static_cast<std::size_t>(reason)];
}

Hours read_hours(std::string_view text) {
  Hours hours;
  hours.text_ = text;
  if (text.size() > longest_text) {
    hours.stopped_at_ = longest_text;
    hours.problem_ = "the end of a text of at most 16384 bytes";
    return hours;
  }
  Parsed parsed = parse(hours.text_);
  if (parsed.rules) {
    hours.rules_ = std::make_shared<const Rules>(std::move(*parsed.rules));
  } else {
    hours.stopped_at_ = parsed.trouble->at;
    hours.problem_ = parsed.trouble->wanted;
  }
  return hours;
}

Answer Hours::at(const CivilTime& at, const Setting& setting) const {
  if (!rules_) return {Tri::unknown, Reason::unreadable, {}};
  return answer_at(*rules_, wall_minute(at), setting);
}

Answer Hours::at(const Instant& at_moment, const Setting& setting) const {
  return at(setting.on_clock(at_moment).civil(), setting);
}

Answer Hours::through(const Instant& from, const Instant& to, const Setting& setting) const {
  assert(from.unix_s <= to.unix_s);
  std::optional<Answer> all;
  along(Asked{*this, setting}, from, to, setting, [&](const Answer& answer, const Instant&) {
    if (all && all->in_force != answer.in_force) {
      all = {Tri::unknown, Reason::changes, answer.rule};
      return false;
    }
    if (!all) all = answer;
    all->replaced = all->replaced || answer.replaced;
    return true;
  });
  return *all;
}

std::optional<Instant> Hours::next_change(const Instant& at_moment, const Setting& setting,
                                          int ahead_days) const {
  if (!rules_) return std::nullopt;
  const Tri now = at(at_moment, setting).in_force;
  return first_moment(Asked{*this, setting}, at_moment, setting, ahead_days,
                      [now](const Answer& answer) { return answer.in_force != now; });
}

bool Hours::never_changes() const {
  return !rules_ || is_constant(*rules_);
}

CivilTime Hours::next_look(const CivilTime& at, const Setting& setting) const {
  const WallMinute here = wall_minute(at);
  const WallMinute next =
      rules_ ? hours::next_look(*rules_, here, setting) : WallMinute{here.day + 1, 0};
  return {date_from_days(next.day), next.minute / 60, next.minute % 60, 0};
}

}  // namespace loopwright::hours
