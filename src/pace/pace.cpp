// Method:
// 1. Speed = what law, class, width and bends allow, the least of them, times the learner's share
//    (divided by the pupil's own calibration), and never above the limit of the day.
// 2. Running time = length / speed. Its variance grows with the time driven, so that cutting a road
//    into pieces changes nothing. A part [a, b] takes round(b / speed) - round(a / speed), so parts
//    add up to the whole in whole milliseconds.
// 3. Delay = the table's row of the control, times level, hour and calibration; the variance takes
//    that factor squared.
#include "loopwright/pace/pace.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "loopwright/base/table.hpp"
#include "pace/numbers.hpp"

namespace loopwright::pace {
namespace {

// 90th percentile of the standard normal distribution (any table of it).
constexpr double z_90 = 1.2816;

double peak_factor(const std::vector<Peak>& peaks, const CivilTime& at) {
  if (weekday_of(at.date) >= Weekday::saturday) return 1;
  const double hour = at.hour + at.minute / 60.0;
  for (const Peak& peak : peaks)
    if (hour >= peak.from_h && hour < peak.to_h) return peak.factor;
  return 1;
}

Spell spell_of(const Wait& wait, double factor) {
  const double spread_s = wait.spread_s * factor;
  return {std::llround(1000 * wait.likely_s * factor), spread_s * spread_s};
}

}  // namespace

Percentiles percentiles_of(const Spell& spell) {
  const double likely_s = static_cast<double>(spell.likely_ms) / 1000;
  const double reach_s = z_90 * std::sqrt(spell.variance_s2);
  return {std::max(likely_s - reach_s, likely_s / 2), likely_s, likely_s + reach_s};
}

Pace::Pace(const road::Roads& roads, const Learner& learner, const Instant& start)
    : roads_(&roads), law_(road::law_of(roads.info())), day_(start.civil().date) {
  assert(learner.level >= 1 && learner.level <= static_cast<int>(level_count));
  assert(learner.factor >= 0.8 && learner.factor <= 1.6);
  const Numbers numbers = read_numbers(rule_text("pace"));
  const auto cap = [&](Cap c) { return numbers.cap_mps[static_cast<std::size_t>(c)]; };
  const auto level = static_cast<std::size_t>(learner.level - 1);

  driving_share_ = numbers.share[level] / learner.factor;
  running_variance_ = numbers.running_variance;
  narrow_m_ = numbers.narrow_m, single_track_m_ = numbers.single_track_m;
  narrow_mps_ = cap(Cap::narrow), single_track_mps_ = cap(Cap::single_track);
  ring_lanes_mps_ = cap(Cap::ring_lanes);
  class_mps_ = numbers.class_mps;
  flag_caps_ = {{{road::piece_flag::winding, cap(Cap::winding)},
                 {road::piece_flag::humps, cap(Cap::humps)},
                 {road::piece_flag::parked_both, cap(Cap::parked_both)},
                 {road::piece_flag::ring, cap(Cap::ring)}}};

  const double factor =
      numbers.learner_delay[level] * learner.factor * peak_factor(numbers.peaks, start.civil());
  for (std::size_t i = 0; i < delays_.size(); ++i) delays_[i] = spell_of(numbers.waits[i], factor);

  for (std::size_t i = 0; i < rule_mps_.size(); ++i) {
    road::LimitFact fact;
    fact.rule = static_cast<road::LimitRule>(i);
    rule_mps_[i] = law_.on(fact, day_).metres_per_second();
  }
}

/// A number on a sign is itself; any other rule was looked up for the day beforehand.
double Pace::law_mps(const road::LimitFact& fact) const {
  using road::LimitRule;
  const bool on_a_sign = fact.rule == LimitRule::signed_value ||
                         fact.rule == LimitRule::zone_twenty || fact.rule == LimitRule::zone_other;
  if (!on_a_sign) return rule_mps_[static_cast<std::size_t>(fact.rule)];
  return road::LimitOnDay{fact.value, fact.unit, fact.confidence}.metres_per_second();
}

/// What class, width and shape of the road allow.
double Pace::road_mps(StretchId stretch) const {
  const road::Piece& piece = roads_->piece(stretch);
  double mps = class_mps_[static_cast<std::size_t>(piece.road_class)];
  for (const FlagCap& cap : flag_caps_)
    if ((piece.flags & cap.flag) != 0) {
      const bool wide_ring = cap.flag == road::piece_flag::ring && piece.lanes >= 2;
      mps = std::min(mps, wide_ring ? ring_lanes_mps_ : cap.mps);
    }
  if ((piece.flags & road::piece_flag::one_way) != 0) return mps;
  const double width_m = piece.usable_width_m > 0 ? piece.usable_width_m : piece.width_m;
  const std::uint64_t runs = roads_->stretch(stretch).runs;
  const auto thin = [&](road::Kind kind, double below_m) {
    return (runs & road::bit(kind)) != 0 || (width_m > 0 && width_m < below_m);
  };
  if (thin(road::Kind::single_track, single_track_m_)) return std::min(mps, single_track_mps_);
  if (thin(road::Kind::narrow_road, narrow_m_)) return std::min(mps, narrow_mps_);
  return mps;
}

double Pace::speed_mps(StretchId stretch) const {
  const double law = law_mps(roads_->stretch(stretch).limit);
  return std::min(law, driving_share_ * std::min(law, road_mps(stretch)));
}

Spell Pace::along(StretchId stretch) const {
  return along_part(stretch, 0, roads_->piece(stretch).length_m);
}

Spell Pace::along_part(StretchId stretch, double from_m, double to_m) const {
  assert(from_m >= 0 && from_m <= to_m);
  const double mps = speed_mps(stretch);
  const std::int64_t ms = std::llround(1000 * to_m / mps) - std::llround(1000 * from_m / mps);
  return {ms, running_variance_ * (to_m - from_m) / mps};
}

Spell Pace::at(road::Control control) const {
  return delays_[static_cast<std::size_t>(control)];
}

road::LimitOnDay Pace::limit(StretchId stretch) const {
  return law_.on(roads_->stretch(stretch).limit, day_);
}

}  // namespace loopwright::pace
