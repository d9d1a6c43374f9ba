// Method: src/rules/skills.txt is read once, row by row; a group holds for the skills below it.
#include "loopwright/book/scheme.hpp"

#include <algorithm>
#include <cassert>
#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::book {
namespace {

[[noreturn]] void odd(const TableRow& row) {
  throw std::logic_error("skills.txt: the row '" + std::string(row[0]) + " | " +
                         std::string(row.size() > 1 ? row[1] : "") + "' is odd");
}

Skill read_skill(const TableRow& row, std::string_view group) {
  if (row.size() != 7) odd(row);
  Skill skill{row[2],
              row[3],
              group,
              static_cast<int>(number_cell(row, 4)),
              static_cast<int>(number_cell(row, 5)),
              {}};
  if (row[6] == "-") return skill;
  for (const std::string_view name : split(row[6], ',')) {
    const auto kind = road::parse_kind(name);
    if (!kind) odd(row);
    skill.kinds.push_back(*kind);
  }
  return skill;
}

Scheme read_scheme(const TableRow& row) {
  const auto since = row.size() == 5 ? read_date(row[2]) : std::nullopt;
  if (!since) odd(row);
  return {row[1], row[4], row[3] == "-" ? std::string_view() : row[3], *since, {}, {}};
}

std::vector<Scheme> read_schemes() {
  std::vector<Scheme> all;
  std::string_view group;
  for (const TableRow& row : read_table(rule_text("skills"))) {
    if (row[0] == "scheme") {
      all.push_back(read_scheme(row));
      continue;
    }
    if (all.empty() || row.size() < 3 || row[1] != all.back().code) odd(row);
    if (row[0] == "group") group = row[2];
    if (row[0] == "level") all.back().level_names.push_back(row.at(3));
    if (row[0] == "skill") all.back().skills.push_back(read_skill(row, group));
  }
  return all;
}

}  // namespace

const Skill* Scheme::skill(std::string_view skill_code) const {
  const auto found = std::find_if(skills.begin(), skills.end(),
                                  [&](const Skill& one) { return one.code == skill_code; });
  return found == skills.end() ? nullptr : &*found;
}

const Skill* Scheme::skill_of(road::Kind kind) const {
  const auto found = std::find_if(skills.begin(), skills.end(), [&](const Skill& one) {
    return std::find(one.kinds.begin(), one.kinds.end(), kind) != one.kinds.end();
  });
  return found == skills.end() ? nullptr : &*found;
}

std::string_view Scheme::level_name(int level) const {
  assert(level >= lowest_level && level <= highest_level);
  return level_names.at(static_cast<std::size_t>(level - 1));
}

std::span<const Scheme> schemes() {
  static const std::vector<Scheme> all = read_schemes();
  return all;
}

const Scheme* find_scheme(std::string_view code) {
  for (const Scheme& scheme : schemes())
    if (scheme.code == code) return &scheme;
  return nullptr;
}

const Scheme& scheme_of(std::string_view region, Date day) {
  const Scheme* best = nullptr;
  for (const Scheme& scheme : schemes()) {
    if (scheme.since > day || (!scheme.region.empty() && scheme.region != region)) continue;
    const bool closer = best == nullptr || (best->region.empty() && !scheme.region.empty());
    const bool as_close = best != nullptr && best->region.empty() == scheme.region.empty();
    if (closer || (as_close && scheme.since > best->since)) best = &scheme;
  }
  return best != nullptr ? *best : schemes().front();
}

}  // namespace loopwright::book
