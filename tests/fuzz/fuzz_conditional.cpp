// libFuzzer: any bytes as a conditional value, as one condition and as a timetable.
//
// 1. Reading never fails, whatever the text.
// 2. What may hold is never nothing; the values of an interval are those of its moments; the answers
//    of a timetable follow from its clauses.
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "checked.hpp"
#include "loopwright/hours/timetable.hpp"

namespace {

using namespace loopwright;
using fuzz::require;
using hours::Conditional;
using hours::ConditionPart;
using hours::Possible;
using hours::Setting;
using hours::Timetable;
using hours::Tri;

constexpr int ahead_days = 10;

/// Some things hold, some don't, and of some nothing is known.
class Somehow : public hours::Circumstances {
 public:
  [[nodiscard]] Tri holds(const ConditionPart& part) const override {
    return static_cast<Tri>(part.text.size() % 3);
  }
};

void check_parts(std::string_view text) {
  for (const ConditionPart& part : hours::parts_of_condition(text)) {
    require(part.text.size() <= text.size());
    require(part.kind != hours::PartKind::property || !part.relation.empty());
  }
  require(hours::Condition(text).text().size() <= text.size());
}

void check_possible(const Conditional& conditional, const Possible& possible) {
  require(possible.bits != 0 && possible.bits >> (conditional.rows().size() + 1) == 0);
}

/// No minute of three hours before the change has other values; clocks may change in them.
void check_until(const Conditional& conditional, const fuzz::Ask& ask, std::uint64_t now,
                 const std::optional<Instant>& change) {
  for (int minute = 5; minute <= 180; minute += 5) {
    const Instant later = ask.setting.on_clock(ask.at.plus_seconds(60 * minute));
    if (change && change->unix_s <= later.unix_s) return;
    require(conditional.at(later.civil(), ask.setting, Somehow()).bits == now);
  }
}

void check_conditional(const Conditional& conditional, const Instant& at, const Setting& setting) {
  const Somehow about;
  const Possible now = conditional.at(setting.on_clock(at).civil(), setting, about);
  check_possible(conditional, now);
  const auto change = conditional.next_change(at, setting, about, ahead_days);
  require(!change || change->unix_s > at.unix_s);
  check_until(conditional, {at, setting}, now.bits, change);
  const Instant last = change ? change->plus_seconds(-1) : at.plus_seconds(3600);
  require(conditional.through(at, last, setting, about).bits == now.bits);
  if (!change) return;
  const Possible then = conditional.at(setting.on_clock(*change).civil(), setting, about);
  require(then.bits != now.bits);
  require(conditional.through(at, *change, setting, about).bits == (now.bits | then.bits));
}

void check_timetable(const Timetable& timetable, const Instant& at, const Setting& setting) {
  const Tri now = timetable.at(at, setting).in_force;
  const auto change = timetable.next_change(at, setting, ahead_days);
  const Instant last = change ? change->plus_seconds(-1) : at.plus_seconds(3600);
  require(timetable.through(at, last, setting).in_force == now);
  require(!change || timetable.at(*change, setting).in_force != now);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  check_parts(text);
  const Conditional conditional = hours::read_conditional("base", text);
  const Timetable timetable(text);
  require(timetable.text() == text && !timetable.words().empty());
  for (const auto& [at, setting] : fuzz::asks(text)) {
    check_conditional(conditional, at, setting);
    check_timetable(timetable, at, setting);
  }
  return 0;
}
