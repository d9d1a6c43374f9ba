// Second family: a value for each lane, from left to right as one drives.
//
// 1. bus:lanes, its empty or missing places filled from psv:lanes; what cars may do from
//    motorcar:lanes, motor_vehicle:lanes, vehicle:lanes, access:lanes (the first that fills a
//    place). All with :forward and :backward, and with :conditional.
// 2. A place where cars are "no" and buses may drive is a bus lane; the hours are those of the ban
//    on cars. When only the bus key has hours they are taken, in doubt.
// 3. Without any key for cars, "designated" for buses is taken as a bus lane: by the wiki it forbids
//    nobody, so without hours it is in doubt. Cars "yes" at all times: no bus lane.
// 4. Who may use it: every mode whose key says "yes" or "designated" there.
// 5. The first place is the left side, the last the right; on a two-way road without a suffix
//    neither direction nor side is known.
// 6. Clauses of several keys are ranked as those of whole roads are (access_tree.cpp): of those that
//    hold together the most special key's wins, and one of a less special key than the plain value
//    of that place frees no lane, but may reserve it.
// 7. Of several words in one place ("no;private") none may let cars in for it to be shut, and one
//    that says designated keeps it for buses; words that contradict each other, and a conditional
//    without '@', can't be read: a lane in doubt, without hours.
// Source: OSM wiki, pages Bus lanes, Key:bus:lanes, Key:access (order of the modes).
#include <algorithm>
#include <array>

#include "bus_lane_families.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/condition.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

constexpr std::array<std::string_view, 2> bus_modes{"bus", "psv"};
constexpr std::array<std::string_view, 4> car_modes{"motorcar", "motor_vehicle", "vehicle",
                                                    "access"};

constexpr std::array<std::string_view, 7> lane_modes{"bus",        "psv",   "taxi", "bicycle",
                                                     "motorcycle", "moped", "hgv"};
constexpr std::size_t most_lanes = 20;  // a list of more is no list of lanes

/// One clause with a value for each lane.
struct ListClause {
  std::vector<std::string_view> values;
  std::string condition;
};

/// One key, parsed: values without condition, and clauses.
struct LaneList {
  std::string key;
  std::vector<std::string_view> base;
  std::vector<ListClause> clauses;
  std::vector<hours::Clause> texts;  ///< what the clauses' values point into
  std::string unread;                ///< a conditional without '@', as a tag; else empty
};

/// "(designated|yes)" as the list that it is.
std::vector<std::string_view> places_of(std::string_view text) {
  text = trim(text);
  if (text.starts_with('(') && text.ends_with(')')) text = text.substr(1, text.size() - 2);
  return split(text, '|');
}

bool opens(std::string_view word) {
  constexpr std::array<std::string_view, 5> words{"yes", "designated", "permissive", "official",
                                                  "none"};
  return one_of(word, words);
}

/// Step 7: words of which one lets in and another doesn't.
bool is_mixed(std::string_view value) {
  const auto words = split(value, ';');
  const auto opening = std::ranges::count_if(words, opens);
  return opening > 0 && opening < std::ssize(words);
}

/// Whether the words of a place say a value; "no" is said by any that doesn't let all in ("private").
bool says(std::string_view at, std::string_view value) {
  const auto words = split(at, ';');
  if (value != "no") return std::ranges::find(words, value) != words.end();
  return std::ranges::any_of(words, [](std::string_view word) { return !opens(word); });
}

std::string_view place(const std::vector<std::string_view>& values, std::size_t lane) {
  return lane < values.size() ? values[lane] : std::string_view();
}

/// The keys of some modes for one suffix, most special first; absent ones are left out.
template <std::size_t Count>
std::vector<LaneList> lists_of(const Tags& tags, const std::array<std::string_view, Count>& modes,
                               std::string_view suffix) {
  std::vector<LaneList> lists;
  for (const std::string_view mode : modes) {
    LaneList list;
    list.key = std::string(mode) + ":lanes" + std::string(suffix);
    if (tags.has(list.key)) list.base = split(tags.get(list.key), '|');
    list.texts = hours::split_conditional(tags.get(list.key + ":conditional"));
    for (const hours::Clause& text : list.texts) {
      list.clauses.push_back({places_of(text.value), text.condition});
    }
    if (list.texts.empty()) list.unread = tag_text(tags, list.key + ":conditional");
    if (!list.base.empty() || !list.clauses.empty() || !list.unread.empty())
      lists.push_back(std::move(list));
  }
  return lists;
}

std::size_t lane_count(const std::vector<LaneList>& lists) {
  std::size_t count = 0;
  for (const LaneList& list : lists) {
    count = std::max(count, list.base.size());
    for (const ListClause& clause : list.clauses) count = std::max(count, clause.values.size());
  }
  return count;
}

