#include "command/independent_summary.hpp"

#include <ostream>
#include <string>

#include "command/folded.hpp"
#include "loopwright/wish/independent.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/variant.hpp"

namespace loopwright::command {
namespace {

std::string street_of(const wish::Loop& loop, std::size_t row) {
  const std::string& street = loop.stretches[row].street;
  return street.empty() ? "an unnamed road" : street;
}

std::string way_words(const wish::IndependentStretch& stretch) {
  if (!stretch.follow.empty()) return "follow the signs for " + stretch.follow;
  std::string words;
  for (const std::string& direction : stretch.directions)
    words += (words.empty() ? "" : "; ") + direction;
  return words.empty() ? "follow the road ahead" : words;
}

}  // namespace

void print_variant(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop) {
  if (const std::string words = wish::variant_words(answer, loop); !words.empty())
    print_folded(out, 2, words);
}

void print_independent(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop,
                       const hours::Setting& setting) {
  const int asked = answer.wish.independent_minutes;
  if (asked == 0) return;
  if (loop.independent.empty()) out << "  independent driving: none of " << asked << " min\n";
  for (const wish::IndependentStretch& stretch : loop.independent) {
    // Whole minutes are only said of a stretch that has them.
    const auto minutes = static_cast<int>(wish::seconds_of(loop, stretch) / 60);
    std::string line = "independent driving: " + std::to_string(minutes);
    if (minutes < asked) line += " of " + std::to_string(asked);
    const double from_s = loop.stretches[stretch.first].arrive_s.likely;
    line += " min, from " + street_of(loop, stretch.first) + " at " +
            write_clock(wish::clock_after(loop, from_s, setting)) + " to " +
            street_of(loop, stretch.last) + ": " + way_words(stretch);
    print_folded(out, 2, line);
  }
}

}  // namespace loopwright::command
