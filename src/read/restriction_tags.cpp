// 1. A restriction that excepts cars, or names another vehicle in its type, is for others.
// 2. The value is that of the most special key a car knows: restriction:motorcar, …:motor_vehicle,
//    …:vehicle, restriction. What begins with no_ or only_ is understood; "none" frees the car.
// 3. Each clause of the :conditional key adds a demand with its condition, unless the condition
//    never holds for a learner's car (weights, trailers, residents …).
// 4. day_on, hour_on … are the forerunner of conditions (deprecated since 2013): taken as one.
// Why: until hours are read in full, a turn is shut whenever it may be shut, so every demand is
// kept with its text and none is ever dropped for the hour.
#include "restriction_tags.hpp"

#include <algorithm>
#include <iterator>

#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"
#include "loopwright/mark/ordinary_car.hpp"

namespace loopwright::read {
namespace {

constexpr std::string_view car_modes[] = {"motorcar", "motor_vehicle", "vehicle"};
constexpr std::string_view car_keys[] = {"restriction:motorcar", "restriction:motor_vehicle",
                                         "restriction:vehicle", "restriction"};

bool is_car_mode(std::string_view mode) {
  return std::ranges::find(car_modes, mode) != std::end(car_modes);
}

bool excepts_cars(std::string_view modes) {
  return std::ranges::any_of(split(modes, ';'), is_car_mode);
}

/// True for types like restriction:hgv.
bool type_names_others(std::string_view type) {
  const std::size_t colon = type.find(':');
  if (colon == std::string_view::npos) return false;
  const std::string_view mode = type.substr(colon + 1);
  return !is_car_mode(mode) && mode != "conditional";
}

bool is_demand(std::string_view value) {
  return value.starts_with("no_") || value.starts_with("only_");
}

/// Empty when the clause always holds for a learner's car.
std::string condition_of(const mark::Binding& binding, const hours::Clause& clause) {
  return binding.when == mark::Binding::When::always ? std::string() : clause.condition;
}

std::string old_hours(const mark::Tags& tags) {
  std::string text;
  for (const std::string_view key : {"day_on", "day_off", "hour_on", "hour_off"}) {
    if (!tags.has(key)) continue;
    if (!text.empty()) text += ' ';
    text.append(key).append("=").append(tags.get(key));
  }
  return text;
}

void add_plain(const mark::Tags& tags, Demands& demands) {
  for (const std::string_view key : car_keys) {
    const std::string value(tags.get(key));
    if (value.empty()) continue;
    if (is_demand(value)) {
      demands.of_the_car.push_back({value, std::string(key) + "=" + value, old_hours(tags)});
    } else {
      demands.of_others = value == "none" || value == "no";
    }
    return;
  }
}

void add_conditional(const mark::Tags& tags, Demands& demands) {
  for (const std::string_view car_key : car_keys) {
    const std::string key = std::string(car_key) + ":conditional";
    const std::string_view value = tags.get(key);
    if (value.empty()) continue;
    for (const hours::Clause& clause : hours::read_conditional(value)) {
      if (!is_demand(clause.value)) continue;
      const mark::Binding binding = mark::binding_on_car(clause.condition);
      if (binding.when == mark::Binding::When::never) {
        demands.of_others = true;
      } else {
        demands.of_the_car.push_back(
            {clause.value, key + "=" + std::string(value), condition_of(binding, clause)});
      }
    }
    return;
  }
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
  Demands demands;
  if (excepts_cars(tags.get("except")) || type_names_others(tags.get("type"))) {
    demands.of_others = true;
    return demands;
  }
  add_plain(tags, demands);
  add_conditional(tags, demands);
  const bool for_cars = std::ranges::any_of(car_keys, [&](std::string_view key) {
    return tags.has(key) || tags.has(std::string(key) + ":conditional");
  });
  if (!for_cars) demands.of_others = has_key_for_others(tags);
  return demands;
}

}  // namespace loopwright::read
