// 1. Cut at ';' outside brackets and quotes.
// 2. A piece with '@' begins a clause; one without is glued back on to the clause before.
// 3. Cut each clause at its first '@'; brackets that hold the whole condition come off.
// 4. Of the clauses whose conditions hold the last wins; one that nobody can tell may win too, so
//    both what held before it and its own value stay possible.
// Source: OSM wiki Conditional restrictions.
#include <cassert>

#include "hours/brackets.hpp"
#include "hours/walk.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/condition.hpp"

namespace loopwright::hours {
namespace {

std::vector<std::string_view> pieces_of(std::string_view text) {
  std::vector<std::string_view> pieces;
  Depth depth;
  std::size_t start = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!depth.outside(text[i]) || text[i] != ';') continue;
    pieces.push_back(text.substr(start, i - start));
    start = i + 1;
  }
  pieces.push_back(text.substr(start));
  return pieces;
}

Clause clause_of(std::string_view text) {
  const std::size_t at = text.find('@');
  if (at == std::string_view::npos) return {std::string(trim(text)), {}};
  return {std::string(trim(text.substr(0, at))),
          std::string(without_brackets(trim(text.substr(at + 1))))};
}

/// A conditional in a setting, for walking.
struct Asked {
  const Conditional& conditional;
  const Setting& setting;
  const Circumstances& about;
  [[nodiscard]] Possible ask(const CivilTime& at) const {
    return conditional.at(at, setting, about);
  }
  [[nodiscard]] CivilTime next_look(const CivilTime& at) const {
    return conditional.next_look(at, setting);
  }
};

}  // namespace

std::vector<Clause> split_conditional(std::string_view text) {
  if (text.find('@') == std::string_view::npos) return {};
  std::vector<std::string> clauses;
  for (const std::string_view piece : pieces_of(text)) {
    if (clauses.empty() || piece.find('@') != std::string_view::npos) {
      clauses.emplace_back(piece);
    } else {
      clauses.back().append(";").append(piece);
    }
  }
  std::vector<Clause> result;
  for (const std::string& clause : clauses) result.push_back(clause_of(clause));
  return result;
}

Conditional read_conditional(std::string_view base, std::string_view text) {
  constexpr std::size_t most = 62;
  Conditional conditional;
  conditional.base_ = base;
  const std::vector<Clause> clauses = split_conditional(text);
  const std::size_t first = clauses.size() > most ? clauses.size() - most : 0;
  for (std::size_t k = first; k < clauses.size(); ++k) {
    conditional.rows_.push_back({clauses[k].value, Condition(clauses[k].condition)});
  }
  return conditional;
}

Possible Conditional::at(const CivilTime& at, const Setting& setting,
                         const Circumstances& about) const {
  Possible possible;
  for (std::size_t k = 0; k < rows_.size(); ++k) {
    const Answer answer = rows_[k].condition.at(at, setting, about);
    if (answer.in_force == Tri::no && answer.reason != Reason::holiday) continue;
    if (answer.in_force == Tri::yes) possible.bits = 0;
    if (answer.in_force != Tri::no) possible.bits |= std::uint64_t{1} << (k + 1);
    if (answer.in_force == Tri::yes || possible.reason == Reason::stated ||
        possible.reason == Reason::holiday) {
      possible.reason = answer.reason;
    }
  }
  return possible;
}

Possible Conditional::through(const Instant& from, const Instant& to, const Setting& setting,
                              const Circumstances& about) const {
  assert(from.unix_s <= to.unix_s);
  std::optional<Possible> all;
  along(Asked{*this, setting, about}, from, to, setting,
        [&](const Possible& possible, const Instant&) {
          if (all && all->bits != possible.bits) {
            if (all->settled() && possible.settled()) all->reason = Reason::changes;
            if (!possible.settled()) all->reason = possible.reason;
            all->bits |= possible.bits;
          } else if (!all) {
            all = possible;
          }
          return true;
        });
  return *all;
}

std::optional<Instant> Conditional::next_change(const Instant& at_moment, const Setting& setting,
                                                const Circumstances& about, int ahead_days) const {
  if (rows_.empty()) return std::nullopt;
  const std::uint64_t now = at(setting.on_clock(at_moment).civil(), setting, about).bits;
  return first_moment(Asked{*this, setting, about}, at_moment, setting, ahead_days,
                      [now](const Possible& possible) { return possible.bits != now; });
}

CivilTime Conditional::next_look(const CivilTime& at, const Setting& setting) const {
  CivilTime next{date_from_days(days_since_epoch(at.date) + 1), 0, 0, 0};
  for (const Row& row : rows_) next = std::min(next, row.condition.next_look(at, setting));
  return next;
}

}  // namespace loopwright::hours
