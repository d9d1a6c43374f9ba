#include "command/ground_marks.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <ostream>
#include <set>
#include <utility>

#include "command/folded.hpp"

namespace loopwright::command {
namespace {

constexpr std::size_t most_told = 5;
/// More than these nobody looks at beside a lesson (ours); what matters most has them.
constexpr std::size_t most_letters = 10;

/// The letter that names most of its facts; of several one that isn't given yet, for two things may hang on one fact.
std::string letter_in(std::span<const book::LetteredFact> to_check, const card::GroundItem& item,
                      const std::set<std::string>& given) {
  std::map<std::string, std::pair<int, bool>> facts;  // by letter: how many, and not given yet
  for (const book::LetteredFact& one : to_check)
    for (const wish::MapFact& fact : item.facts)
      if (fact.what == one.fact.what && fact.object == one.fact.object) {
        auto& [count, is_free] = facts[one.letter];
        ++count;
        is_free = !given.contains(one.letter);
      }
  const auto best =
      std::ranges::max_element(facts, {}, [](const auto& each) { return each.second; });
  return best == facts.end() || !best->second.second ? "" : best->first;
}

}  // namespace

std::vector<book::LetteredFact> letters_for(std::span<const card::GroundItem> items,
                                            const book::SeenFacts& seen, Date day) {
  std::vector<const card::GroundItem*> asked;
  for (const card::GroundItem& item : items)
    if (!item.facts.empty() && book::seen_now(item.facts, seen, day).state != book::SeenState::seen)
      asked.push_back(&item);
  if (asked.size() > most_letters) {
    std::ranges::stable_sort(asked, std::ranges::greater(), &card::GroundItem::weight);
    asked.resize(most_letters);
    std::ranges::sort(asked);  // as they lie in the list
  }
  std::vector<book::LetteredFact> all;
  for (std::size_t k = 0; k < asked.size(); ++k)
    for (const wish::MapFact& fact : asked[k]->facts) all.push_back({book::letter_of(k), fact});
  return all;
}

std::vector<wish::GroundMark> ground_marks(std::span<const card::GroundItem> items,
                                           const GroundKnown& known) {
  std::vector<wish::GroundMark> marks;
  std::set<std::string> given;
  for (const card::GroundItem& item : items) {
    const std::string letter = letter_in(known.to_check, item, given);
    given.insert(letter);
    marks.push_back(
        {letter, words_of(book::seen_now(item.facts, known.seen, known.day), known.day)});
  }
  return marks;
}

void tell_look_again(std::ostream& out, std::span<const card::GroundItem> items,
                     const book::SeenFacts& seen, Date day) {
  std::size_t told = 0, more = 0;
  for (const card::GroundItem& item : items) {
    const book::SeenNow now = book::seen_now(item.facts, seen, day);
    if (now.state == book::SeenState::seen || now.state == book::SeenState::never) continue;
    if (told == most_told) {
      ++more;
      continue;
    }
    ++told;
    print_folded(out, 2, "on the way: " + item.words + "; " + words_of(now, day));
  }
  if (more > 0)
    print_folded(out, 2, "and " + std::to_string(more) + " more to look at again, on the sheet");
}

}  // namespace loopwright::command
