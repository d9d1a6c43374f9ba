#include "proof/tally.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace loopwright::proof {

namespace {

/// Times in the file are rounded to a tenth of a second.
constexpr std::int64_t rounded_ms = 200;

auto place_in_order(const wish::Pass& pass) {
  return std::tuple(pass.first, pass.last, pass.kind);
}

}  // namespace

std::vector<Found> in_order(const Drive& drive) {
  std::vector<Found> order;
  for (const FoundPass& found : drive.passes) order.push_back(&found);
  std::stable_sort(order.begin(), order.end(), [](Found a, Found b) {
    return place_in_order(a->pass) < place_in_order(b->pass);
  });
  return order;
}

std::vector<Found> as_listed(const Drive& drive) {
  const std::vector<wish::Pass>& said = drive.loop.passes;
  std::vector<std::size_t> order(said.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return place_in_order(said[a]) < place_in_order(said[b]);
  });
  const std::vector<Found> own = in_order(drive);
  std::vector<Found> listed(said.size());
  for (std::size_t i = 0; i < order.size(); ++i) listed[order[i]] = own[i];
  return listed;
}

std::int64_t begins_ms(const Drive& drive, const FoundPass& found) {
  return std::llround(1000 * drive.loop.stretches[found.pass.first].arrive_s.likely);
}

std::optional<std::int64_t> asked_spacing_ms(const Drive& drive, const wish::Want& want) {
  std::optional<std::int64_t> most;
  for (const wish::Spacing& spacing : drive.wish.spacings)
    if (road::meets(want.kind, spacing.kind))
      most = std::max(most.value_or(0), std::int64_t{1000} * spacing.seconds);
  return most;
}

int place_cap(road::Kind kind, const Caps& caps) {
  return road::is_stretch_like(kind) ? caps.stretch_passes : caps.junction_passes;
}

bool are_practised(const Drive& drive, const wish::Met& met, const PracticeIn& in, const Caps& caps,
                   Claims& claims) {
  const std::string where = in.where + ", practised for " + wish::write_want(met.want);
  if (!claims.hold(met.practised.has_value() == !met.want.count, [&] {
        return where + (met.practised ? ": it isn't wanted as max"
                                      : ": the file doesn't name the passes; make it again");
      }))
    return false;
  if (!met.practised) return true;
  const std::int64_t spacing_ms =
      asked_spacing_ms(drive, met.want).value_or(std::llround(1000 * caps.spacing_s));
  const std::vector<Found> listed = as_listed(drive);
  std::optional<std::size_t> last;
  for (const std::size_t number : *met.practised) {
    const FoundPass& found = *listed[number];
    const std::string pass = where + ", pass " + std::to_string(number);
    const bool counted = (!in.part || part_at(drive, found.pass) == &drive.wish.parts[*in.part]) &&
                         counts(drive, found, met.want);
    const bool spaced =
        !last || (number > *last && begins_ms(drive, found) >=
                                        begins_ms(drive, *listed[*last]) + spacing_ms - rounded_ms);
    if (!claims.hold(counted, [&] { return pass + ": it doesn't count for that"; }) ||
        !claims.hold(spaced, [&] { return pass + ": it begins too soon after the one before"; }))
      return false;
    last = number;
  }
  return true;
}

std::int64_t welcome_worth(const Drive& drive, const std::set<Found>& taken, const Caps& caps) {
  std::map<PlaceId, int> by_place;
  std::int64_t sum = 0;
  for (const FoundPass& found : drive.passes) {
    const auto& kinds = drive.wish.welcome;
    const bool welcome = std::any_of(kinds.begin(), kinds.end(), [&](road::Kind kind) {
      return road::meets(found.pass.kind, kind);
    });
    if (!welcome || !is_practised(drive, found.pass) ||
        found.pass.movement == road::Movement::round || taken.contains(&found))
      continue;
    if (by_place[found.place]++ < place_cap(found.pass.kind, caps)) sum += caps.welcome_worth;
  }
  return sum;
}

}  // namespace loopwright::proof
