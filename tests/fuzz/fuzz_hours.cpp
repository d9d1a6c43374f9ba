// libFuzzer: any bytes as hours.
//
// 1. Reading them never fails; what can't be read says where, within the text.
// 2. Between a moment and the next look nothing changes, an answer's rule lies in the text, and
//    change, interval and minute agree with one another.
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "checked.hpp"
#include "loopwright/hours/hours.hpp"

namespace {

using namespace loopwright;
using fuzz::Ask;
using fuzz::require;
using hours::Answer;
using hours::Hours;
using hours::Setting;
using hours::Tri;

constexpr int ahead_days = 10;

void check_reading(const Hours& hours, std::string_view text) {
  require(hours.text() == text);
  require(hours.readable() || (hours.stopped_at() <= text.size() && !hours.problem().empty()));
  require(!hours.words().empty() || text.empty());
}

void check_answer(const Hours& hours, const Answer& answer) {
  require(answer.rule.from + std::size_t{answer.rule.length} <= hours.text().size());
  require(hours.readable() || answer.in_force == Tri::unknown);
}

/// Every minute until the next look has the answer of this one.
void check_look(const Hours& hours, const CivilTime& at, const Setting& setting) {
  const CivilTime next = hours.next_look(at, setting);
  require(at < next);
  const std::int64_t day = days_since_epoch(at.date);
  const bool to_midnight = next.date != at.date;
  require(!to_midnight || (days_since_epoch(next.date) == day + 1 && next.hour + next.minute == 0));
  const int last = (to_midnight ? 1440 : next.hour * 60 + next.minute) - 1;
  const Tri now = hours.at(at, setting).in_force;
  for (const int minute : {last, (last + at.hour * 60 + at.minute) / 2}) {
    require(hours.at(CivilTime{at.date, minute / 60, minute % 60, 59}, setting).in_force == now);
  }
}

/// No minute of three hours before the change has another answer; clocks may change in them.
void check_until(const Hours& hours, const Ask& ask, const std::optional<Instant>& change) {
  const Tri now = hours.at(ask.at, ask.setting).in_force;
  for (int minute = 5; minute <= 180; minute += 5) {
    const Instant later = ask.at.plus_seconds(60 * minute);
    if (change && change->unix_s <= later.unix_s) return;
    require(hours.at(later, ask.setting).in_force == now);
  }
}

void check_change(const Hours& hours, const Ask& ask) {
  const auto& [at, setting] = ask;
  const Answer now = hours.at(at, setting);
  const auto change = hours.next_change(at, setting, ahead_days);
  check_until(hours, ask, change);
  const Instant last = change ? change->plus_seconds(-1) : at.plus_seconds(3600);
  require(!change || change->unix_s > at.unix_s);
  require(!change || hours.at(*change, setting).in_force != now.in_force);
  require(hours.through(at, last, setting).in_force == now.in_force);
  require(!change || hours.through(at, *change, setting).in_force == Tri::unknown);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const Hours hours = hours::read_hours(text);
  check_reading(hours, text);
  for (const Ask& ask : fuzz::asks(text)) {
    check_answer(hours, hours.at(ask.at, ask.setting));
    check_look(hours, ask.setting.on_clock(ask.at).civil(), ask.setting);
    check_change(hours, ask);
  }
  return 0;
}
