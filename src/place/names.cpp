// 1. For each three letters of the key, the names that have them; each name counts how many of the
//    key's it has. An edit spoils at most four (a swap of neighbours), so a name with fewer than all
//    but four for each edit allowed can't be near enough. A third of them will do for a hint.
// 2. Of those with most, the edits are counted letter by letter.
// 3. Nearest spelling first; names of which the key is a part come after those near enough.
#include <algorithm>
#include <tuple>

#include "loopwright/place/spelling.hpp"
#include "place/index.hpp"

namespace loopwright::place {
namespace {

// Ours. Names that share most letters, of which edits are counted; and how many are handed on.
constexpr std::size_t most_compared = 600, most_given = 100;
constexpr std::size_t trigrams_spoilt_by_an_edit = 4;

std::size_t least_shared(std::string_view key, std::size_t trigrams) {
  const std::size_t spoilt =
      trigrams_spoilt_by_an_edit * static_cast<std::size_t>(allowed_edits(key));
  const std::size_t for_a_hint = (trigrams + 2) / 3;
  return trigrams > spoilt ? std::min(trigrams - spoilt, for_a_hint) : 1;
}

/// Names that differ in spaces only ("Pen-y-Lan", "Penylan") become one.
void merge_same(std::vector<Name>& names) {
  std::ranges::stable_sort(names, {}, [](const Name& name) {
    return std::tuple(squeezed(name.key), name.sort, name.key);
  });
  std::vector<Name> merged;
  for (Name& name : names) {
    const bool same = !merged.empty() && merged.back().sort == name.sort &&
                      squeezed(merged.back().key) == squeezed(name.key);
    if (!same) {
      merged.push_back(std::move(name));
      continue;
    }
    std::vector<std::uint32_t>& rows = merged.back().rows;
    rows.insert(rows.end(), name.rows.begin(), name.rows.end());
    std::ranges::sort(rows);
  }
  names = std::move(merged);
}

bool is_name_sort(std::int64_t number) {
  return number >= 0 && number <= static_cast<std::int64_t>(NameSort::spot);
}

}  // namespace

Names::Names(std::span<const char> index)
    : database_(Database::over(index)),
      with_trigram_(database_, "SELECT rowid FROM spelling WHERE spelling MATCH ?"),
      name_by_id_(database_, "SELECT key, sort, rows FROM name WHERE id = ?") {}

std::vector<std::int64_t> Names::ids_like(std::string_view key) const {
  const std::vector<std::string> wanted = trigrams(key);
  std::vector<std::int64_t> hits;
  for (const std::string& trigram : wanted) {
    with_trigram_.restart();
    with_trigram_.bind(1, "\"" + trigram + "\"");
    while (with_trigram_.next()) hits.push_back(with_trigram_.number(0));
  }
  std::ranges::sort(hits);
  std::vector<std::pair<std::size_t, std::int64_t>> counted;  // shared letters, id
  for (auto at = hits.begin(); at != hits.end();) {
    const auto end = std::upper_bound(at, hits.end(), *at);
    counted.emplace_back(static_cast<std::size_t>(end - at), *at);
    at = end;
  }
  const std::size_t least = least_shared(key, wanted.size());
  std::erase_if(counted, [least](const auto& hit) { return hit.first < least; });
  std::ranges::sort(counted, {}, [](const auto& hit) {
    return std::pair(-static_cast<std::int64_t>(hit.first), hit.second);
  });
  counted.resize(std::min(counted.size(), most_compared));
  std::vector<std::int64_t> ids;
  for (const auto& hit : counted) ids.push_back(hit.second);
  return ids;
}

std::vector<Name> Names::like(std::string_view key) const {
  std::vector<Name> names;
  const std::string letters = squeezed(key);
  for (const std::int64_t id : ids_like(key)) {
    name_by_id_.restart();
    name_by_id_.bind(1, id);
    if (!name_by_id_.next() || !is_name_sort(name_by_id_.number(1))) continue;
    Name name{std::string(name_by_id_.text(0)), static_cast<NameSort>(name_by_id_.number(1)), 0,
              unpacked(name_by_id_.blob(2))};
    name.edits = edits_between(letters, squeezed(name.key));
    names.push_back(std::move(name));
  }
  merge_same(names);
  const int allowed = allowed_edits(key);
  std::ranges::sort(names, {}, [&](const Name& name) {
    const int group = name.edits <= allowed ? 0 : is_part_of(key, name.key) ? 1 : 2;
    return std::tuple(group, name.edits, name.key, name.sort);
  });
  if (names.size() > most_given) names.resize(most_given);
  return names;
}

}  // namespace loopwright::place
