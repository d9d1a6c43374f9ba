// What the hours room answers: yes, no, or "nobody can tell from the map", and why.
//
//   Answer a = hours.at(civil, setting);   if (a.in_force == Tri::unknown) say(words(a.reason));
//
// Rules: unknown is never turned into yes or no here; whoever asks decides what is safe.
// Why: a text may hang on lights that flash, on school terms nobody gave us, or on a comment. Each
// has its own reason, since the instructor does something else about each.
#pragma once

#include <cstdint>
#include <string_view>

namespace loopwright::hours {

enum class Tri : std::uint8_t { no, yes, unknown };

enum class Reason : std::uint8_t {
  stated,        ///< the text settles it
  holiday,       ///< it does, and the day being a bank holiday made the difference
  unreadable,    ///< the text can't be read
  said_unknown,  ///< the text itself says unknown
  comment,       ///< the text gives words instead of hours: "by arrangement"
  open_end,      ///< begins at a time, its end isn't given: 07:00+
  no_holidays,   ///< bank holidays of that day aren't known here
  no_terms,      ///< school holidays of that day aren't known
  no_sun,        ///< sunrise or sunset can't be told: no place, or none that day
  road_state,    ///< hangs on something seen on the day: flashing, wet, snow
  user,          ///< hangs on who drives, or what for
  property,      ///< hangs on a property of the vehicle that we don't know
  replaced,      ///< not in force by the letter, but by a rule that a later one leaves nothing of
  changes,       ///< not the same all through the interval asked for
  clocks_change  ///< the clocks are changed within the interval, and it matters
};
inline constexpr std::size_t reason_count = static_cast<std::size_t>(Reason::clocks_change) + 1;

/// A part of the text that was read, in bytes.
struct Slice {
  std::uint32_t from = 0;
  std::uint32_t length = 0;
  [[nodiscard]] std::string_view of(std::string_view text) const {
    return text.substr(from, length);
  }
  friend constexpr bool operator==(const Slice&, const Slice&) = default;
};

struct Answer {
  Tri in_force = Tri::unknown;
  Reason reason = Reason::stated;
  Slice rule =
      {};  ///< the rule, clause part or word that decides; empty: no rule speaks of that time
  /// Of `holiday`: the bank holiday that made the difference is so many days after the day asked
  /// about, before it when below nought ("PH -1 day" on a Christmas Eve: 1). Else 0.
  std::int16_t holiday_days = 0;
  /// Of "no" from a text of hours: a rule that a later one leaves nothing of covers this minute. Mappers
  /// often mean both. A condition, and all that is asked of one, is unknown then.
  bool replaced = false;
  friend constexpr bool operator==(const Answer&, const Answer&) = default;
};

/// "no school term dates are given", "the text says unknown" …; empty for stated and holiday.
std::string_view words(Reason reason);

}  // namespace loopwright::hours
