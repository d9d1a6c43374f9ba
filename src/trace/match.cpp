// Method:
//   1. Fixes of a few seconds are taken together, which halves what scatters from one to the next. Means nearer than 1.5
//      sigmas to the one before are passed over (as Newson and Krumm do below two): they tell more of the noise than of
//      the way.
//   2. Chains are made of the rest. A fix to which no way leads is left out; when a few in a row are, or nothing was
//      recorded for long while the car went elsewhere, the chain ends and the next begins.
//   3. The widths of both distributions come from the drive itself (median deviations, ibid.): a first match by usual
//      widths, and a second by what it shows, when that differs. Beta is at least sigma: two fixes that scatter so are
//      seldom as far apart as the way is long.
#include "loopwright/trace/match.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "trace/chain.hpp"
#include "trace/legs.hpp"
#include "trace/progress.hpp"
#include "trace/router.hpp"
#include "trace/telling.hpp"

namespace loopwright::trace {
namespace {

/// A chain ends when this many fixes in a row can't be come to … Ours.
constexpr std::size_t most_skipped = 4;
/// … or after so long without one (180 s: Newson and Krumm), unless the car is still about there.
constexpr double longest_gap_s = 180, still_there_m = 150;
/// Widths a receiver in a car may show. Ours.
constexpr double least_sigma_m = 3, greatest_sigma_m = 30, least_beta_m = 3, greatest_beta_m = 60;
/// Sigma of normally distributed deviations by their median: 1 / 0.6745 (any table of it).
constexpr double by_median = 1.4826;
/// A second match when a width differs by more than this factor. Ours.
constexpr double differs = 1.25;
/// Stops are told from crawling by so many sigmas, at least so many metres. Ours.
constexpr double stop_sigmas = 1.0, stop_m = 10;

double median_of(std::vector<double> values, double otherwise) {
  if (values.empty()) return otherwise;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// The chains of a drive, and the fixes that are in none.
struct Chained {
  std::vector<std::vector<Chosen>> chains;
  std::vector<OffRoads> off_roads;
};

class Chaining {
 public:
  Chaining(Router& router, const Noise& noise, std::span<const Telling> fixes,
           std::span<const StretchId> plan, const PlanWays& ways)
      : chain_(router, noise, plan, ways), fixes_(fixes) {}

  Chained run() {
    for (std::size_t k = 0; k < fixes_.size(); ++k) {
      const Telling& fix = fixes_[k];
      if (!chain_.begun()) {
        if (!chain_.begin(k, fix)) leave_out(k);
        continue;
      }
      if (!went_silent(fix) && chain_.go_on(k, fix)) {
        for (const std::size_t row : skipped_) leave_out(row);
        skipped_.clear();
        goes_on_ = false;
        continue;
      }
      skipped_.push_back(k);
      if (skipped_.size() < most_skipped && !went_silent(fix)) continue;
      k -= skipped_.size();  // those come again, as the beginning of the next
      skipped_.clear();
      end();
    }
    end();
    for (const std::size_t row : skipped_) leave_out(row);
    return std::move(chained_);
  }

 private:
  [[nodiscard]] bool went_silent(const Telling& fix) const {
    return fix.unix_s - chain_.last().unix_s > longest_gap_s &&
           distance_m(fix.at, chain_.last().at) > still_there_m;
  }

  void end() {
    if (!chain_.begun()) return;
    std::vector<Chosen> chosen = chain_.best();
    // A place alone is no drive.
    if (chosen.size() > 1)
      chained_.chains.push_back(std::move(chosen));
    else
      leave_out(chosen.front().fix);
    chain_.clear();
  }

  void leave_out(std::size_t row) {
    const Telling& fix = fixes_[row];
    if (goes_on_) {
      chained_.off_roads.back().to_s = fix.unix_s;
      ++chained_.off_roads.back().fixes;
    } else {
      chained_.off_roads.push_back({fix.unix_s, fix.unix_s, fix.at, 1});
    }
    goes_on_ = true;
  }

  Chain chain_;
  std::span<const Telling> fixes_;
  std::vector<std::size_t> skipped_;
  bool goes_on_ = false;  ///< the last fix was left out
  Chained chained_;
};

Chained chained(Router& router, const Noise& noise, std::span<const Telling> fixes,
                std::span<const StretchId> plan, const PlanWays& ways) {
  return Chaining(router, noise, fixes, plan, ways).run();
}

/// How the fixes of a match scatter.
Noise shown_by(const std::vector<std::vector<Chosen>>& chains, std::span<const Telling> fixes,
               Router& router, const Noise& noise) {
  std::vector<double> off, longer;
  for (const auto& chain : chains) {
    for (const Chosen& one : chain) off.push_back(one.off_m);
    const Way way = way_of(router, noise, fixes, chain);
    for (std::size_t k = 1; k < way.reached.size(); ++k) {
      const Reached &a = way.reached[k - 1], &b = way.reached[k];
      longer.push_back(
          std::abs(b.progress_m - a.progress_m - distance_m(fixes[a.fix].at, fixes[b.fix].at)));
    }
  }
  return {std::clamp(by_median * median_of(off, noise.sigma_m / by_median), least_sigma_m,
                     greatest_sigma_m),
          std::clamp(median_of(longer, noise.beta_m * std::numbers::ln2) / std::numbers::ln2,
                     least_beta_m, greatest_beta_m)};
}

bool differ(const Noise& a, const Noise& b) {
  const auto far = [](double x, double y) { return x > differs * y || y > differs * x; };
  return far(a.sigma_m, b.sigma_m) || far(a.beta_m, b.beta_m);
}

void add_stops(const road::Roads& roads, const Progress& progress, const Way& way,
               const MatchAsk& ask, Match& match, Run& run) {
  const double tolerance_m = std::max(stop_m, stop_sigmas * match.noise.sigma_m);
  const double least_s = std::max(ask.least_stop_s, 2 * match.usual_gap_s);
  for (const Block& block : standing(progress.blocks(), least_s, tolerance_m)) {
    const auto after = std::upper_bound(way.begins_m.begin(), way.begins_m.end(), block.at_m);
    const auto leg =
        static_cast<std::size_t>(std::max<std::ptrdiff_t>(after - way.begins_m.begin() - 1, 0));
    const double at_m = run.legs[leg].from_m + block.at_m - way.begins_m[leg];
    const StretchId stretch = roads.stretch_of(run.legs[leg].state);
    const double along_m = stretch.against() ? roads.piece(stretch).length_m - at_m : at_m;
    run.stops.push_back({block.from_s, block.to_s, leg, at_m,
                         point_along(roads.shape_of(stretch.piece()), along_m)});
  }
}

Run run_of(Router& router, std::span<const Fix> fixes, std::span<const Telling> telling,
           std::span<const Chosen> chain, const MatchAsk& ask, Match& match) {
  Way way = way_of(router, match.noise, telling, chain);
  const std::size_t end = chain.back().fix + 1;
  way.end_row = end < telling.size() ? telling[end].row : fixes.size();
  for (Reached& one : way.reached) one.fix = telling[one.fix].row;
  Run run;
  run.line = line_of(router.roads(), way.legs);
  const Progress progress(fixes, way, run.line, match.noise);
  run.legs = std::move(way.legs);
  run.from_s = fixes[way.reached.front().fix].unix_s, run.to_s = fixes[way.end_row - 1].unix_s;
  for (std::size_t k = 0; k < run.legs.size(); ++k) {
    Leg& leg = run.legs[k];
    leg.enter_s = progress.left_s(way.begins_m[k]);
    leg.leave_s = progress.left_s(way.begins_m[k] + leg.to_m - leg.from_m);
  }
  run.legs.front().enter_s = run.from_s, run.legs.back().leave_s = run.to_s;
  add_stops(router.roads(), progress, way, ask, match, run);
  return run;
}

double usual_gap(std::span<const Fix> fixes) {
  std::vector<double> gaps;
  for (std::size_t k = 1; k < fixes.size(); ++k)
    gaps.push_back(fixes[k].unix_s - fixes[k - 1].unix_s);
  return median_of(std::move(gaps), 1);
}

}  // namespace

double Run::metres() const {
  double sum = 0;
  for (const Leg& leg : legs) sum += leg.to_m - leg.from_m;
  return sum;
}

Match match_to_roads(const road::Roads& roads, std::span<const Fix> fixes, const MatchAsk& ask) {
  Match match;
  match.usual_gap_s = usual_gap(fixes);
  std::optional<Router> router(std::in_place, roads, turn_round_m(match.noise));
  const PlanWays ways(roads, ask.plan);
  std::vector<Telling> telling = telling_in(fixes, match.noise);
  Chained all = chained(*router, match.noise, telling, ask.plan, ways);
  Noise shown = shown_by(all.chains, telling, *router, match.noise);
  shown.beta_m = std::max(shown.beta_m, shown.sigma_m);
  if (differ(shown, match.noise)) {
    match.noise = shown;
    router.emplace(roads, turn_round_m(match.noise));
    telling = telling_in(fixes, match.noise);
    all = chained(*router, match.noise, telling, ask.plan, ways);
  }
  for (const auto& chain : all.chains)
    match.runs.push_back(run_of(*router, fixes, telling, chain, ask, match));
  match.off_roads = std::move(all.off_roads);
  return match;
}

}  // namespace loopwright::trace
