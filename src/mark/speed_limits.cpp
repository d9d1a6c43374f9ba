// The speed limit of each direction, as the rule behind it and how we know.
//
// 1. Number: maxspeed:forward or :backward, else maxspeed. Reason: maxspeed:type, else a
//    source:maxspeed that names a zone ("GB:nsl_single"; other values there only tell where the
//    mapper got it from), else zone:maxspeed.
// 2. Number and reason agree (the law of the region gives that number, now or before a change): the
//    reason is the rule, so that a change of law is followed. They don't: the number, to be
//    checked.
// 3. A number alone is a sign. Not in a town whose default the law has changed since the map was
//    made: a mapped 30 in a lit or residential Welsh street is most likely the old default, so it
//    is kept as "restricted", to be checked. (The law itself tells which numbers those are.)
// 4. A bare number is km/h by the documentation. Where signs are in mph it is nearly always a slip
//    for mph: stored as documented (or as its reason says), to be checked, and reported.
// 5. A reason alone is the rule. Neither: motorway by class; street lamps, a pavement or a
//    residential street say restricted, no lamps say the national limit; nothing of these is a mere
//    guess, to be checked (limits_among_streets.cpp looks at it again). In Scotland lamps are no evidence on A and B roads.
// 6. maxspeed=signals or variable, none in Great Britain, and what can't be read: by rule 5, to be
//    checked. walk in Great Britain, whose law knows no such limit: believed, since
//    it is the lower one, and to be checked.
// Sources: OSM wiki, pages Key:maxspeed, Key:maxspeed:type, Key:source:maxspeed; Road Traffic
// Regulation Act 1984 s. 82 (in Scotland lighting of a prescribed class of road only: C and
// unclassified, from memory); SI 2022/800 (Wales) by src/rules/limits.txt.
#include <algorithm>
#include <array>
#include <string>

#include "law_days.hpp"
#include "limit_texts.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LimitConfidence;
using road::LimitFact;
using road::LimitRule;
using road::RoadClass;
using What = LimitText::What;

/// One road, seen for its limits.
struct Seen {
  Draft& draft;
  const Tags& tags;
  const road::Piece& piece;
  bool first_of_way;  ///< oddities are told once a way
};

struct Tag {
  std::string_view key;
  std::string_view value;
  [[nodiscard]] std::string text() const { return tag_text(key, value); }
};

bool is_british(const Region& region) {
  return region.code.starts_with("GB-");
}

bool is_dual(const road::Piece& piece) {
  return (piece.flags & (road::piece_flag::dual | road::piece_flag::dual_inferred)) != 0;
}

Tag first_tag(const Tags& tags, std::initializer_list<std::string_view> keys) {
  for (const std::string_view key : keys) {
    if (tags.has(key)) return {key, tags.get(key)};
  }
  return {};
}

Tag reason_tag(const Tags& tags) {
  const Tag type = first_tag(tags, {"maxspeed:type"});
  if (!type.value.empty() && type.value != "sign") return type;
  const std::string_view source = tags.get("source:maxspeed");
  if (type.value.empty() && names_zone(source)) return {"source:maxspeed", source};
  return first_tag(tags, {"zone:maxspeed"});
}

bool says_sign(const Tags& tags) {
  return tags.is("maxspeed:type", "sign") || tags.is("source:maxspeed", "sign");
}

bool is_lit(const Tags& tags) {
  return tags.has("lit") && !tags.is("lit", "no") && !tags.is("lit", "disused");
}

bool has_pavement(const Tags& tags) {
  constexpr std::array<std::string_view, 4> keys{"sidewalk", "sidewalk:both", "sidewalk:left",
                                                 "sidewalk:right"};
  for (const std::string_view key : keys) {
    const std::string_view value = tags.get(key);
    if (!value.empty() && value != "no" && value != "none") return true;
  }
  return false;
}

/// What says that a road runs between houses; empty when nothing does.
Tag town_tag(const Tags& tags, RoadClass road_class) {
  if (is_lit(tags)) return {"lit", tags.get("lit")};
  if (road_class == RoadClass::residential || road_class == RoadClass::living_street) {
    return {"highway", tags.get("highway")};
  }
  return has_pavement(tags) ? Tag{"sidewalk", "yes"} : Tag{};
}

