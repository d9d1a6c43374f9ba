// Method: FNV-1a (Fowler, Noll, Vo; draft-eastlake-fnv) of the plan's loop file, told by 24 letters: none that is taken
// for a 1 or 0.
#include <cstdint>

#include "loopwright/base/error.hpp"
#include "loopwright/book/log_words.hpp"

namespace loopwright::book {

std::string sheet_mark(const Plan& plan) {
  if (plan.loop_file.empty()) return {};
  constexpr std::string_view letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  constexpr std::uint64_t offset = 14695981039346656037U, prime = 1099511628211U;
  std::uint64_t hash = offset;
  for (const char c : plan.loop_file) hash = (hash ^ static_cast<unsigned char>(c)) * prime;
  const auto mark = static_cast<std::size_t>(hash % (letters.size() * letters.size()));
  return {letters[mark / letters.size()], letters[mark % letters.size()]};
}

void need_same_sheet(const Said& said, const Plan& plan) {
  if (said.sheet.empty() || said.sheet == sheet_mark(plan)) return;
  throw UsageError(
      "'sheet " + said.sheet + "': " +
      (plan.loop_file.empty()
           ? std::string("this lesson has no sheet any more")
           : "the lesson was planned again since that sheet was printed, its sheet is " +
                 sheet_mark(plan) + " now; print it and say what was driven by it"));
}

}  // namespace loopwright::book
