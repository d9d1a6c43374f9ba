// Method:
// 1. What a loop got of each want is counted from the drive's own passes (counting.cpp).
// 2. Nothing avoided is passed, nor does any stretch carry an avoided kind; nothing is harder than
//    the learner's level allows, unless its kind was asked for by name, nor than the hardest allowed.
//    Manoeuvres are done only when asked for, at most so many as the wish names.
// 3. The value is worked out again by its definition (counting.cpp).
#include <algorithm>

#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/stops.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

using wish::Want;

std::string pass_text(const Drive& drive, const FoundPass& found) {
  return at_stretch(drive, found.pass.first) + ": it passes " +
         std::string(road::name(found.pass.kind)) + " (" + words_for(found.pass.source) + ")";
}

bool avoid_holds(const Drive& drive, const wish::Avoid& avoid, Claims& claims) {
  for (const FoundPass& found : drive.passes)
    if (!claims.hold(!wish::is_avoided(avoid, found.pass.kind, found.pass.movement),
                     [&] { return pass_text(drive, found) + ", which the wish avoids"; }))
      return false;
  if (avoid.movement != road::Movement::none) return true;  // runs have none
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const std::uint64_t runs = drive.roads.stretch(drive.stretches[i]).runs;
    if (!claims.hold((runs & road::with_special_forms(avoid.kind)) == 0, [&] {
          return at_stretch(drive, i) + ": it is " + std::string(road::name(avoid.kind)) +
                 ", which the wish avoids";
        }))
      return false;
  }
  return true;
}

/// Some of it is driven by the learner.
bool is_learners(const Drive& drive, const wish::Pass& pass) {
  return is_driven_by_learner(drive, wish::begin_row(pass)) ||
         is_driven_by_learner(drive, pass.last);
}

bool hardness_holds(const Drive& drive, const Caps& caps, Claims& claims) {
  const int most = drive.wish.level + caps.hardness_above_level;
  for (const FoundPass& found : drive.passes) {
    if (!is_learners(drive, found.pass)) continue;
    const wish::Part* part = part_at(drive, found.pass);
    const auto& wants = part == nullptr ? drive.wish.wants : part->wants;
    const bool named = std::any_of(wants.begin(), wants.end(), [&](const Want& want) {
      return road::meets(found.pass.kind, want.kind);
    });
    const bool of_choice = road::is_of_choice(found.pass.kind);
    const auto no_harder_than = [&](int limit, bool excused) {
      return claims.hold(excused || found.pass.hardness <= limit, [&] {
        return pass_text(drive, found) + " of hardness " + std::to_string(found.pass.hardness) +
               ", more than " + std::to_string(limit);
      });
    };
    if (drive.wish.level_given && !no_harder_than(most, named || of_choice)) return false;
    if (drive.wish.hardest && !no_harder_than(*drive.wish.hardest, of_choice)) return false;
  }
  return true;
}

/// Whoever stops for a manoeuvre was asked to, and no more often than asked.
bool stops_are_wanted(const Drive& drive, Claims& claims) {
  for (const FoundPass& found : drive.passes) {
    if (found.pass.stop_s == 0) continue;
    const wish::Part* part = part_at(drive, found.pass);
    const auto& wants = part == nullptr ? drive.wish.wants : part->wants;
    const bool wanted = std::any_of(wants.begin(), wants.end(),
                                    [&](const Want& want) { return counts(drive, found, want); });
    if (!claims.hold(wanted,
                     [&] { return pass_text(drive, found) + ", which the wish doesn't ask for"; }))
      return false;
  }
  for (const wish::Met& met : drive.loop.met) {
    const bool stops = road::form_of(met.want.kind) == road::KindForm::manoeuvre;
    if (!claims.hold(!stops || !met.want.count || met.got <= *met.want.count, [&] {
          return at_loop(drive) + ": it stops " + std::to_string(met.got) + " times for " +
                 wish::write_want(met.want);
        }))
      return false;
  }
  return true;
}

}  // namespace

bool counts_hold(const Drive& drive, const Caps& caps, Claims& claims) {
  const auto& met = drive.loop.met;
  const auto& wants = drive.wish.wants;
  if (!claims.agree(at_loop(drive) + ", wants counted", std::to_string(met.size()),
                    std::to_string(wants.size())))
    return false;
  for (std::size_t i = 0; i < met.size(); ++i) {
    const std::string want = wish::write_want(wants[i]);
    if (!claims.agree(at_loop(drive) + ", want " + std::to_string(i), wish::write_want(met[i].want),
                      want) ||
        !claims.agree(at_loop(drive) + ", passes that count for " + want,
                      std::to_string(met[i].got), std::to_string(counted(drive, wants[i], caps))) ||
        !practised_hold(drive, met[i], caps, claims))
      return false;
  }
  return true;
}

bool limits_of_wish_hold(const Drive& drive, const Caps& caps, Claims& claims) {
  for (const wish::Avoid& avoid : drive.wish.avoids)
    if (!avoid_holds(drive, avoid, claims)) return false;
  return stops_are_wanted(drive, claims) && hardness_holds(drive, caps, claims) &&
         quiet_streets_hold(drive, caps, claims) && keep_offs_hold(drive, claims);
}

bool certificate_holds(const Drive& drive, const Caps& caps, Claims& claims) {
  const wish::Certificate& said = drive.loop.certificate;
  const std::string where = at_loop(drive) + ", certificate";
  const bool known =
      said.state == "best possible" || said.state == "within" || said.state == "searched";
  if (!claims.hold(known, [&] { return where + ": there is no state '" + said.state + "'"; }))
    return false;
  const bool bounded = said.bound && (said.state == "within" ? *said.bound >= said.value
                                                             : *said.bound == said.value);
  if (!claims.hold(said.state == "searched" || bounded,
                   [&] { return where + ": '" + said.state + "' doesn't follow from its bound"; }))
    return false;
  if (!claims.hold(said.left_out >= 0 && said.left_out <= said.candidates, [&] {
        return where + ": of " + std::to_string(said.candidates) + " candidates " +
               std::to_string(said.left_out) + " can't be left out";
      }))
    return false;
  return claims.agree(where + ", value", {static_cast<double>(said.value),
                                          static_cast<double>(value_of(drive, caps)), 1, ""});
}

}  // namespace loopwright::proof
