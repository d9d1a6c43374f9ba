// Method: a beam search over the passes in driving order. For each the best few choices that end with it are
// kept; one goes on from a choice only when no other pass would fit between, for that would only add worth.
// Not exact: what a repeat is worth hangs on the whole choice, of which only the best few are remembered.
#include "loopwright/find/practised.hpp"

#include <algorithm>

namespace loopwright::find {

namespace {

constexpr std::size_t beam = 16;  // ours: more didn't change a choice on Newport's drives
constexpr std::uint32_t none = ~std::uint32_t{0};

/// A choice, by its last pass and the choice before it.
struct Choice {
  std::uint32_t item = 0, before = none;
  std::int64_t worth = 0;  ///< of the whole choice
  bool counts = false;     ///< the last pass is worth something
};

class Chooser {
 public:
  Chooser(std::span<const Practicable> all, const PractisedRules& rules)
      : all_(all), rules_(rules), first_(all.size() + 1, 0) {}

  Practised choose() {
    for (std::uint32_t i = 0; i < all_.size(); ++i) end_with(i);
    const auto best =
        std::max_element(choices_.begin(), choices_.end(),
                         [](const Choice& a, const Choice& b) { return a.worth < b.worth; });
    Practised result;
    if (best == choices_.end()) return result;
    result.worth = best->worth;
    for (auto at = static_cast<std::uint32_t>(best - choices_.begin()); at != none;
         at = choices_[at].before)
      if (choices_[at].counts) result.passes.push_back(all_[choices_[at].item].pass);
    std::reverse(result.passes.begin(), result.passes.end());
    return result;
  }

 private:
  /// Some pass fits between two, spaced from both.
  [[nodiscard]] bool has_room(std::uint32_t before, std::uint32_t after) const {
    for (std::uint32_t k = before + 1; k < after; ++k)
      if (all_[k].begins_ms - all_[before].begins_ms >= rules_.spacing_ms)
        return all_[after].begins_ms - all_[k].begins_ms >= rules_.spacing_ms;
    return false;
  }

  [[nodiscard]] std::int64_t worth_after(std::uint32_t choice, const Practicable& item) const {
    std::size_t repeats = 0;
    int of_place = 0;
    for (std::uint32_t at = choice; at != none; at = choices_[at].before) {
      const Practicable& earlier = all_[choices_[at].item];
      if (!choices_[at].counts || earlier.place != item.place) continue;
      ++of_place;
      if (earlier.movement == item.movement) ++repeats;
    }
    if (rules_.of_place && of_place >= *rules_.of_place) return 0;
    return repeats < rules_.worths.size() ? rules_.worths[repeats] : 0;
  }

  void go_on(std::uint32_t choice, std::uint32_t item, std::vector<Choice>& found) const {
    const std::int64_t more = worth_after(choice, all_[item]);
    const std::int64_t so_far = choice == none ? 0 : choices_[choice].worth;
    found.push_back({item, choice, so_far + more, more > 0});
  }

  void end_with(std::uint32_t item) {
    std::vector<Choice> found;
    for (std::uint32_t before = item; before-- > 0;) {
      if (all_[item].begins_ms - all_[before].begins_ms < rules_.spacing_ms) continue;
      if (has_room(before, item)) break;  // and before any earlier one
      for (std::uint32_t c = first_[before]; c < first_[before + 1]; ++c) go_on(c, item, found);
    }
    if (found.empty()) go_on(none, item, found);
    std::stable_sort(found.begin(), found.end(),
                     [](const Choice& a, const Choice& b) { return a.worth > b.worth; });
    found.resize(std::min(found.size(), beam));
    choices_.insert(choices_.end(), found.begin(), found.end());
    first_[item + 1] = static_cast<std::uint32_t>(choices_.size());
  }

  std::span<const Practicable> all_;
  const PractisedRules& rules_;
  std::vector<Choice> choices_;       // those that end with the first pass, with the second, …
  std::vector<std::uint32_t> first_;  // of each pass's in choices_
};

}  // namespace

Practised choose_practised(std::span<const Practicable> all, const PractisedRules& rules) {
  return Chooser(all, rules).choose();
}

}  // namespace loopwright::find
