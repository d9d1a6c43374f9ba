// 1. What has hours on the drive, as room lanes lists it, is judged for each pass.
// 2. What is told in the same words comes together, so that a street driven three times is one thing.
// 3. Of bus lanes and gates the sheet has words of its own; of the rest room lanes' words are plain.
#include "card/timed.hpp"

#include <algorithm>
#include <array>

namespace loopwright::card {
namespace {

using lanes::May;
using lanes::Thing;

bool told_alike(const lanes::TimedThing& a, const lanes::TimedThing& b) {
  return a.thing == b.thing && a.street == b.street && a.place == b.place && a.words == b.words &&
         a.never == b.never && a.doubt == b.doubt;
}

Visit visit_of(const lanes::TimedThing& thing, const lanes::TimedDrive& drive) {
  const lanes::Passing when = lanes::passing_of(thing, drive.loop, drive.setting);
  auto change = lanes::next_change(thing, when.from, drive.setting);
  if (change && change->civil().date != when.from.civil().date) change.reset();
  // One turns where the next row's stretch begins.
  const std::size_t stretch = thing.thing == Thing::turn ? thing.rows.last : thing.rows.first;
  return {stretch, when, lanes::verdict_on(thing, when, drive.setting), change};
}

std::string object_of(const lanes::TimedThing& thing, const wish::LoopStretch& driven) {
  return thing.thing == Thing::turn ? "relation/" + std::to_string(thing.source.id)
                                    : "way/" + std::to_string(driven.way);
}

/// Its raw hours, as they would be read on its plate or sign: tags may be spelled otherwise and mean the same. Empty when
/// the map doesn't know them, or contradicts itself: then only what stands there tells.
std::string raw_hours(const lanes::TimedThing& thing) {
  std::string text;
  if (!thing.doubt.empty()) return text;
  for (const std::string* part : {&thing.shut, &thing.base, &thing.values, &thing.never})
    if (!part->empty()) text += (text.empty() ? "" : "; ") + *part;
  return text;
}

void add_facts(Timed& timed, const lanes::TimedThing& thing, const wish::Loop& loop) {
  const bool is_turn = thing.thing == Thing::turn;
  const std::size_t last = is_turn ? thing.rows.first : thing.rows.last;
  for (std::size_t row = thing.rows.first; row <= last; ++row) {
    const wish::LoopStretch& driven = loop.stretches[row];
    const std::string way = is_turn ? "" : driven.against ? " against" : " along";
    wish::MapFact fact{"hours of " + std::string(lanes::name(thing.thing)) + way,
                       object_of(thing, driven), raw_hours(thing)};
    if (std::ranges::find(timed.facts, fact) == timed.facts.end())
      timed.facts.push_back(std::move(fact));
  }
}

std::string_view verdict_key(Thing thing, May may) {
  const bool lane = thing == Thing::bus_lane || thing == Thing::contraflow_lane;
  if (may == May::yes) return lane ? "verdict.lane" : "verdict.gate";
  if (may == May::no) return "verdict.keep_out";
  return lane ? "verdict.plate" : "verdict.sign";
}

/// "in force from 16:00": what the answer changes to on the same day.
std::string_view change_key(Thing thing, May may) {
  const bool shuts = thing == Thing::street;
  if (may == May::yes) return shuts ? "change.shut_from" : "change.from";
  return shuts ? "change.shut_until" : "change.until";
}

bool bars(const Timed& timed, const Visit& visit) {
  constexpr std::array barring{Thing::bus_gate, Thing::bus_only_street, Thing::street, Thing::turn};
  const bool may_bar = std::ranges::find(barring, timed.thing.thing) != barring.end();
  return may_bar && visit.verdict.may != May::yes;
}

}  // namespace

std::vector<Timed> timed_on(const lanes::TimedDrive& drive) {
  std::vector<Timed> all;
  for (const lanes::TimedThing& thing : lanes::things_on(drive)) {
    const Visit visit = visit_of(thing, drive);
    const auto known = std::ranges::find_if(
        all, [&](const Timed& timed) { return told_alike(timed.thing, thing); });
    Timed& timed = known != all.end() ? *known : all.emplace_back(Timed{thing, {}});
    timed.visits.push_back(visit);
    add_facts(timed, thing, drive.loop);
  }
  return all;
}

bool is_for_buses(const Timed& timed) {
  return timed.thing.thing <= Thing::bus_only_street;
}

std::string write_thing(const Timed& timed) {
  const lanes::TimedThing& thing = timed.thing;
  const std::string street = say::spoken_name(thing.street);
  if (!is_for_buses(timed)) return street;
  const std::string place = thing.place.empty() ? "" : " " + thing.place;
  return street + ", " + std::string(lanes::name(thing.thing)) + place;
}

std::string write_hours(const say::Words& words, const Timed& timed) {
  const lanes::TimedThing& thing = timed.thing;
  if (!thing.never.empty()) return thing.never;
  if (!is_for_buses(timed)) return thing.words;
  if (thing.shut.empty()) return std::string(words.at("card.no_hours"));
  return words.fill("card.in_force", {{"hours", thing.words}});
}

std::string write_verdict(const say::Words& words, const Timed& timed, const Visit& visit) {
  const Thing thing = timed.thing.thing;
  const May may = visit.verdict.may;
  std::string text = is_for_buses(timed) ? std::string(words.at(verdict_key(thing, may)))
                                         : lanes::verdict_words(thing, visit.verdict);
  const bool doubtful = !visit.verdict.because.empty() || !timed.thing.doubt.empty();
  // Why a thing is never for us stands in place of its hours.
  const bool told = visit.verdict.because == timed.thing.never;
  if (!visit.verdict.because.empty() && !told) text += " (" + visit.verdict.because + ")";
  // What is in doubt now has no sure change either.
  const bool later = visit.change && thing != Thing::limit && may != May::check && !doubtful;
  if (later)
    text += ", " + words.fill(change_key(thing, may), {{"clock", write_clock(*visit.change)}});
  return text;
}

std::string write_times(const say::Words& words, const lanes::Passing& when) {
  const std::string from = write_clock(when.from), to = write_clock(when.to);
  return from == to ? from : words.fill("card.from_to", {{"from", from}, {"to", to}});
}

std::vector<Barred> barred_on(std::span<const Timed> all) {
  std::vector<Barred> barred;
  for (const Timed& timed : all)
    for (const Visit& visit : timed.visits)
      if (bars(timed, visit)) barred.push_back({&timed, &visit});
  std::ranges::stable_sort(barred, {}, [](const Barred& b) { return b.visit->stretch; });
  return barred;
}

std::string write_barred(const say::Words& words, std::span<const Barred> barred) {
  if (barred.empty()) return {};
  const Barred& first = barred.front();
  const bool turn = first.timed->thing.thing == Thing::turn;
  std::string text = words.fill(turn ? "barred.turn" : "barred.street",
                                {{"street", say::spoken_name(first.timed->thing.street)},
                                 {"clock", write_clock(first.visit->when.from)}});
  if (barred.size() > 1) text += " " + words.count("barred.more", barred.size() - 1);
  return text;
}

}  // namespace loopwright::card