bool is_numbered_road(RoadClass road_class) {
  return road::rank(road_class) <= road::rank(RoadClass::secondary);
}

void report_odd(const Seen& seen, std::string_view what, const std::string& detail) {
  if (!seen.first_of_way) return;
  seen.draft.report.odd({seen.piece.way, ObjectType::way, {}}, what, detail);
}

bool tells_rule(const LimitText& text) {
  return text.what == What::rule || text.what == What::national;
}

LimitFact fact_of(const Seen& seen, const LimitText& text, const Tag& tag) {
  LimitFact fact;
  fact.rule = text.rule;
  fact.confidence = LimitConfidence::certain;
  fact.value = static_cast<std::uint16_t>(text.value);
  fact.unit = text.unit;
  if (text.what == What::national) {
    fact.rule = is_dual(seen.piece) ? LimitRule::national_dual : LimitRule::national_single;
  }
  fact.source = seen.draft.text(tag.text());
  return fact;
}

LimitFact guess(const Seen& seen, LimitRule rule, const Tag& tag) {
  LimitFact fact;
  fact.rule = rule;
  fact.source = seen.draft.text(tag.text());
  return fact;
}

// --- step 5: nothing mapped ----------------------------------------------------------------------

LimitRule rule_outside_towns(const Seen& seen) {
  const std::string& region = seen.draft.info.region.code;
  const RoadClass road_class = seen.piece.road_class;
  if (is_dual(seen.piece)) return LimitRule::national_dual;
  if (is_british(seen.draft.info.region)) return LimitRule::national_single;
  if (region == "IE" && road::rank(road_class) <= road::rank(RoadClass::primary)) {
    return LimitRule::national_single;
  }
  const bool irish_local = region == "IE" && !is_numbered_road(road_class);
  return irish_local ? LimitRule::rural_minor : LimitRule::rural;
}

LimitFact infer_in_town(const Seen& seen, const Tag& town) {
  const RoadClass road_class = seen.piece.road_class;
  const bool british = is_british(seen.draft.info.region);
  if (!british && road_class == RoadClass::living_street) return guess(seen, LimitRule::walk, town);
  if (seen.draft.info.region.code != "GB-SCT" || !is_numbered_road(road_class)) {
    return guess(seen, british ? LimitRule::restricted : LimitRule::urban, town);
  }
  LimitFact fact = guess(seen, LimitRule::unknown, town);
  fact.confidence = LimitConfidence::check;
  return fact;
}

LimitFact infer(const Seen& seen) {
  const RoadClass road_class = seen.piece.road_class;
  const Tag by_class{"highway", seen.tags.get("highway")};
  if (road::rank(road_class) == road::rank(RoadClass::motorway)) {
    return guess(seen, LimitRule::motorway, by_class);
  }
  if (const Tag town = town_tag(seen.tags, road_class); !town.value.empty()) {
    return infer_in_town(seen, town);
  }
  if (seen.tags.is("lit", "no")) return guess(seen, rule_outside_towns(seen), {"lit", "no"});
  const bool service = road_class == RoadClass::service;
  LimitFact fact = guess(seen, service ? LimitRule::unknown : rule_outside_towns(seen), by_class);
  fact.confidence = LimitConfidence::check;
  return fact;
}

// --- steps 2 to 4: a number ----------------------------------------------------------------------

bool same_number(const road::LimitOnDay& law, const LimitText& number) {
  return law.value == number.value && law.unit == number.unit;
}

/// Step 3: the old default of a town, on a map that hasn't seen the new one.
bool is_old_default(const Seen& seen, const LimitFact& sign) {
  if (says_sign(seen.tags) || town_tag(seen.tags, seen.piece.road_class).value.empty())
    return false;
  LimitFact restricted;
  restricted.rule = LimitRule::restricted;
  const road::LimitLaw& law = seen.draft.law;
  const road::LimitOnDay before = law.on(restricted, first_day);
  return before.value == sign.value && before.unit == sign.unit &&
         law.on(sign, newest_day).confidence == LimitConfidence::check;
}

