// 1. Cut at ';' outside brackets and quotes.
// 2. A piece with '@' begins a clause; one without is glued back on to the clause before. What of
//    ';' and blanks is left at the end of a clause is passed over, as in hours.
// 3. Cut each clause at its first '@'; brackets that hold the whole condition come off.
// 4. Of the clauses whose conditions hold the last wins; one that nobody can tell may win too, so
//    both what held before it and its own value stay possible.
// Source: OSM wiki Conditional restrictions.
#include <algorithm>
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

/// "1 @ Mo" of "1 @ Mo; ;".
std::string_view without_end(std::string_view text) {
  text = trim(text);
  while (text.ends_with(';')) text = trim(text.substr(0, text.size() - 1));
  return text;
}

Clause clause_of(std::string_view text) {
  text = without_end(text);
  const std::size_t at = text.find('@');
  if (at == std::string_view::npos) return {std::string(trim(text)), {}};
  return {std::string(trim(text.substr(0, at))),
          std::string(without_brackets(trim(text.substr(at + 1))))};
}

/// Goes along a text from part to part.
class Along {
 public:
  explicit Along(std::string_view text) : text_(text) {}
  /// Where the part begins, at or behind the end of the part before; the end when it isn't there.
  std::size_t find(std::string_view part) {
    const std::size_t at = std::min(text_.find(part, at_), text_.size());
    at_ = std::min(at + part.size(), text_.size());
    return at;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

/// The first part of a condition that can't be read.
std::optional<Unread> unread_in(const Condition& condition, Along& along) {
  for (const ConditionPart& part : condition.parts()) {
    const std::size_t at = along.find(part.text);
    if (part.kind == PartKind::other) {
      return Unread{at, "hours, a user, a property or a state of the road"};
    }
    if (part.kind == PartKind::hours && !part.hours.readable()) {
      return Unread{at + part.hours.stopped_at(), part.hours.problem()};
    }
  }
  return std::nullopt;
}

std::optional<Unread> unread_in(std::string_view text, const std::vector<Conditional::Row>& rows) {
  if (rows.empty()) return Unread{text.size(), "@ and a condition"};
  Along along(text);
  for (const Conditional::Row& row : rows) {
    const std::size_t value = along.find(row.value), at = along.find("@");
    if (row.value.empty()) return Unread{at, "a value before @"};
    const bool has_sign = text.substr(value, at - value).find(';') == std::string_view::npos;
    if (at == text.size() || !has_sign) {
      return Unread{value + row.value.size(), "@ and a condition"};
    }
    if (row.condition.text().empty()) return Unread{at + 1, "a condition after @"};
    if (auto unread = unread_in(row.condition, along)) return unread;
  }
  return std::nullopt;
}

/// A conditional in a setting, for walking.
struct AskedRule {
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
  std::vector<Conditional::Row>& rows = conditional.rows_;
  rows.reserve(clauses.size());
  for (const Clause& clause : clauses) rows.push_back({clause.value, Condition(clause.condition)});
  conditional.unread_ = unread_in(text, rows);
  if (rows.size() > most) rows.erase(rows.begin(), rows.end() - most);
  return conditional;
}

bool Conditional::never_changes() const {
  return std::ranges::all_of(rows_, [](const Row& row) { return row.condition.never_changes(); });
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
      possible.holiday_days = answer.holiday_days;
    }
  }
  return possible;
}

Possible Conditional::through(const Instant& from, const Instant& to, const Setting& setting,
                              const Circumstances& about) const {
  assert(from.unix_s <= to.unix_s);
  std::optional<Possible> all;
  along(AskedRule{*this, setting, about}, from, to, setting,
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
  return first_moment(AskedRule{*this, setting, about}, at_moment, setting, ahead_days,
                      [now](const Possible& possible) { return possible.bits != now; });
}

CivilTime Conditional::next_look(const CivilTime& at, const Setting& setting) const {
  CivilTime next{date_from_days(days_since_epoch(at.date) + 1), 0, 0, 0};
  for (const Row& row : rows_) next = std::min(next, row.condition.next_look(at, setting));
  return next;
}

}  // namespace loopwright::hours
