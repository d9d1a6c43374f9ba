// What the instructor saw on the ground: plates, limits, who gives way; each with its day.
//
//   const SeenNow now = seen_now(facts, seen_facts(book), today);   now.words(today)   // "seen by you three weeks ago"
//
// Rules: of places, not of pupils: what is kept names neither pupil nor lesson, and stays when one is erased. A fact counts
// for so many days (src/rules/seen.txt), and only while the map says what it said then.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/book.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/log_words.hpp"
#include "loopwright/wish/map_fact.hpp"

namespace loopwright::book {

/// By what and object.
using SeenFacts = std::map<std::pair<std::string, std::string>, SeenFact>;

SeenFacts seen_facts(const Book& book);

/// Of several facts at one place the worst that can be said; in this order.
enum class SeenState : std::uint8_t {
  seen,       ///< all of them, not too long ago
  long_ago,   ///< all of them, some too long ago
  never,      ///< some not at all
  otherwise,  ///< something else stands there than the map says
  changed     ///< the map says another thing since
};

struct SeenNow {
  SeenState state = SeenState::never;
  Date day;          ///< the earliest on which one of them was seen; none of `never`
  std::string says;  ///< what was read there: of `otherwise`, and of what the map doesn't know
  std::string why;   ///< of `long_ago`: why look again
};
SeenNow seen_now(std::span<const wish::MapFact> facts, const SeenFacts& seen, Date today);

/// "seen by you three weeks ago"; empty of `never`.
std::string words_of(const SeenNow& now, Date today);

/// "today", "yesterday", "five days ago", "three weeks ago", "four months ago", "more than a year ago". Rules: not before day.
std::string ago_words(Date day, Date today);

/// "A" to "Z", "AA" …; n from 0.
std::string letter_of(std::size_t n);

/// The facts that are meant; of all of them those that the map knows. Throws UsageError for a letter the sheet doesn't have,
/// and for one whose fact the map doesn't know when nobody says what stands there.
std::vector<SeenFact> facts_seen(std::span<const SaidSeen> said,
                                 std::span<const LetteredFact> on_sheet, Date day);

}  // namespace loopwright::book