/// The key that a place has its plain value from; the end when none has one.
auto base_list(const std::vector<LaneList>& lists, std::size_t lane) {
  return std::ranges::find_if(lists, [&](const auto& l) { return !place(l.base, lane).empty(); });
}

std::string_view base_of(const std::vector<LaneList>& lists, std::size_t lane) {
  const auto list = base_list(lists, lane);
  return list == lists.end() ? std::string_view() : place(list->base, lane);
}

/// The hours at which a place has a value, over all keys, the most special last since it wins. A
/// clause of a less special key than the plain one counts only when it keeps cars out (step 6).
OnHours hours_of(const std::vector<LaneList>& lists, std::size_t lane, std::string_view value) {
  const auto base = base_list(lists, lane);
  std::vector<OnClause> clauses;
  for (auto list = lists.end(); list != lists.begin();) {
    const bool special = --list <= base;
    for (const ListClause& clause : list->clauses) {
      const std::string_view at = place(clause.values, lane);
      if (!at.empty() && (special || says(at, value)))
        clauses.push_back({says(at, value), clause.condition});
    }
  }
  const std::string_view plain = base_of(lists, lane);
  return on_hours(!plain.empty() && says(plain, value), clauses);
}

bool has_clauses(const std::vector<LaneList>& lists) {
  return std::ranges::any_of(lists, [](const LaneList& list) { return !list.clauses.empty(); });
}

/// Whether a place is open to those of the keys, at some time.
bool lets(const std::vector<LaneList>& lists, std::size_t lane) {
  const auto open = [](std::string_view value) {
    return says(value, "designated") || says(value, "yes");
  };
  if (open(base_of(lists, lane))) return true;
  return std::ranges::any_of(lists, [&](const LaneList& list) {
    return std::ranges::any_of(list.clauses,
                               [&](const ListClause& c) { return open(place(c.values, lane)); });
  });
}

std::string who_uses(const LaneRoad& road, std::string_view suffix, std::size_t lane) {
  std::string who;
  for (const std::string_view mode : lane_modes) {
    const std::array<std::string_view, 1> alone{mode};
    if (!lets(lists_of(road.tags, alone, suffix), lane)) continue;
    who.append(who.empty() ? "" : ";").append(mode);
  }
  return who;
}

/// The key that tells most: one with hours before one without.
std::string source_of(const Tags& tags, const std::vector<LaneList>& lists) {
  for (const LaneList& list : lists) {
    if (!list.clauses.empty()) return tag_text(tags, list.key + ":conditional");
  }
  return lists.empty() ? std::string() : tag_text(tags, lists.front().key);
}

/// The tag that a place has its plain value from; the first key when none has one.
std::string base_tag(const Tags& tags, const std::vector<LaneList>& lists, std::size_t lane) {
  const auto list = base_list(lists, lane);
  return tag_text(tags, list == lists.end() ? lists.front().key : list->key);
}

std::string timed_key(const std::vector<LaneList>& lists) {
  const auto list = std::ranges::find_if(lists, [](const auto& l) { return !l.clauses.empty(); });
  return list == lists.end() ? std::string() : list->key + ":conditional";
}

/// What one suffix says of its lanes.
struct Lists {
  const Tags& tags;
  std::vector<LaneList> buses, cars;
};

struct Judged {
  OnHours when;
  std::string doubt;
  bool alone = false;
};

/// Step 3.
Judged judge_by_buses(const Lists& lists, std::size_t lane) {
  Judged judged{hours_of(lists.buses, lane, "designated"), {}, false};
  const std::string plain = base_tag(lists.tags, lists.buses, lane);
  if (judged.when.doubtful) {
    judged.doubt = always_but(plain, timed_key(lists.buses), judged.when.text);
  } else if (!has_clauses(lists.buses)) {
    judged.doubt = plain + " shuts nobody else out", judged.alone = true;
  }
  return judged;
}

/// Step 2.
Judged judge_place(const Lists& lists, std::size_t lane) {
  if (lists.cars.empty()) return judge_by_buses(lists, lane);
  Judged judged{hours_of(lists.cars, lane, "no"), {}, false};
  judged.when.ever = judged.when.ever && lets(lists.buses, lane);
  const std::string plain = base_tag(lists.tags, lists.cars, lane);
  if (judged.when.doubtful)
    judged.doubt = always_but(plain, timed_key(lists.cars), judged.when.text);
  const OnHours by_bus = hours_of(lists.buses, lane, "designated");
  if (judged.when.text.empty() && !by_bus.text.empty()) {
    judged.when.text = by_bus.text;
    judged.doubt = always_but(plain, timed_key(lists.buses), by_bus.text);
  }
  return judged;
}

