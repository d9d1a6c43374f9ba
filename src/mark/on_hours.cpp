// Method:
// 1. Clauses that never bind a car fall away; one that always does becomes the base and undoes what
//    stands before it. Leading clauses that say what the base says change nothing: they fall away.
// 2. Bus lanes and kerbs: a plain "on" before a clause that switches on contradicts it (it would be
//    always on): the clauses are believed and the doubt is kept.
// 3. One clause that is on is its condition as it stands. All else is clauses of yes and no, "yes"
//    at all times first where the base is on.
// 4. A condition with a bracket or quote that isn't closed, or with an '@', would swallow the clauses
//    behind it: each such character is shielded, so that the condition can't be read, is unknown, and is
//    still printed as it stands.
// Sources: OSM wiki, pages Bus lanes, Conditional restrictions (the last true clause wins).
#include "loopwright/mark/on_hours.hpp"

#include <algorithm>

#include "loopwright/base/printable.hpp"
#include "loopwright/mark/ordinary_car.hpp"

namespace loopwright::mark {
namespace {

using When = Binding::When;

constexpr std::string_view always_text = "24/7";

/// Brackets and quotes that open and close, and nothing that looks like a clause.
bool is_closed(std::string_view condition) {
  int depth = 0;
  bool quoted = false;
  for (const char c : condition) {
    if (c == '@') return false;
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '(') ++depth;
    if (c == ')' && --depth < 0) return false;
  }
  return depth == 0 && !quoted;
}

std::string safe(std::string_view condition) {
  return is_closed(condition) ? std::string(condition) : shielded(condition, "()\"@");
}

}  // namespace

Switched switched(bool base_on, std::span<const OnClause> clauses) {
  Switched result{base_on, {}};
  for (const OnClause& clause : clauses) {
    Binding binding = binding_on_car(clause.condition);
    if (binding.when == When::always) {
      result = {clause.on, {}};
    } else if (binding.when == When::at_times &&
               (clause.on != result.base || !result.clauses.empty())) {
      result.clauses.push_back({clause.on, std::move(binding.condition)});
    }
  }
  return result;
}

std::string clause_text(std::string_view value, std::string_view condition) {
  return std::string(value).append(" @ (").append(safe(condition)).append(")");
}

std::string clauses_text(std::span<const OnClause> clauses) {
  std::string text;
  for (const OnClause& clause : clauses) {
    if (!text.empty()) text += "; ";
    text += clause_text(clause.on ? "yes" : "no", clause.condition);
  }
  return text;
}

std::string timetable_text(const Switched& when) {
  if (when.base) return clause_text("yes", always_text) + "; " + clauses_text(when.clauses);
  if (when.clauses.size() == 1) return safe(when.clauses.front().condition);
  return clauses_text(when.clauses);
}

OnHours on_hours(bool base_on, std::span<const OnClause> clauses) {
  const auto first = std::ranges::find_if(clauses, [](const OnClause& clause) {
    return binding_on_car(clause.condition).when != When::never;
  });
  if (first == clauses.end()) return {base_on, false, {}};
  const bool at_times = binding_on_car(first->condition).when == When::at_times;
  const bool doubtful = base_on && first->on && at_times;
  const Switched when = switched(base_on && !doubtful, clauses);
  if (!when.clauses.empty()) return {true, doubtful, timetable_text(when)};
  return {when.base, doubtful, when.base ? std::string(always_text) : std::string()};
}

}  // namespace loopwright::mark
