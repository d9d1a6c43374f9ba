// Reads the text of hours ("Mo-Sa 07:00-10:00,16:00-19:00; PH off") and answers whether it is in
// force: the whole opening-hours grammar.
//
//   Hours h = read_hours("Mo-Fr 07:00-10:00; PH off");
//   h.at(civil, setting).in_force == Tri::no;   h.next_change(civil, setting);   h.words();
//
// Rules: a text that can't be read is a value with a position, never a throw; it answers unknown.
// Nothing is allocated after reading. Spans are half-open: the end minute is out. Weekday rules
// hold on bank holidays too unless the text names PH: a plate with weekdays applies on a bank
// holiday unless it says otherwise (Highway Code rule 238: no days on a plate means every day).
// A rule after ';' replaces earlier ones on the days it names; ',' adds; '||' is for the time that
// no rule before it speaks of. "off" takes out its times, or the whole of its days.
// Source: OSM wiki Key:opening_hours/specification (0.7); where that is silent, DEVELOPERS.md.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "loopwright/base/instant.hpp"
#include "loopwright/hours/answer.hpp"
#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {

struct Rules;  // inside src/hours

/// Bytes of the longest text of hours, or of one condition, that is read; a longer one is unreadable.
/// Source: a tag's value has at most 255 characters (OSM API 0.6, maximum_string_length), 1,020 bytes
/// of UTF-8; sixteen times that is ours, for texts joined from several tags.
inline constexpr std::size_t longest_text = 16'384;

class Hours {
 public:
  [[nodiscard]] bool readable() const { return rules_ != nullptr; }
  /// Where reading stopped, in bytes, and what was looked for there; when not readable.
  [[nodiscard]] std::size_t stopped_at() const { return stopped_at_; }
  [[nodiscard]] std::string_view problem() const { return problem_; }
  [[nodiscard]] const std::string& text() const { return text_; }

  /// On the clock of the setting, to the minute.
  [[nodiscard]] Answer at(const CivilTime& at, const Setting& setting) const;
  [[nodiscard]] Answer at(const Instant& at, const Setting& setting) const;
  /// The answer for the whole closed interval; unknown, for `changes`, when it isn't one. Clock
  /// changes within are followed. Rules: from <= to.
  [[nodiscard]] Answer through(const Instant& from, const Instant& to,
                               const Setting& setting) const;
  /// The first minute after `at` with another yes, no or unknown; empty when none comes within
  /// `ahead_days`.
  [[nodiscard]] std::optional<Instant> next_change(const Instant& at, const Setting& setting,
                                                   int ahead_days = 400) const;
  /// The same answer for ever, whatever day, place and nation: "24/7", "off", a comment alone, and a
  /// text that can't be read. False of all else, though it may go without a change for years.
  [[nodiscard]] bool never_changes() const;
  /// The first minute after `at` at which another answer is possible: where a span, a day or a
  /// rule begins or ends. For walking along the answers; never empty.
  [[nodiscard]] CivilTime next_look(const CivilTime& at, const Setting& setting) const;
  /// "Monday to Saturday, seven till ten and four till seven"; the text itself when not readable.
  /// Safe to print, whatever the text holds.
  [[nodiscard]] std::string words() const;

 private:
  friend Hours read_hours(std::string_view text);
  std::shared_ptr<const Rules> rules_;
  std::string text_;
  std::size_t stopped_at_ = 0;
  std::string_view problem_;
};

Hours read_hours(std::string_view text);

/// "Monday" … "Sunday"
std::string_view name(Weekday day);

}  // namespace loopwright::hours
