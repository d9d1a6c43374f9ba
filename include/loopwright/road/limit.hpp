// The speed limit of a stretch as the map gives it: the rule it follows and how we know, and what
// that comes to on the day of the lesson.
//
//   LimitLaw law(region, map_date);
//   LimitOnDay l = law.on(fact, Date{2026, 11, 28});   // 20 mph, "check"
//
// Rules: a fact is never turned into a number at import, since the law changes: in Wales a
// restricted road is 20 mph from 17 September 2023. Numbers and dates: src/rules/limits.txt.
// A number mapped on a road that is else a restricted one (lamps, houses) is passed as `restricted`
// with the number's tag as source; a plain signed 30 stays 30, in Wales with "check" when the map
// may be older than the change.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "loopwright/base/ids.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/base/region.hpp"

namespace loopwright::road {

/// The rule of law behind a limit; names of the rows in src/rules/limits.txt.
enum class LimitRule : std::uint8_t {
  unknown,          ///< nothing is known; the general rural default, only for times
  signed_value,     ///< a number on a sign, in `value`
  no_limit,         ///< maxspeed=none
  restricted,       ///< street lamps: 30, in Wales 20
  national_single,  ///< national limit, single carriageway
  national_dual,    ///< national limit, dual carriageway
  motorway,
  zone_twenty,  ///< entered through a zone sign, `value` from the sign
  zone_other,   ///< other zones (GB:zone30 …), `value`
  urban,        ///< in a town, outside Great Britain
  rural,        ///< outside towns, outside Great Britain
  rural_minor,  ///< minor roads outside towns where the law knows them (Ireland's L roads)
  walk,         ///< walking pace
};

enum class LimitConfidence : std::uint8_t {
  certain,   ///< maxspeed or maxspeed:type says so
  inferred,  ///< from lamps, class or neighbours
  check,     ///< the law or the map leaves a doubt: look for the sign
  noted,     ///< the instructor noted it
};
std::string_view name(LimitConfidence confidence);
/// False for what one has to look for the sign of: an inferred limit, or one in doubt.
constexpr bool is_sure(LimitConfidence confidence) {
  return confidence == LimitConfidence::certain || confidence == LimitConfidence::noted;
}
std::optional<LimitConfidence> parse_limit_confidence(std::string_view text);

struct LimitFact {
  LimitRule rule = LimitRule::unknown;
  LimitConfidence confidence = LimitConfidence::inferred;
  SpeedUnit unit = SpeedUnit::kmh;
  std::uint8_t reserved = 0;
  std::uint16_t value = 0;  ///< for rules that carry a number; 0 otherwise
  std::uint16_t reserved2 = 0;
  TextId source;  ///< the tag or rule that says so: "maxspeed=30 mph", "lit=yes"
};

struct LimitOnDay {
  int value = 0;  ///< 0: no limit
  SpeedUnit unit = SpeedUnit::kmh;
  LimitConfidence confidence = LimitConfidence::inferred;
  [[nodiscard]] double metres_per_second() const;  ///< no limit: 130 km/h
  friend constexpr bool operator==(const LimitOnDay& a, const LimitOnDay& b) {
    return a.value == b.value && a.unit == b.unit;
  }
};

/// The law's numbers for one region, read once from the table; evaluates facts for a date.
class LimitLaw {
 public:
  /// map_date: newest edit of the map when known (a limit mapped before a change of law becomes
  /// "check").
  LimitLaw(const Region& region, std::optional<Date> map_date);
  [[nodiscard]] LimitOnDay on(const LimitFact& fact, Date day) const;

 private:
  struct Row {
    LimitRule rule = LimitRule::unknown;
    Date since;
    int value = 0;
    SpeedUnit unit = SpeedUnit::kmh;
  };
  struct Found {
    const Row* row = nullptr;
    bool general = false;  ///< not this region's law
  };
  [[nodiscard]] Found find(LimitRule rule, Date day) const;
  [[nodiscard]] bool map_misses(Date change, Date day) const;
  [[nodiscard]] bool was_default_before_change(const LimitFact& fact, Date day) const;

  std::vector<Row> rows_;     ///< of the region
  std::vector<Row> general_;  ///< of everywhere else, in the region's unit
  std::optional<Date> map_date_;
};

}  // namespace loopwright::road