/// Step 7: the tag whose words for a place contradict each other; empty when none do.
std::string mixed_tag(const Tags& tags, const std::vector<LaneList>& lists, std::size_t lane) {
  for (const LaneList& list : lists) {
    if (is_mixed(place(list.base, lane))) return tag_text(tags, list.key);
    for (const ListClause& clause : list.clauses)
      if (is_mixed(place(clause.values, lane))) return tag_text(tags, list.key + ":conditional");
  }
  return {};
}

/// The first tag that can't be read for a place; empty when all can be.
std::string unread_tag(const Lists& lists, std::size_t lane) {
  for (const auto* side : {&lists.cars, &lists.buses}) {
    if (std::string tag = mixed_tag(lists.tags, *side, lane); !tag.empty()) return tag;
    for (const LaneList& list : *side)
      if (!list.unread.empty()) return list.unread;
  }
  return {};
}

/// What can't be read leaves a lane without hours.
void doubt_unread(Judged& judged, const Lists& lists, std::size_t lane) {
  const std::string tag = unread_tag(lists, lane);
  if (tag.empty()) return;
  judged.when.text.clear(), judged.alone = false;
  judged.doubt = not_readable(tag);
}

/// The lane, nobody knows which, of lists that have none but for a tag that can't be read.
std::vector<BusLaneFact> unread_lane(const LaneRoad& road, const Lists& lists,
                                     std::string_view suffix) {
  const std::size_t behind_all = std::max(lane_count(lists.buses), lane_count(lists.cars));
  BusLaneFact fact;
  fact.source = unread_tag(lists, behind_all);
  if (fact.source.empty()) return {};
  fact.direction = direction_of_suffix(suffix, road.one_way);
  fact.contraflow = is_contraflow(fact.direction, road.one_way);
  fact.who = lists.buses.front().key.substr(0, 3);
  fact.doubt = not_readable(fact.source);
  return {fact};
}

LaneSide side_of(std::size_t lane, std::size_t count) {
  if (count < 2) return LaneSide::unknown;
  if (lane == 0) return LaneSide::left;
  return lane + 1 == count ? LaneSide::right : LaneSide::unknown;
}

std::vector<BusLaneFact> with_suffix(const LaneRoad& road, std::string_view suffix) {
  const Lists lists{road.tags, lists_of(road.tags, bus_modes, suffix),
                    lists_of(road.tags, car_modes, suffix)};
  if (lists.buses.empty()) return {};
  const std::size_t count = std::max(lane_count(lists.buses), lane_count(lists.cars));
  // Without a suffix places run along the way's nodes; only traffic that does so sees them so.
  const bool sides_known = !suffix.empty() || (road.one_way.one_way && road.one_way.along);
  std::vector<BusLaneFact> facts;
  for (std::size_t lane = 0; lane < count; ++lane) {
    Judged judged = judge_place(lists, lane);
    if (!judged.when.ever) continue;
    doubt_unread(judged, lists, lane);
    BusLaneFact fact;
    fact.direction = direction_of_suffix(suffix, road.one_way);
    fact.contraflow = is_contraflow(fact.direction, road.one_way);
    if (sides_known && count <= most_lanes) {
      fact.side = side_of(lane, count);
      fact.lane = static_cast<std::uint8_t>(lane + 1),
      fact.lanes = static_cast<std::uint8_t>(count);
    }
    fact.hours = std::move(judged.when.text);
    fact.doubt = std::move(judged.doubt), fact.alone = judged.alone;
    fact.who = who_uses(road, suffix, lane);
    fact.source = source_of(road.tags, has_clauses(lists.cars) ? lists.cars : lists.buses);
    facts.push_back(std::move(fact));
  }
  return facts.empty() ? unread_lane(road, lists, suffix) : facts;
}

/// Every lane of the lists says yes, and no clause ever says otherwise.
bool open_everywhere(const std::vector<LaneList>& lists) {
  if (lists.empty() || has_clauses(lists) || lane_count(lists) == 0) return false;
  for (std::size_t lane = 0; lane < lane_count(lists); ++lane) {
    const std::string_view value = base_of(lists, lane);
    if (value != "yes" && value != "designated" && value != "permissive") return false;
  }
  return true;
}

}  // namespace

std::string cars_in_every_lane(const LaneRoad& road, LaneDirection direction) {
  for (const std::string_view suffix : lane_suffixes) {
    if (direction_of_suffix(suffix, road.one_way) != direction) continue;
    const auto cars = lists_of(road.tags, car_modes, suffix);
    if (open_everywhere(cars)) return tag_text(road.tags, cars.front().key);
  }
  return {};
}

std::vector<BusLaneFact> listed_bus_lanes(const LaneRoad& road) {
  std::vector<BusLaneFact> facts;
  for (const std::string_view suffix : lane_suffixes) {
    for (BusLaneFact& fact : with_suffix(road, suffix)) facts.push_back(std::move(fact));
  }
  return facts;
}

}  // namespace loopwright::mark
