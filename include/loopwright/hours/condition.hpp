// Conditional restrictions: a value that holds when a condition does.
//
//   Conditional c = read_conditional("30 mph", "20 mph @ (Mo-Fr 08:15-09:15; PH off)");
//   c.at(civil, setting).settled() ? c.value(…) : "may be either";
//
// Rules: of clauses whose conditions hold the last one wins; none: the base. A condition is parts
// joined by AND: hours, a property of the vehicle ("weight>7.5"), a kind of user ("destination"), a
// state of the road ("wet", "flashing"). False AND unknown is false; true AND unknown unknown.
// Unreadable hours are unknown, with their position. Nothing is allocated after reading.
// Source: OSM wiki Conditional restrictions (syntax; the last true clause wins).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/hours/answer.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {

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
std::vector<Clause> split_conditional(std::string_view text);

enum class PartKind : std::uint8_t { hours, property, user, road_state, other };

/// One part of a condition, between ANDs.
struct ConditionPart {
  PartKind kind = PartKind::other;
  std::string text;             ///< brackets taken off
  std::string property;         ///< of a property: "weight", lower case
  std::string relation;         ///< "<", ">", "<=", ">=", "="
  std::optional<double> limit;  ///< its number, whatever the unit; empty when there is none
  Hours hours;                  ///< of hours
};
/// Splits at the word AND outside quotes, and tells what each part is.
std::vector<ConditionPart> parts_of_condition(std::string_view condition);

/// Vehicles, users and purposes that conditions name: "destination", "delivery", "hgv", "bus" …
bool is_user_word(std::string_view word);

/// What is known of vehicle and driver when a condition asks. The plain one knows nothing.
class Circumstances {
 public:
  Circumstances() = default;
  virtual ~Circumstances() = default;
  /// Does this property, user or road state part hold?
  [[nodiscard]] virtual Tri holds(const ConditionPart& part) const;

 protected:
  Circumstances(const Circumstances&) = default;
  Circumstances& operator=(const Circumstances&) = default;
};

class Condition {
 public:
  explicit Condition(std::string_view text);
  [[nodiscard]] const std::vector<ConditionPart>& parts() const { return parts_; }
  /// The slice of the answer is of the part told: its text, or the rule in it.
  [[nodiscard]] Answer at(const CivilTime& at, const Setting& setting,
                          const Circumstances& about = {}) const;
  [[nodiscard]] CivilTime next_look(const CivilTime& at, const Setting& setting) const;
  /// True when no part of it hangs on the time. What it hangs on else is taken for what it is now.
  [[nodiscard]] bool never_changes() const;
  /// Safe to print, whatever the text holds.
  [[nodiscard]] std::string words() const;  ///< "Monday to Friday, seven till ten, when it is wet"
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
  std::vector<ConditionPart> parts_;
};

/// What of a text can't be read: where, in bytes, and what was looked for there.
struct Unread {
  std::size_t at = 0;
  std::string_view wanted;
  friend bool operator==(const Unread&, const Unread&) = default;
};

/// Which clauses may be the one that holds.
struct Possible {
  static constexpr std::size_t base = 0;  ///< bit of the base; clause k has bit k + 1
  std::uint64_t bits = 1;
  Reason reason = Reason::stated;  ///< why it isn't one alone; or holiday
  std::int16_t holiday_days = 0;   ///< of holiday, as of Answer
  [[nodiscard]] bool settled() const { return (bits & (bits - 1)) == 0; }
  [[nodiscard]] bool has(std::size_t bit) const { return (bits >> bit & 1U) != 0; }
  friend constexpr bool operator==(const Possible&, const Possible&) = default;
};

class Conditional {
 public:
  struct Row {
    std::string value;
    Condition condition;
  };
  [[nodiscard]] const std::string& base() const { return base_; }
  [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }
  /// The first thing of the text that can't be read: a value missing before '@', a condition behind
  /// it, hours in one, a word nobody knows. Empty when all of it can be. What can be read is asked
  /// all the same: a clause that can't be may hold or not.
  [[nodiscard]] const std::optional<Unread>& unread() const { return unread_; }
  /// The value of a bit of Possible.
  [[nodiscard]] const std::string& value(std::size_t bit) const {
    return bit == Possible::base ? base_ : rows_[bit - 1].value;
  }
  [[nodiscard]] Possible at(const CivilTime& at, const Setting& setting,
                            const Circumstances& about = {}) const;
  /// Everything that may hold at some moment of the closed interval; clock changes are followed.
  [[nodiscard]] Possible through(const Instant& from, const Instant& to, const Setting& setting,
                                 const Circumstances& about = {}) const;
  [[nodiscard]] std::optional<Instant> next_change(const Instant& at, const Setting& setting,
                                                   const Circumstances& about = {},
                                                   int ahead_days = 400) const;
  /// The same value for ever, in the same circumstances: no condition hangs on the time.
  [[nodiscard]] bool never_changes() const;
  [[nodiscard]] CivilTime next_look(const CivilTime& at, const Setting& setting) const;

 private:
  friend Conditional read_conditional(std::string_view base, std::string_view text);
  std::string base_;
  std::vector<Row> rows_;
  std::optional<Unread> unread_;
};

/// Rules: of more than 62 clauses the last 62 are kept, which are those that win.
Conditional read_conditional(std::string_view base, std::string_view text);

}  // namespace loopwright::hours