bool lacks_unit(const Seen& seen, const LimitText& number) {
  return number.what == What::bare_number && seen.draft.info.region.unit == SpeedUnit::mph;
}

LimitFact of_number(const Seen& seen, const LimitText& number, const Tag& tag) {
  LimitFact fact = fact_of(seen, number, tag);
  if (lacks_unit(seen, number)) {
    report_odd(seen, "speed limit without a unit", tag.text());
    fact.confidence = LimitConfidence::check;
  } else if (is_old_default(seen, fact)) {
    fact.rule = LimitRule::restricted, fact.value = 0;
    fact.confidence = LimitConfidence::check;
  }
  return fact;
}

LimitFact disagreeing(const Seen& seen, LimitFact sign, const std::string& detail) {
  report_odd(seen, "speed limit and its reason disagree", detail);
  sign.confidence = LimitConfidence::check;
  return sign;
}

LimitFact of_both(const Seen& seen, const LimitText& number, const Tag& tag) {
  const Tag why = reason_tag(seen.tags);
  const LimitText reason = read_limit(why.value);
  if (!tells_rule(reason)) return of_number(seen, number, tag);
  LimitFact fact = fact_of(seen, reason, why);
  const LimitFact sign = fact_of(seen, number, tag);
  if (lacks_unit(seen, number)) {
    report_odd(seen, "speed limit without a unit", tag.text() + " " + why.text());
    fact.confidence = LimitConfidence::check;
    return fact;
  }
  if (reason.value > 0) {
    const bool agree = reason.value == number.value && reason.unit == number.unit;
    return agree ? fact : disagreeing(seen, sign, tag.text() + " " + why.text());
  }
  if (same_number(seen.draft.law.on(fact, newest_day), number)) return fact;
  if (fact.rule == LimitRule::motorway) return sign;  // a sign on a motorway, and both are true
  if (!same_number(seen.draft.law.on(fact, first_day), number)) {
    return disagreeing(seen, sign, tag.text() + " " + why.text());
  }
  fact.confidence = LimitConfidence::check;
  return fact;
}

// --- the cascade ---------------------------------------------------------------------------------

LimitFact of_reason_alone(const Seen& seen) {
  const Tag why = reason_tag(seen.tags);
  const LimitText reason = read_limit(why.value);
  return tells_rule(reason) ? fact_of(seen, reason, why) : infer(seen);
}

LimitFact in_direction(const Seen& seen, std::string_view own_key) {
  const Tag tag = first_tag(seen.tags, {own_key, "maxspeed"});
  if (tag.value.empty()) return of_reason_alone(seen);
  const LimitText text = read_limit(tag.value);
  const bool british = is_british(seen.draft.info.region);
  if (text.what == What::number || text.what == What::bare_number) return of_both(seen, text, tag);
  const bool no_such_law = british && text.rule == LimitRule::no_limit;
  if (tells_rule(text) && !no_such_law) {
    LimitFact fact = fact_of(seen, text, tag);
    if (british && text.rule == LimitRule::walk) fact.confidence = LimitConfidence::check;
    return fact;
  }
  if (text.what != What::varies) report_odd(seen, "speed limit can't be read", tag.text());
  LimitFact fact = of_reason_alone(seen);
  fact.confidence = LimitConfidence::check;
  return fact;
}

}  // namespace

BothLimits limits_of(Draft& draft, PieceId piece) {
  const road::Piece& row = draft.tables.pieces[piece.index()];
  const bool first = piece.index() == 0 || draft.tables.pieces[piece.index() - 1].way != row.way;
  Seen seen{draft, draft.way_tags(piece), row, first};
  const LimitFact along = in_direction(seen, "maxspeed:forward");
  const bool same = !seen.tags.has("maxspeed:forward") && !seen.tags.has("maxspeed:backward");
  if (same) return {along, along};
  seen.first_of_way = first && seen.tags.has("maxspeed:backward");
  return {along, in_direction(seen, "maxspeed:backward")};
}

}  // namespace loopwright::mark
