// 1. The scheme of December 2022: parking:<side>=… with :restriction, :restriction:conditional,
//    :access, :zone, :fee. When the side has none of it, the older ones: parking:lane:<side>=… (2011;
//    its no_parking and no_stopping are bans), parking:condition:<side>=… with :default and
//    :time_interval (2011) or :conditional (January 2022; the bans stand here then).
// 2. A ban at all times forbids the kerb; one by the hour leaves its hours. Double yellow lines are
//    no_parking: stopping to let someone out is no ban there, a talk is waiting (rule 238). Bays for
//    loading or charging are no place to stop. Hours that
//    can't be read forbid when they are asked.
// 3. parking=no says that nobody stands here: believed. Cars on the kerb are no place for a learner
//    (rule 244: an offence in London and Scotland, advised against elsewhere), nor are bays at an
//    angle to the road.
// 4. Bays for residents or with a fee stay, flagged.
// 5. A cycle lane along the kerb forbids it (rules 140, 240: which kind of line isn't often mapped;
//    those that are advisory too: ours). So does overtaking=no, the sign of a double white line
//    (rule 240), whichever side is broken.
// Sources: OSM wiki, pages Street parking, Key:parking:lane, Key:parking:condition, Key:cycleway;
// Highway Code rules 238, 240, 243, 244.
#include "kerb.hpp"

#include <algorithm>
#include <vector>

#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/on_hours.hpp"
#include "side_value.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::pull_up_flag;

bool forbids_waiting(std::string_view value) {
  constexpr std::array<std::string_view, 6> bans{"no_parking",   "no_stopping",   "no_standing",
                                                 "loading_only", "charging_only", "fire_lane"};
  return one_of(value, bans);
}

std::string text_of(const SideValue& found) {
  return tag_text(found.key, found.value);
}

std::string_view word(road::LaneSide side) {
  return side == road::LaneSide::left ? "left" : "right";
}

/// A ban with and without conditions, as the two schemes give it.
struct Ban {
  SideValue plain;
  SideValue conditional;
  std::vector<OnClause> clauses;
  std::vector<std::string> values;  ///< of the clauses
};

Ban ban_of(const SideValue& plain, const SideValue& conditional) {
  Ban ban{plain, conditional, {}, {}};
  for (hours::Clause& clause : hours::split_conditional(conditional.value)) {
    ban.clauses.push_back({forbids_waiting(clause.value), std::move(clause.condition)});
    ban.values.push_back(std::move(clause.value));
  }
  return ban;
}

bool forbids_all_stops(const Ban& ban) {
  const auto allows_some = [](std::string_view value) {
    return forbids_waiting(value) && value != "no_stopping";
  };
  return !allows_some(ban.plain.value) && std::ranges::none_of(ban.values, allows_some);
}

void apply(Kerb& kerb, const Ban& ban) {
  const bool always = forbids_waiting(ban.plain.value);
  const OnHours when = on_hours(always, ban.clauses);
  const std::string by = text_of(always ? ban.plain : ban.conditional);
  if (!when.ever) return;
  // Beside a ban at all times, hours are those of a stricter one: no stopping at the peak.
  const bool all_day = when.doubtful || when.text.empty();
  if (!kerb.ban) kerb.ban = {all_day ? "24/7" : when.text, by, forbids_all_stops(ban)};
  if (when.doubtful || when.text.empty()) {
    kerb.forbidden_by = by;
  } else {
    add_hours(kerb, when.text, by);
    kerb.flags |= flag::hours;
  }
}

/// Where cars stand: not on the kerb, not at an angle, not where the map says that none does.
void add_position(Kerb& kerb, const SideValue& parking, std::string_view position,
                  std::string_view orientation) {
  constexpr std::array<std::string_view, 3> no_place{"no", "on_kerb", "half_on_kerb"};
  constexpr std::array<std::string_view, 3> at_an_angle{"diagonal", "perpendicular", "orthogonal"};
  constexpr std::array<std::string_view, 4> in_the_road{"lane", "yes", "on_street",
                                                        "painted_area_only"};
  constexpr std::array<std::string_view, 3> beside{"street_side", "shoulder", "layby"};
  if (one_of(position, no_place) || one_of(orientation, at_an_angle)) {
    kerb.forbidden_by = text_of(parking);
  } else if (one_of(position, in_the_road)) {
    kerb.allowed_by = text_of(parking), kerb.flags |= flag::parked;
  } else if (one_of(position, beside)) {
    kerb.allowed_by = text_of(parking), kerb.flags |= flag::lay_by;
  }
}

bool is_for_some(std::string_view access) {
  constexpr std::array<std::string_view, 5> all{"", "yes", "permissive", "public", "unknown"};
  return !one_of(access, all);
}

/// The scheme of 2022. False when the side has no tag of it.
bool add_today(Kerb& kerb, const Tags& tags, std::string_view side) {
  const auto value = [&](std::string_view after) {
    return value_of_side(tags, {"parking:", after}, side);
  };
  const SideValue parking = value("");
  const Ban ban = ban_of(value(":restriction"), value(":restriction:conditional"));
  if (parking.key.empty() && ban.plain.key.empty() && ban.conditional.key.empty()) return false;
  add_position(kerb, parking, parking.value, value(":orientation").value);
  apply(kerb, ban);
  const bool some = is_for_some(value(":access").value) || !value(":zone").value.empty() ||
                    !value(":access:conditional").value.empty();
  const std::string_view fee = value(":fee").value;
  const bool paid = (!fee.empty() && fee != "no") || !value(":fee:conditional").value.empty();
  if (some) kerb.flags |= flag::residents;
  if (paid) kerb.flags |= flag::fee;
  return true;
}

