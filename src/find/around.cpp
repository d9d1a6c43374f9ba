// Method:
//   1. One sweep from home as far as the minutes go and a little on, for a sweep tells when the end of a road is
//      reached, and one back from the end over all roads.
//   2. Chances that both reach, by kind and movement; each place once, by its nearest chance.
//   3. Roads that both reach, by limit and by sort; each street once. A bit of road between two others shows nobody
//      its limit, so the whole way must have enough of it.
#include "loopwright/find/around.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <tuple>

#include "find/near_ground.hpp"
#include "find/reached_chances.hpp"
#include "loopwright/road/by_id.hpp"
#include "loopwright/road/sort.hpp"

namespace loopwright::find {
namespace {

constexpr double least_m = 100;  // as runs of road have it (road::least_run_m)
constexpr int most_hard = 5;
constexpr std::int64_t longest_road_ms = 10 * ms_per_minute;  // of one stretch: well above any

bool is_easier(const MeetingPlace& a, const MeetingPlace& b) {
  return std::tuple(a.hardness, a.there_minutes, a.at) <
         std::tuple(b.hardness, b.there_minutes, b.at);
}

/// Candidates of one form, one of each place or street.
class Candidates {
 public:
  /// Of several of the same place the easiest stays, then the nearest.
  void add(std::int64_t place, const MeetingPlace& found) {
    const auto [kept, is_new] = by_place_.emplace(place, found);
    if (!is_new && is_easier(found, kept->second)) kept->second = found;
  }
  [[nodiscard]] MeetingPlaces chosen() const {
    std::vector<MeetingPlace> all;
    for (const auto& [place, found] : by_place_) all.push_back(found);
    const auto easiest = std::min_element(all.begin(), all.end(), is_easier);
    if (easiest == all.end()) return {};
    MeetingPlaces places{*easiest};
    all.erase(easiest);
    const auto nearest = std::min_element(all.begin(), all.end(), [](const auto& a, const auto& b) {
      return std::tuple(a.there_minutes, a.at) < std::tuple(b.there_minutes, b.at);
    });
    if (nearest != all.end()) places.push_back(*nearest);
    return places;
  }

 private:
  std::map<std::int64_t, MeetingPlace> by_place_;
};

template <class Row>
void put_in_order(std::vector<Row>& rows) {
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
    return is_easier(a.places.front(), b.places.front());
  });
}

std::vector<FormAround> forms_of(const Ground& ground, const reach::Sweep& out,
                                 const reach::Sweep& back, std::int64_t within_ms) {
  std::map<std::pair<road::Kind, road::Movement>, Candidates> forms;
  for (const ReachedChance& reached : reached_of_all(ground, out, back)) {
    if (reached.there_ms > within_ms) break;  // in order of it
    const road::Chance& chance = ground.roads.chances[reached.chance.index()];
    forms[{chance.kind, chance.movement}].add(
        chance.place.index(),
        {chance.entry, reached.chance, minutes_of(reached.there_ms), chance.hardness});
  }
  std::vector<FormAround> all;
  for (const auto& [form, found] : forms) all.push_back({form.first, form.second, found.chosen()});
  put_in_order(all);
  return all;
}

/// The roads around, by limit and by sort.
class RoadsAround {
 public:
  explicit RoadsAround(const Ground& ground)
      : ground_(ground),
        law_(road::law_of(ground.roads.info())),
        day_(ground.setting.on_clock(ground.wish.start).civil().date) {}

