// Method: facts are looked up one by one; of those at one place the worst is told. A later sighting takes an earlier one's
// place, a log of an older lesson doesn't.
#include "loopwright/book/seen.hpp"

#include <algorithm>
#include <stdexcept>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::book {
namespace {

/// How long a fact counts.
struct SeenRule {
  int days = 0;
  std::string why;
};

/// The row of seen.txt that a fact belongs to.
std::string_view row_name(const wish::MapFact& fact) {
  const std::string_view what = fact.what;
  if (what.starts_with("hours ")) return "hours";
  return what.starts_with("limit ") ? "limit" : "place";
}

SeenRule rule_for(const wish::MapFact& fact) {
  for (const TableRow& row : read_table(rule_text("seen")))
    if (row[0] == row_name(fact))
      return {static_cast<int>(number_cell(row, 1)), std::string(row.at(2))};
  throw std::logic_error("seen.txt: no row for '" + fact.what + "'");
}

std::int64_t days_between(Date day, Date today) {
  return days_since_epoch(today) - days_since_epoch(day);
}

SeenNow of_fact(const wish::MapFact& fact, const SeenFacts& all, Date today) {
  const auto found = all.find({fact.what, fact.object});
  if (found == all.end()) return {SeenState::never, {}, {}, {}};
  const SeenFact& seen = found->second;
  if (seen.fact.map_text != fact.map_text) return {SeenState::changed, seen.day, {}, {}};
  if (!seen.says.empty() && !fact.map_text.empty())
    return {SeenState::otherwise, seen.day, seen.says, {}};
  const SeenRule rule = rule_for(fact);
  if (days_between(seen.day, today) > rule.days)
    return {SeenState::long_ago, seen.day, seen.says, rule.why};
  return {SeenState::seen, seen.day, seen.says, {}};
}

std::string listed_letters(std::span<const LetteredFact> on_sheet) {
  std::vector<std::string> letters;
  for (const LetteredFact& one : on_sheet)
    if (letters.empty() || letters.back() != one.letter) letters.push_back(one.letter);
  return listed(letters);
}

}  // namespace

SeenFacts seen_facts(const Book& book) {
  return book.connection().read([&](Database& db) {
    SeenFacts all;
    for (auto row = ask(db, "SELECT what, object, map_text, day, says FROM seen"); row.next();) {
      // On a school's server anybody may have written it: an odd one isn't one, and stops nobody's plan.
      const auto day = read_date(row.at(3).text());
      if (!day) continue;
      SeenFact seen{{row.at(0).text(), row.at(1).text(), row.at(2).text()}, *day, row.at(4).text()};
      all.emplace(std::pair(seen.fact.what, seen.fact.object), std::move(seen));
    }
    return all;
  });
}

SeenNow seen_now(std::span<const wish::MapFact> facts, const SeenFacts& seen, Date today) {
  SeenNow worst{facts.empty() ? SeenState::never : SeenState::seen, today, {}, {}};
  for (const wish::MapFact& fact : facts) {
    SeenNow one = of_fact(fact, seen, today);
    const bool earlier = one.state == worst.state && one.day < worst.day;
    if (one.state > worst.state || earlier) worst = std::move(one);
  }
  return worst;
}

std::string ago_words(Date day, Date today) {
  constexpr int week = 7, weeks_told = 8, month = 30, year = 365;
  const auto days = static_cast<int>(days_between(day, today));
  const auto ago = [](int n, const char* unit) {
    return number_word(n) + " " + unit + (n == 1 ? " ago" : "s ago");
  };
  if (days <= 0) return "today";
  if (days == 1) return "yesterday";
  if (days < 2 * week) return ago(days, "day");
  if (days < weeks_told * week) return ago(days / week, "week");
  return days <= year ? ago(days / month, "month") : "more than a year ago";
}

std::string words_of(const SeenNow& now, Date today) {
  const std::string read = now.says.empty() ? "" : ": " + now.says;
  switch (now.state) {
    case SeenState::never:
      return {};
    case SeenState::seen:
      return "seen by you " + ago_words(now.day, today) + read;
    case SeenState::long_ago:
      return "seen by you " + ago_words(now.day, today) + read + "; look again, " + now.why;
    case SeenState::otherwise:
      return "you read there on " + road::day_text(now.day) + read;
    case SeenState::changed:
      break;
  }
  return "the map says another thing since you saw it on " + road::day_text(now.day) +
         ": look again";
}

std::string letter_of(std::size_t n) {
  constexpr std::size_t letters = 26;
  std::string text;
  for (++n; n > 0; n = (n - 1) / letters)
    text.insert(text.begin(), static_cast<char>('A' + (n - 1) % letters));
  return text;
}

std::vector<SeenFact> facts_seen(std::span<const SaidSeen> said,
                                 std::span<const LetteredFact> on_sheet, Date day) {
  std::vector<SeenFact> seen;
  for (const SaidSeen& one : said) {
    bool is_on_sheet = false;
    for (const LetteredFact& asked : on_sheet) {
      if (one.letter != "*" && asked.letter != one.letter) continue;
      is_on_sheet = true;
      const bool unknown = asked.fact.map_text.empty() && one.says.empty();
      if (unknown && one.letter != "*")
        throw UsageError("'seen " + one.letter +
                         "': the map doesn't know what stands there: say it, such as 'seen " +
                         one.letter + ": Mo-Fr 07:00-10:00'");
      if (!unknown) seen.push_back({asked.fact, day, one.says});
    }
    if (!is_on_sheet)
      throw UsageError("'seen " + (one.letter == "*" ? "all" : one.letter) + "': " +
                       (on_sheet.empty()
                            ? std::string("the sheet of this lesson asks to look at nothing")
                            : "the sheet has " + listed_letters(on_sheet)));
  }
  return seen;
}

}  // namespace loopwright::book