/// parking:condition in both its forms.
void add_condition(Kerb& kerb, const Tags& tags, std::string_view side) {
  constexpr std::array<std::string_view, 3> paid{"ticket", "disc", "fee"};
  constexpr std::array<std::string_view, 4> for_all{"", "free", "no", "none"};
  const auto value = [&](std::string_view after) {
    return value_of_side(tags, {"parking:condition:", after}, side);
  };
  const SideValue condition = value("");
  const SideValue interval = value(":time_interval");
  Ban ban = ban_of(condition, value(":conditional"));
  if (!interval.key.empty()) {
    ban.plain = value(":default");
    ban.conditional = condition;
    ban.clauses.push_back({forbids_waiting(condition.value), std::string(interval.value)});
    ban.values.emplace_back(condition.value);
  }
  apply(kerb, ban);
  if (one_of(condition.value, paid)) {
    kerb.flags |= flag::fee;
  } else if (!one_of(condition.value, for_all) && !forbids_waiting(condition.value)) {
    kerb.flags |= flag::residents;
  }
}

void add_before_2022(Kerb& kerb, const Tags& tags, std::string_view side) {
  const SideValue lane = value_of_side(tags, {"parking:lane:", ""}, side);
  if (forbids_waiting(lane.value)) {
    kerb.forbidden_by = text_of(lane);
    kerb.ban = {"24/7", text_of(lane), lane.value == "no_stopping"};
  }
  constexpr std::array<std::string_view, 4> along{"parallel", "inline", "marked", "yes"};
  const std::string kind = ":" + std::string(lane.value);
  const std::string_view position = value_of_side(tags, {"parking:lane:", kind}, side).value;
  const bool usual = position.empty() && one_of(lane.value, along);
  if (!lane.key.empty())
    add_position(kerb, lane, usual ? "lane" : (position.empty() ? lane.value : position),
                 lane.value);
  add_condition(kerb, tags, side);
}

/// A cycle lane on this side; the plain key speaks of both, or of the only side that has one.
std::string cycle_lane_tag(const Tags& tags, std::string_view side) {
  constexpr std::array<std::string_view, 3> lanes{"lane", "share_busway", "exclusive"};
  const SideValue sided = value_of_side(tags, {"cycleway:", ""}, side);
  if (one_of(sided.value, lanes)) return text_of(sided);
  return one_of(tags.get("cycleway"), lanes) ? tag_text(tags, "cycleway") : std::string();
}

/// A text for hours::Timetable as clauses.
std::string as_clauses(std::string_view hours) {
  const bool plain = hours.find('@') == std::string_view::npos;
  return plain ? clause_text("yes", hours) : std::string(hours);
}

bool switches_off(std::string_view clauses) {
  return std::ranges::any_of(hours::split_conditional(clauses),
                             [](const hours::Clause& clause) { return clause.value != "yes"; });
}

/// At the hours of the one or of the other; empty when no text can say so: what switches off
/// would switch off the other's hours too, wherever it stands behind them.
std::string either(std::string_view a, std::string_view b) {
  const std::string first = as_clauses(a), second = as_clauses(b);
  if (!switches_off(second)) return first + "; " + second;
  return switches_off(first) ? std::string() : second + "; " + first;
}

std::string double_line_tag(const Tags& tags) {
  constexpr std::array<std::string_view, 3> one_side_at_least{"no", "forward", "backward"};
  if (one_of(tags.get("overtaking"), one_side_at_least)) return tag_text(tags, "overtaking");
  constexpr std::array<std::string_view, 2> directions{"overtaking:forward", "overtaking:backward"};
  for (const std::string_view key : directions)
    if (tags.is(key, "no")) return tag_text(tags, key);
  return {};
}

}  // namespace

void add_hours(Kerb& kerb, std::string_view hours, std::string_view source) {
  if (hours.empty() || hours == "24/7") {
    kerb.forbidden_by = source;
  } else if (kerb.hours.empty()) {
    kerb.hours = hours;
  } else if (kerb.hours != hours) {
    const std::string joined = either(kerb.hours, hours);
    if (joined.empty()) kerb.forbidden_by = source;
    kerb.hours = joined;
  }
}

road::LaneSide near_side(Side side, StretchId stretch) {
  const bool left = (side == Side::left) != stretch.against();
  return left ? road::LaneSide::left : road::LaneSide::right;
}

Kerb kerb_of(const Tags& tags, road::LaneSide lane_side) {
  const std::string_view side = word(lane_side);
  Kerb kerb;
  if (has_key_with(tags, "parking:") && !add_today(kerb, tags, side))
    add_before_2022(kerb, tags, side);
  if (kerb.forbidden_by.empty() && has_key_with(tags, "cycleway"))
    kerb.forbidden_by = cycle_lane_tag(tags, side);
  if (kerb.forbidden_by.empty()) kerb.forbidden_by = double_line_tag(tags);
  return kerb;
}

}  // namespace loopwright::mark
