#include "command/ground_marks.hpp"

#include <algorithm>
#include <ostream>

#include "command/folded.hpp"

namespace loopwright::command {
namespace {

constexpr std::size_t most_told = 5;

std::string letter_in(std::span<const book::LetteredFact> to_check, const card::GroundItem& item) {
  const auto found =
      std::find_if(to_check.begin(), to_check.end(), [&](const book::LetteredFact& one) {
        return std::any_of(item.facts.begin(), item.facts.end(), [&](const wish::MapFact& fact) {
          return fact.what == one.fact.what && fact.object == one.fact.object;
        });
      });
  return found == to_check.end() ? "" : found->letter;
}

}  // namespace

std::vector<book::LetteredFact> letters_for(std::span<const card::GroundItem> items,
                                            const book::SeenFacts& seen, Date day) {
  std::vector<book::LetteredFact> all;
  std::size_t letters = 0;
  for (const card::GroundItem& item : items) {
    if (item.facts.empty() || book::seen_now(item.facts, seen, day).state == book::SeenState::seen)
      continue;
    const std::string letter = book::letter_of(letters++);
    for (const wish::MapFact& fact : item.facts) all.push_back({letter, fact});
  }
  return all;
}

std::vector<wish::GroundMark> ground_marks(std::span<const card::GroundItem> items,
                                           const GroundKnown& known) {
  std::vector<wish::GroundMark> marks;
  for (const card::GroundItem& item : items)
    marks.push_back({letter_in(known.to_check, item),
                     words_of(book::seen_now(item.facts, known.seen, known.day), known.day)});
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
