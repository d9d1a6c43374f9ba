// Method:
// 1. Clauses that never bind a car fall away. None left: the plain tag alone, without hours.
// 2. A plain "on" beside clauses that switch on contradicts them (it would be always on): the
//    clauses are believed and the doubt is kept. A plain "on" before a clause that switches off
//    means "always but then": 24/7 comes first.
// 3. The clauses are written one after the other as one hours text: on adds (", "), off cuts out
//    ("; … off"). Of clauses that hold together the last wins, and so do hours rules.
// 4. What can't be written so (a condition that isn't hours alone, rules with ';' added to others)
//    gives no hours: the plate must be checked.
// Sources: OSM wiki, pages Bus lanes, Conditional restrictions, Key:opening_hours/specification.
#include "lane_hours.hpp"

#include <algorithm>
#include <cctype>
#include <vector>

#include "loopwright/mark/ordinary_car.hpp"

namespace loopwright::mark {
namespace {

using When = Binding::When;

constexpr std::string_view always_text = "24/7";

struct Step {
  bool on = false;
  Binding binding;
};

std::vector<Step> steps_of(std::span<const LaneClause> clauses) {
  std::vector<Step> steps;
  for (const LaneClause& clause : clauses) {
    Step step{clause.on, binding_on_car(clause.condition)};
    if (step.binding.when != When::never) steps.push_back(std::move(step));
  }
  return steps;
}

/// Several rules in one text ("Mo-Fr 07:00-10:00, Sa 08:00-12:00"; a word behind a time begins
/// another): "off" behind them would bind the last one only.
bool has_rules(const std::string& hours) {
  const std::size_t time = hours.find(':');
  const bool goes_on = time != std::string::npos &&
                       std::any_of(hours.begin() + static_cast<std::ptrdiff_t>(time), hours.end(),
                                   [](unsigned char c) { return std::isalpha(c) != 0; });
  return goes_on || hours.find(';') != std::string::npos;
}

/// The text so far and whether it still says what the tags say.
struct Written {
  std::string text;
  bool readable = true;
};

void add_always(Written& written, bool on) {
  written = {on ? std::string(always_text) : std::string(), true};
}

void add_at_times(Written& written, const Step& step) {
  const std::string& hours = step.binding.hours;
  if (!step.on && written.text.empty() && written.readable) return;  // off stays off
  const bool joins = !written.text.empty();
  if (hours.empty() || (joins && has_rules(hours))) written.readable = false;
  if (step.on) {
    written.text += joins ? ", " + hours : hours;
  } else {
    written.text += "; " + hours + " off";
  }
}

}  // namespace

LaneHours lane_hours(bool base_on, std::span<const LaneClause> clauses) {
  const std::vector<Step> steps = steps_of(clauses);
  if (steps.empty()) return {base_on, false, {}};
  LaneHours result;
  Written written;
  result.doubtful = base_on && std::ranges::any_of(steps, &Step::on);
  if (base_on && !steps.front().on) add_always(written, true);
  for (const Step& step : steps) {
    if (step.binding.when == When::always) {
      add_always(written, step.on);
    } else {
      add_at_times(written, step);
    }
  }
  result.ever = !written.text.empty() || !written.readable;
  if (written.readable) result.hours = written.text;
  return result;
}

}  // namespace loopwright::mark
