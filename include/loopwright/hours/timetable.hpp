// When something on the road is in force, whichever way the map says it: a ban on waiting, a bus
// lane, a turn one may not take, a street shut at school times.
//
//   Timetable t("Mo-Fr 07:00-10:00");             // in force then
//   Timetable t("yes @ (Mo-Fr 07:00-10:00); no @ (PH)");   // the same, by clauses
//
// Rules: a text without '@' is a condition; with '@' clauses of yes and no, not in force when none
// holds. Other values count as yes only when they are "yes". Nothing is allocated after reading.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "loopwright/hours/condition.hpp"

namespace loopwright::hours {

class Timetable {
 public:
  explicit Timetable(std::string_view text);
  /// False when some of it can't be read: then it may answer unknown for ever.
  [[nodiscard]] bool readable() const;
  [[nodiscard]] const std::string& text() const { return text_; }
  [[nodiscard]] Answer at(const Instant& at, const Setting& setting) const;
  /// The answer for the whole closed interval; unknown, for `changes`, when it isn't one.
  [[nodiscard]] Answer through(const Instant& from, const Instant& to,
                               const Setting& setting) const;
  [[nodiscard]] std::optional<Instant> next_change(const Instant& at, const Setting& setting,
                                                   int ahead_days = 400) const;
  /// The same answer for ever: nothing of it hangs on the time.
  [[nodiscard]] bool never_changes() const { return clauses_.never_changes(); }
  /// Safe to print, whatever the text holds: "Monday to Friday, seven till ten, but not on bank holidays"
  [[nodiscard]] std::string words() const;

 private:
  std::string text_;
  Conditional clauses_;
};

}  // namespace loopwright::hours
