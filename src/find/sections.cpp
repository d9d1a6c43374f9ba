// 1. The lesson as planned is a line of time, cut where a part ends. A ramp cuts it twice more, a little behind
//    the share that must be easy and a little before the one that must be gentle: a cut that a part ends
//    near enough to is that part's end.
// 2. A part's wants go to that section of it which is longest and needn't be easy; "max" wants to all of them.
#include "find/sections.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::find {

namespace {

// Of the practice: how far behind its share the easy beginning may end, and how far before its own the gentle
// end begins. Ours: a drive needs some room to end at a given place.
constexpr double early_room = 0.06, late_room_least = 0.04, late_room_most = 0.12;
/// Of a part's leeway, what the search uses.
constexpr double leeway_used = 0.8;

enum class CutOf : std::uint8_t { part, easy, gentle, end };

struct Cut {
  double at_ms = 0;
  CutOf of = CutOf::end;
  std::size_t part = 0;  ///< that ends there
};

std::vector<wish::Part> parts_of(const wish::Wish& wish) {
  if (!wish.parts.empty()) return wish.parts;
  wish::Part whole;
  whole.wants = wish.wants;
  return {whole};
}

class Cutter {
 public:
  Cutter(const std::vector<wish::Part>& parts, const Caps& caps, TimeWindow practice,
         const std::optional<wish::Ramp>& ramp)
      : parts_(parts), caps_(caps), practice_(practice), ramp_(ramp) {
    whole_ms_ = static_cast<double>(practice.high_ms);
  }

  std::vector<SectionPlan> cut() {
    std::vector<SectionPlan> plans;
    double begins_ms = 0;
    for (const Cut& cut : cuts()) {
      plans.push_back(plan_of(cut, begins_ms));
      begins_ms = cut.at_ms;
    }
    hand_out_wants(plans);
    return plans;
  }

 private:
  [[nodiscard]] double easy_until() const { return ramp_ ? ramp_->first_share * whole_ms_ : 0; }
  [[nodiscard]] double gentle_from() const {
    return ramp_ ? (1 - ramp_->last_share - late_room_least) * whole_ms_ : whole_ms_;
  }
  [[nodiscard]] double latest_easy() const { return easy_until() + early_room * whole_ms_; }
  [[nodiscard]] double earliest_gentle() const {
    return gentle_from() - (late_room_most - late_room_least) * whole_ms_;
  }

  [[nodiscard]] std::vector<Cut> cuts() const {
    std::vector<Cut> cuts;
    double at_ms = 0;
    for (std::size_t p = 0; p + 1 < parts_.size(); ++p)
      cuts.push_back({at_ms += 60'000.0 * parts_[p].minutes, CutOf::part, p});
    const auto none_between = [&](double low, double high) {
      return std::none_of(cuts.begin(), cuts.end(),
                          [&](const Cut& cut) { return cut.at_ms >= low && cut.at_ms <= high; });
    };
    std::vector<Cut> more;
    if (ramp_ && none_between(easy_until(), latest_easy()))
      more.push_back({latest_easy(), CutOf::easy, 0});
    if (ramp_ && none_between(earliest_gentle(), gentle_from()))
      more.push_back({gentle_from(), CutOf::gentle, 0});
    for (Cut& cut : more) {
      cut.part = static_cast<std::size_t>(std::count_if(
          cuts.begin(), cuts.end(), [&](const Cut& other) { return other.at_ms <= cut.at_ms; }));
    }
    cuts.insert(cuts.end(), more.begin(), more.end());
    std::sort(cuts.begin(), cuts.end(),
              [](const Cut& a, const Cut& b) { return a.at_ms < b.at_ms; });
    cuts.push_back({whole_ms_, CutOf::end, parts_.size() - 1});
    return cuts;
  }

  [[nodiscard]] SectionPlan plan_of(const Cut& cut, double begins_ms) const {
    SectionPlan plan;
    plan.part = cut.part;
    plan.what = parts_[cut.part];
    plan.what.wants.clear();
    plan.what.minutes = static_cast<int>(std::lround((cut.at_ms - begins_ms) / 60'000));
    const bool easy = ramp_ && begins_ms < easy_until() - 1;
    const bool gentle = ramp_ && cut.at_ms > gentle_from() + 1;
    plan.gentle = gentle && cut.of == CutOf::end;
    if (easy) plan.what.hardest = std::min(plan.what.hardest.value_or(5), ramp_->early);
    if (gentle) plan.what.hardest = std::min(plan.what.hardest.value_or(5), ramp_->late);
    set_windows(cut, easy, plan);
    return plan;
  }

  void set_windows(const Cut& cut, bool easy, SectionPlan& plan) const {
    const auto ms = [](double value) { return static_cast<std::int64_t>(std::ceil(value)); };
    const int minutes = parts_[cut.part].minutes;
    const auto leeway_ms =
        static_cast<std::int64_t>(leeway_used * 1000 * caps_.part_leeway.of(minutes));
    switch (cut.of) {
      case CutOf::part:
        plan.since_part = {60'000LL * minutes - leeway_ms, 60'000LL * minutes};
        if (easy) plan.since_start.low_ms = ms(easy_until());
        break;
      case CutOf::easy:
        plan.since_start = {ms(easy_until()), ms(latest_easy())};
        break;
      case CutOf::gentle:
        plan.since_start = {ms(earliest_gentle()), ms(gentle_from())};
        break;
      case CutOf::end:
        plan.since_start = practice_;
        if (minutes > 0) plan.since_part.low_ms = 60'000LL * minutes - leeway_ms;
        break;
    }
  }

  void hand_out_wants(std::vector<SectionPlan>& plans) const {
    for (std::size_t p = 0; p < parts_.size(); ++p) {
      SectionPlan* main = nullptr;
      for (SectionPlan& plan : plans) {
        if (plan.part != p) continue;
        for (const wish::Want& want : parts_[p].wants)
          if (!want.count) plan.what.wants.push_back(want);
        if (main == nullptr || rank(plan) > rank(*main)) main = &plan;
      }
      if (main != nullptr) main->what.wants = parts_[p].wants;
    }
  }

  /// How fit a section is for what its part wants.
  [[nodiscard]] static int rank(const SectionPlan& plan) {
    return 1000 * plan.what.hardest.value_or(6) + plan.what.minutes;
  }

  const std::vector<wish::Part>& parts_;
  const Caps& caps_;
  TimeWindow practice_;
  const std::optional<wish::Ramp>& ramp_;
  double whole_ms_ = 0;
};

}  // namespace

std::vector<SectionPlan> sections_of(const wish::Wish& wish, const Caps& caps, TimeWindow practice,
                                     const std::optional<wish::Ramp>& ramp) {
  const std::vector<wish::Part> parts = parts_of(wish);
  return Cutter(parts, caps, practice, ramp).cut();
}

TimeWindow left_for(const SectionPlan& plan, const wish::Ramp& ramp, std::int64_t since_start_ms,
                    std::int64_t since_part_ms) {
  std::int64_t low_ms =
      std::max(plan.since_start.low_ms - since_start_ms, plan.since_part.low_ms - since_part_ms);
  const std::int64_t high_ms =
      std::min(plan.since_start.high_ms - since_start_ms, plan.since_part.high_ms - since_part_ms);
  // What is gentle is a share of a practice whose end it makes.
  if (plan.gentle)
    low_ms = std::max(
        low_ms, static_cast<std::int64_t>(std::ceil(static_cast<double>(since_start_ms) *
                                                    ramp.last_share / (1 - ramp.last_share))));
  return {low_ms, high_ms};
}

}  // namespace loopwright::find
