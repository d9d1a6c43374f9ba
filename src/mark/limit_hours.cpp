// 1. The plain limit is that of the direction, else of the road; its text as mapped.
// 2. maxspeed:conditional, then that of the direction, which is more special and so comes last (of
//    clauses that hold the last wins). Clauses that never bind a car fall away.
// 3. maxspeed:variable=*, or maxspeed=signals: signs that are switched may say anything at any time.
//    Nobody can tell from a map: the clause has a condition that is always unknown.
// 4. A limit that may be another at the hour is in doubt, wherever a number of it is told.
// Source: OSM wiki, pages Key:maxspeed:conditional, Key:maxspeed:variable, Key:maxspeed.
#include "limit_hours.hpp"

#include <algorithm>

#include "limit_texts.hpp"
#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/on_hours.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr std::string_view by_signs = "as the signs say @ (variable signs)";

void add(LimitHours& hours, std::string_view clause, const std::string& tag) {
  if (!hours.text.empty()) hours.text += "; ";
  hours.text += clause;
  if (hours.source.find(tag) != std::string::npos) return;
  if (!hours.source.empty()) hours.source += "; ";
  hours.source += tag;
}

/// A limit as mapped; what is none ("99999999999 mph", "twenty", "signals") is for the signs to say.
std::string_view value_told(std::string_view value) {
  const LimitText::What what = read_limit(value).what;
  const bool is_limit = what != LimitText::What::unreadable && what != LimitText::What::varies;
  return is_limit ? value : "as the signs say";
}

/// The keys that speak of one direction.
struct LimitKeys {
  std::string_view plain, conditional, variable;
};
constexpr LimitKeys keys_along{"maxspeed:forward", "maxspeed:forward:conditional",
                               "maxspeed:variable:forward"};
constexpr LimitKeys keys_against{"maxspeed:backward", "maxspeed:backward:conditional",
                                 "maxspeed:variable:backward"};

void add_conditional(LimitHours& hours, const Tags& tags, std::string_view key) {
  for (const hours::Clause& clause : hours::split_conditional(tags.get(key))) {
    const Binding binding = binding_on_car(clause.condition);
    if (binding.when == Binding::When::never) continue;
    const bool always = binding.when == Binding::When::always;
    add(hours, clause_text(value_told(clause.value), always ? "24/7" : binding.condition),
        tag_text(tags, key));
  }
}

LimitHours in_direction(const Tags& tags, const LimitKeys& keys) {
  LimitHours hours;
  const std::string_view plain = tags.has(keys.plain) ? keys.plain : "maxspeed";
  const bool switched_alone = read_limit(tags.get(plain)).what == LimitText::What::varies;
  if (!switched_alone) hours.base = tags.get(plain);
  if (tags.has_conditions())
    for (const std::string_view key : {std::string_view("maxspeed:conditional"), keys.conditional})
      add_conditional(hours, tags, key);
  for (const std::string_view key : {std::string_view("maxspeed:variable"), keys.variable})
    if (tags.has(key) && !tags.is(key, "no")) add(hours, by_signs, tag_text(tags, key));
  if (switched_alone) add(hours, by_signs, tag_text(tags, plain));
  return hours;
}

}  // namespace

BothLimitHours limit_hours_of(const Tags& tags) {
  return {in_direction(tags, keys_along), in_direction(tags, keys_against)};
}

void keep_limit_hours(Draft& draft, PieceId piece, const BothLimitHours& of_way) {
  for (const bool back : {false, true}) {
    const StretchId stretch(piece, back);
    std::uint32_t& flags = draft.tables.stretches[stretch.index()].flags;
    if ((flags & road::stretch_flag::drivable) == 0) continue;
    const LimitHours& hours = back ? of_way.against : of_way.along;
    if (hours.text.empty()) continue;
    flags |= road::stretch_flag::timed;
    // No single number is sure then: look for the sign.
    draft.tables.stretches[stretch.index()].limit.confidence = road::LimitConfidence::check;
    draft.tables.timed_rules.push_back({stretch,
                                        draft.text(hours.base),
                                        draft.text(hours.text),
                                        draft.text({}),
                                        draft.text(hours.source),
                                        road::Timed::limit,
                                        {}});
  }
}

}  // namespace loopwright::mark
