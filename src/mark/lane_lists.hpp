// Keys with a value for each lane, from left to right as one drives: "no|yes", and "no|yes @ (Mo-Fr …)".
//
//   const auto cars = lane_lists(tags, std::array<std::string_view, 2>{"motorcar", "access"}, ":forward");
//   hours_of(cars, 0, "no").text == "Mo-Fr 07:00-10:00"
//
// Rules: private to mark. Several modes are one answer: the first key that fills a place gives its plain
// value, and of clauses that hold together the most special key's wins, as on whole roads (access_tree.cpp).
// The lists point into the tags, which outlive them. A place that isn't there says nothing.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/on_hours.hpp"
#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

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
using LaneLists = std::vector<LaneList>;

/// The keys of some modes, most special first, for one suffix; absent ones are left out.
LaneLists lane_lists(const Tags& tags, std::span<const std::string_view> modes,
                     std::string_view suffix);

std::size_t lane_count(const LaneLists& lists);
bool has_clauses(const LaneLists& lists);

/// The plain value of a place; empty when no key gives it one.
std::string_view base_of(const LaneLists& lists, std::size_t lane);
/// Whether a place is open to those of the keys, at some time.
bool lets(const LaneLists& lists, std::size_t lane);
/// The hours at which a place has a value. A clause of a less special key than the plain one counts only
/// when it says that value.
OnHours hours_of(const LaneLists& lists, std::size_t lane, std::string_view value);

/// The key that tells most, as a tag: one with hours before one without; empty without any key.
std::string source_of(const Tags& tags, const LaneLists& lists);
/// The tag that a place has its plain value from; the first key when none has one. Rules: there is a key.
std::string base_tag(const Tags& tags, const LaneLists& lists, std::size_t lane);
/// The first key with clauses, "…:conditional"; empty when none has any.
std::string timed_key(const LaneLists& lists);
/// The tag whose words for a place contradict each other ("no;yes"); empty when none do.
std::string mixed_tag(const Tags& tags, const LaneLists& lists, std::size_t lane);

}  // namespace loopwright::mark
