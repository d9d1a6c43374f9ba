// Reads the text of hours ("Mo-Sa 07:00-10:00,16:00-19:00") and answers whether it is in force.
//
//   Hours h = read_hours("Mo-Sa 16:00-19:00");
//   h.in_force(civil) == Tri::no;   h.through(from, to);   h.words();
//
// Understood here: weekdays and their ranges, time spans (also past midnight), "24/7", several
// rules with ';' (the later replaces the days it names) or ',' (adds), "off"/"closed" (with a time
// it takes just that out). Spans are half-open: the end minute is out. Weekday rules hold on public
// holidays too: a plate with weekdays applies on a bank holiday unless it says otherwise, and no
// days on a plate means every day. Anything else is a value that can't be read, with the position,
// never a throw: dates, PH and SH, open ends, sunrise, comments wait for the whole grammar.
// Source: OSM wiki Key:opening_hours/specification; Highway Code rule 238 for plates without days.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"

namespace loopwright::hours {

enum class Tri : std::uint8_t { no, yes, unknown };

/// A part of one weekday, in minutes from its midnight; `to` may pass 24:00 (up to 48:00).
struct Span {
  int from_minute = 0;
  int to_minute = 0;
  friend constexpr auto operator<=>(const Span&, const Span&) = default;
};

/// What begins on each weekday, Monday first.
using Week = std::array<std::vector<Span>, 7>;

class Hours {
 public:
  [[nodiscard]] bool readable() const { return readable_; }
  /// Where reading stopped, in bytes, when not readable.
  [[nodiscard]] std::size_t stopped_at() const { return stopped_at_; }
  [[nodiscard]] Tri in_force(const CivilTime& at) const;
  /// The answer for the whole closed interval: unknown when it changes within. Rules: from <= to.
  [[nodiscard]] Tri through(const CivilTime& from, const CivilTime& to) const;
  /// The first minute after `at` at which the answer changes, within eight days; empty when never.
  [[nodiscard]] std::optional<CivilTime> next_change(const CivilTime& at) const;
  /// "Monday to Saturday 07:00 to 10:00 and 16:00 to 19:00"; the text itself when not readable.
  [[nodiscard]] std::string words() const;

 private:
  friend Hours read_hours(std::string_view text);
  Week week_;
  std::string text_;
  bool readable_ = false;
  std::size_t stopped_at_ = 0;
};

Hours read_hours(std::string_view text);

/// "Monday" … "Sunday"
std::string_view name(Weekday day);

/// One clause of a conditional value: "1 @ (Mo-Fr 07:00-10:00)" -> value "1", condition the rest,
/// brackets taken off.
struct Clause {
  std::string value;
  std::string condition;
  friend bool operator==(const Clause&, const Clause&) = default;
};
/// Splits "<value> @ <condition>; …" at ';' outside brackets and quotes. A piece without '@'
/// belongs to the clause before it; as the first piece it is a value with an empty condition.
/// Empty when the text has no '@' at all.
/// Source: OSM wiki Conditional restrictions; the glueing survives "1 @ Mo-Fr 07:00-10:00; PH off".
std::vector<Clause> read_conditional(std::string_view text);

}  // namespace loopwright::hours
