// 1. A restriction that excepts cars, or names another vehicle in its type, is for others.
// 2. The plain value is that of the most special key a car knows: restriction:motorcar,
//    …:motor_vehicle, …:vehicle, restriction; the conditional text that of the most special
//    …:conditional key. What begins with no_ or only_ is a demand; "none" and "no" free the car.
// 3. Each demand named anywhere holds when its value does: a clause of its value switches it on, one
//    of another value off, since a true conditional beats the plain tag and the last of several wins.
//    A conditional of a less special key than the plain one frees nothing. Conditions that never hold
//    for a learner's car (weights, trailers, residents …) fall away.
// 4. day_on, hour_on … are the forerunner of conditions (deprecated since 2013): hours of the plain
//    value, when they can be read; else kept as they are, so that nobody can tell when it binds.
// A demand that is in force at no hour is none; one in force at all hours has no condition.
#include "restriction_tags.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/on_hours.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "old_hours.hpp"

namespace loopwright::read {
namespace {

constexpr std::array<std::string_view, 4> car_keys = {
    "restriction:motorcar", "restriction:motor_vehicle", "restriction:vehicle", "restriction"};

bool is_demand(std::string_view value) {
  return value.starts_with("no_") || value.starts_with("only_");
}

/// A key found, and how special its mode is: 0 the most.
struct Said {
  std::size_t level = car_keys.size();  ///< that is: nothing said
  std::string tag;
  std::string_view value;
};

Said said_with(const mark::Tags& tags, std::string_view after) {
  for (std::size_t level = 0; level < car_keys.size(); ++level) {
    const std::string key = std::string(car_keys[level]).append(after);
    if (const auto value = tags.get(key); !value.empty())
      return {level, key + "=" + std::string(value), value};
  }
  return {};
}

/// What a relation says to cars.
class Reading {
 public:
  explicit Reading(const mark::Tags& tags)
      : plain_(said_with(tags, "")), timed_(said_with(tags, ":conditional")) {
    clauses_ = hours::split_conditional(timed_.value);
    if (clauses_.empty() && is_demand(timed_.value))  // a value without '@'
      clauses_.push_back({std::string(timed_.value), "?"});
    const std::string old = old_hours(tags);
    if (old.empty()) return;
    clauses_.insert(clauses_.begin(), {std::string(plain_.value), old});
    plain_only_at_hours_ = true;
  }
  [[nodiscard]] std::vector<Demand> demands() const;
  [[nodiscard]] bool says_anything() const {
    return std::ranges::any_of(clauses_, [](const auto& c) { return is_known(c.value); }) ||
           is_known(plain_.value);
  }

 private:
  static bool is_known(std::string_view value) {
    return is_demand(value) || value == "none" || value == "no";
  }
  [[nodiscard]] std::optional<Demand> demand(const std::string& value) const;
  [[nodiscard]] std::vector<std::string> values() const;

  Said plain_, timed_;
  std::vector<hours::Clause> clauses_;
  bool plain_only_at_hours_ = false;
};

/// Every demand, each once, in the order named.
std::vector<std::string> Reading::values() const {
  std::vector<std::string> values;
  const auto add = [&](std::string_view value) {
    const bool known = std::ranges::find(values, value) != values.end();
    if (is_demand(value) && !known) values.emplace_back(value);
  };
  add(plain_.value);
  for (const hours::Clause& clause : clauses_) add(clause.value);
  return values;
}

std::optional<Demand> Reading::demand(const std::string& value) const {
  const bool base = plain_.value == value;
  std::vector<mark::OnClause> clauses;
  for (const hours::Clause& clause : clauses_) {
    const bool on = clause.value == value;
    const bool frees = !on && is_known(clause.value) && timed_.level <= plain_.level;
    if (on || frees) clauses.push_back({on, clause.condition});
  }
  const mark::Switched when = mark::switched(base && !plain_only_at_hours_, clauses);
  const std::string& tag = base ? plain_.tag : timed_.tag;
  if (when.clauses.empty()) return when.base ? std::optional(Demand{value, tag, {}}) : std::nullopt;
  const bool both = base && !timed_.tag.empty();
  return Demand{value, both ? tag + "; " + timed_.tag : tag, mark::timetable_text(when)};
}

std::vector<Demand> Reading::demands() const {
  std::vector<Demand> demands;
  for (const std::string& value : values())
    if (auto found = demand(value)) demands.push_back(std::move(*found));
  return demands;
}

bool has_key_for_others(const mark::Tags& tags) {
  bool found = false;
  tags.each([&](std::string_view key, std::string_view) {
    found = found || key.starts_with("restriction:");
  });
  return found;
}

}  // namespace

Demands demands_of(const mark::Tags& tags) {
  if (mark::restricts_others_only(tags)) return {{}, true};
  const Reading reading(tags);
  std::vector<Demand> demands = reading.demands();
  const bool of_others = demands.empty() && (reading.says_anything() || has_key_for_others(tags));
  return {std::move(demands), of_others};
}

}  // namespace loopwright::read