  void add(StretchId at, std::int64_t there_ms) {
    const MeetingPlace place{at, {}, minutes_of(there_ms), hardness(at)};
    const std::int64_t street = street_of(at);
    if (has_enough(at, [&](StretchId s) { return road::sort_of(ground_.roads, s) == sort(at); }))
      sorts_[sort(at)].add(street, place);
    const road::LimitFact& fact = ground_.roads.stretch(at).limit;
    if (fact.rule == road::LimitRule::unknown) return;
    const road::LimitOnDay limit = limit_of(at);
    if (has_enough(at, [&](StretchId s) { return limit_of(s) == limit; }))
      limits_[{limit.unit, limit.value}][is_sure(limit.confidence) ? 0 : 1].add(street, place);
  }
  [[nodiscard]] std::vector<LimitAround> limits() const {
    std::vector<LimitAround> all;
    for (const auto& [limit, found] : limits_) {
      const MeetingPlaces sure = found[0].chosen();
      const MeetingPlaces places = sure.empty() ? found[1].chosen() : sure;
      all.push_back({limit_of(places.front().at), places});
    }
    put_in_order(all);
    return all;
  }
  [[nodiscard]] std::vector<SortAround> sorts() const {
    std::vector<SortAround> all;
    for (const auto& [sort, found] : sorts_) all.push_back({sort, found.chosen()});
    put_in_order(all);
    return all;
  }

 private:
  [[nodiscard]] std::string_view sort(StretchId at) const {
    return road::sort_of(ground_.roads, at);
  }
  [[nodiscard]] road::LimitOnDay limit_of(StretchId at) const {
    return law_.on(ground_.roads.stretch(at).limit, day_);
  }
  [[nodiscard]] int hardness(StretchId at) const {
    int most = 1;
    for (const road::RunFact& fact : ground_.roads.run_facts_of(at))
      most = std::max<int>(most, fact.hardness);
    return std::min(most, most_hard);
  }
  /// Its name, else its way: ways are numbered from 1, texts go below 0.
  [[nodiscard]] std::int64_t street_of(StretchId at) const {
    const road::Piece& piece = ground_.roads.piece(at);
    if (ground_.roads.text(piece.name).empty()) return piece.way;
    return -1 - static_cast<std::int64_t>(piece.name.index());
  }
  /// The way of the stretch has enough road, driven the same way, of which `is_so` is true.
  template <class IsSo>
  [[nodiscard]] bool has_enough(StretchId at, IsSo is_so) const {
    double metres = 0;
    for (const road::Piece& piece : road::whole_way(ground_.roads.pieces, at.piece())) {
      const StretchId same_way(ground_.roads.id_of(piece), at.against());
      if (ground_.costs.may_drive(same_way) && is_so(same_way)) metres += piece.length_m;
      if (metres >= least_m) return true;
    }
    return false;
  }

  const Ground& ground_;
  road::LimitLaw law_;
  Date day_;
  /// Where one is sure of it, and where one has to look for the sign.
  std::map<std::pair<SpeedUnit, int>, std::array<Candidates, 2>> limits_;
  std::map<std::string_view, Candidates> sorts_;
};

}  // namespace

Around around(const road::Roads& roads, const wish::Wish& asked, double within_minutes,
              const hours::Setting& setting) {
  const wish::Wish wish = there_and_back(asked, within_minutes);
  const ClockWalls walls = near_walls(roads, wish, setting);
  const Ground ground(roads, wish, setting, walls);
  const reach::Backwards backwards(roads);
  reach::Sweep out(roads), back(roads, &backwards);
  const auto within_ms = std::llround(within_minutes * static_cast<double>(ms_per_minute));
  out.run(ground.starts, ground.costs, within_ms + longest_road_ms);
  back.run_back(ground.goals, ground.costs, longest_ms);
  RoadsAround found(ground);
  for (const std::uint32_t row : out.settled()) {
    const StateId state{row};
    if (!back.reached(state)) continue;
    const StretchId at = roads.stretch_of(state);
    const std::int64_t begins_ms = out.ms(state) - ground.costs.along_ms(at);
    if (begins_ms <= within_ms) found.add(at, std::max<std::int64_t>(0, begins_ms));
  }
  return {forms_of(ground, out, back, within_ms), found.limits(), found.sorts()};
}

}  // namespace loopwright::find
