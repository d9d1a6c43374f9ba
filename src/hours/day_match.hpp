// Does a rule speak of a day?
//
// Rules: private to hours. Holidays that nobody knows are assumed one way or the other by an
// Assumption; what was asked of it is remembered, so that a caller can try both.
#pragma once

#include <cstdint>

#include "hours/rules.hpp"
#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {

/// What is taken for true of holidays that the setting doesn't know, on the days round one day.
class Assumption {
 public:
  /// bits: as of `asked`; about: the day in the middle.
  Assumption(const Setting& setting, std::int64_t about, std::uint32_t bits)
      : setting_(setting), about_(about), bits_(bits) {}

  [[nodiscard]] const Setting& setting() const { return setting_; }
  bool bank_holiday(std::int64_t day);
  bool school_holiday(std::int64_t day);
  /// Days that were asked for and aren't known: a bit each.
  [[nodiscard]] std::uint32_t asked() const { return asked_; }
  [[nodiscard]] bool asked_for_bank() const { return (asked_ & bank_bits) != 0; }
  /// No day is a bank holiday, whatever the setting says.
  void without_bank_holidays() { without_bank_ = true; }
  /// This day is none.
  void without_bank_holiday(std::int64_t day) { left_out_ = day; }

 private:
  static constexpr std::uint32_t bank_bits = 0xffU;
  bool assume(Tri known, std::int64_t day, unsigned first_bit);

  const Setting& setting_;
  std::int64_t about_;
  std::uint32_t bits_;
  std::uint32_t asked_ = 0;
  bool without_bank_ = false;
  std::int64_t left_out_ = INT64_MIN;
};

/// day: since the epoch.
bool speaks_of(const Rule& rule, std::int64_t day, Assumption& assumption);

/// Days since the epoch of Easter Sunday (Gregorian).
std::int64_t easter_of(int year);

}  // namespace loopwright::hours
