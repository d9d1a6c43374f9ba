// When a drive is where, and what of the road's rules with hours it would break there.
//
//   for (const Breach& b : breaches_on(roads, loop, setting)) print(b.why);
//
// Rules: the loop is resolved. The interval of passing runs from the low arrival at a stretch to the
// high arrival at the one behind it, widened to whole minutes on the clock of the area; at a turn from
// a minute before the low arrival behind it, for the wait at its line, but not before the start. A street
// must be settled open, and a turn settled free, all through its interval; whatever can't be told breaks
// the rule.
// A Clockwork reads each text once; it is scratch for one thread, and roads must outlive it.
// Why: a learner in a school street at the wrong minute costs the instructor a penalty, so doubt
// keeps the car out. Source: Highway Code rule 238 for plates; DEVELOPERS.md (interval of passing).
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "loopwright/hours/timetable.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::lanes {

/// The time in which something is passed, its ends included.
struct Passing {
  Instant from, to;
};
/// Rows of a loop's stretches, the last included.
struct Rows {
  std::size_t first = 0, last = 0;
};

/// The least interval of whole minutes that holds the one given: widened, never narrowed.
Passing whole_minutes(const Passing& passing);
/// The interval in which a drive is on these rows.
Passing passing_of(const wish::Loop& loop, const Rows& rows, const hours::Setting& setting);
/// The interval in which it turns into this row. Rules: row > 0.
Passing turning_into(const wish::Loop& loop, std::size_t row, const hours::Setting& setting);
/// "; you pass 08:20 to 08:24"
std::string when_passing(const Passing& passing);

/// "no school term dates are given: give --terms"; empty for stated and holiday.
std::string reason_words(hours::Reason reason);

/// A limit's value as one says it: "20 mph", "the national limit"; "the usual limit" when not mapped.
std::string limit_words(std::string_view value);
/// "shut Monday to Friday, eight till nine"; of a limit "20 mph Monday to Friday …, else 30 mph".
std::string words_of(const road::Roads& roads, const road::TimedRule& rule);
/// "no right turn Monday to Friday, seven till ten"
std::string words_of(const road::Roads& roads, const road::TurnRule& rule);
/// "Fore Street", else its number, else "way 12"
std::string street_words(const road::Roads& roads, StretchId stretch);

class Clockwork {
 public:
  Clockwork(const road::Roads& roads, const hours::Setting& setting)
      : roads_(roads), setting_(setting) {}

  /// Is the car let through, all through the interval? Rules: about access or gate.
  hours::Answer open(const road::TimedRule& rule, const Passing& when);
  /// Does the turn rule bind, all through the interval? One without a condition always does.
  hours::Answer binds(const road::TurnRule& rule, const Passing& when);
  /// The next moment at which the rule's value may be another.
  std::optional<Instant> next_change(const road::TimedRule& rule, const Instant& at);

 private:
  const hours::Conditional& conditional(const road::TimedRule& rule);
  const road::Roads& roads_;
  const hours::Setting& setting_;
  std::unordered_map<std::uint64_t, hours::Conditional> conditionals_;  // by base and text
  std::unordered_map<std::uint32_t, hours::Timetable> timetables_;      // by text
};

enum class BreachOf : std::uint8_t { street, turn };

struct Breach {
  std::size_t at = 0;  ///< row of the stretch that is shut, or is turned into
  BreachOf of = BreachOf::street;
  std::uint32_t rule = 0;  ///< row of timed_rules, or of turn_rules
  std::string why;         ///< "Fore Street is shut Monday to Friday, …; you pass 08:20 to 08:24"
};

/// In driving order.
std::vector<Breach> breaches_on(const road::Roads& roads, const wish::Loop& loop,
                                const hours::Setting& setting);

/// What limits may hold on a stretch in an interval, by its rules with hours.
struct LimitWhen {
  std::vector<std::string> values;  ///< that may hold; empty: none of its limits has hours
  hours::Reason reason = hours::Reason::stated;  ///< why there are several
  std::string words;                             ///< the whole rule, with its hours
  [[nodiscard]] bool settled() const { return values.size() == 1; }
};
LimitWhen limit_when(const road::Roads& roads, StretchId stretch, const Passing& when,
                     const hours::Setting& setting);

}  // namespace loopwright::lanes
