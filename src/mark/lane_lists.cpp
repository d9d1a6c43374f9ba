// 1. A key's plain value is split at '|', each clause of its conditional likewise; one without '@' can't
//    be read, and is kept as such.
// 2. Of several words in one place ("no;private") none may let in for it to be shut; words of which
//    some let in and others don't contradict each other.
// 3. Clauses of several keys are put one behind the other, the most special last, since the last that
//    holds wins.
// Source: OSM wiki, pages Key:bus:lanes, Key:access (order of the modes), Conditional restrictions.
#include "lane_lists.hpp"

#include <algorithm>
#include <array>

#include "loopwright/base/text.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

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

/// Words of which one lets in and another doesn't.
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

/// The key that a place has its plain value from; the end when none has one.
auto base_list(const LaneLists& lists, std::size_t lane) {
  return std::ranges::find_if(lists, [&](const auto& l) { return !place(l.base, lane).empty(); });
}

}  // namespace

LaneLists lane_lists(const Tags& tags, std::span<const std::string_view> modes,
                     std::string_view suffix) {
  LaneLists lists;
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

std::size_t lane_count(const LaneLists& lists) {
  std::size_t count = 0;
  for (const LaneList& list : lists) {
    count = std::max(count, list.base.size());
    for (const ListClause& clause : list.clauses) count = std::max(count, clause.values.size());
  }
  return count;
}

std::string_view base_of(const LaneLists& lists, std::size_t lane) {
  const auto list = base_list(lists, lane);
  return list == lists.end() ? std::string_view() : place(list->base, lane);
}

OnHours hours_of(const LaneLists& lists, std::size_t lane, std::string_view value) {
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

bool has_clauses(const LaneLists& lists) {
  return std::ranges::any_of(lists, [](const LaneList& list) { return !list.clauses.empty(); });
}

bool lets(const LaneLists& lists, std::size_t lane) {
  const auto open = [](std::string_view value) {
    return says(value, "designated") || says(value, "yes");
  };
  if (open(base_of(lists, lane))) return true;
  return std::ranges::any_of(lists, [&](const LaneList& list) {
    return std::ranges::any_of(list.clauses,
                               [&](const ListClause& c) { return open(place(c.values, lane)); });
  });
}

std::string source_of(const Tags& tags, const LaneLists& lists) {
  for (const LaneList& list : lists) {
    if (!list.clauses.empty()) return tag_text(tags, list.key + ":conditional");
  }
  return lists.empty() ? std::string() : tag_text(tags, lists.front().key);
}

std::string base_tag(const Tags& tags, const LaneLists& lists, std::size_t lane) {
  const auto list = base_list(lists, lane);
  return tag_text(tags, list == lists.end() ? lists.front().key : list->key);
}

std::string timed_key(const LaneLists& lists) {
  const auto list = std::ranges::find_if(lists, [](const auto& l) { return !l.clauses.empty(); });
  return list == lists.end() ? std::string() : list->key + ":conditional";
}

std::string mixed_tag(const Tags& tags, const LaneLists& lists, std::size_t lane) {
  for (const LaneList& list : lists) {
    if (is_mixed(place(list.base, lane))) return tag_text(tags, list.key);
    for (const ListClause& clause : list.clauses)
      if (is_mixed(place(clause.values, lane))) return tag_text(tags, list.key + ":conditional");
  }
  return {};
}

}  // namespace loopwright::mark
