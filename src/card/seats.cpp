// Method: of the places to pull up that the map has on the stretch, the nearest to where the change was asked for, or to
// a stop planned there, is named, when one may stay there for as long as changing takes; where there is none the sheet
// says so. The kerb of the door and the stops on the way are told beside the instructor's own drive.
#include "card/seats.hpp"

#include <algorithm>
#include <cmath>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "loopwright/lanes/pull_up.hpp"
#include "loopwright/lanes/stopping.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::card {
namespace {

/// Changing seats, mirrors and belts. Ours.
constexpr std::int64_t change_s = 240;
constexpr std::size_t most_named = 5;

/// A kerb at which the seats are changed.
struct Kerb {
  lanes::DoorEnd end = lanes::DoorEnd::begin;
  std::size_t stretch = 0;  ///< of the learner's drive
  double at_m = 0;          ///< of the change, from where the stretch is entered
  wish::Range seconds;      ///< when one is there
};

/// Seconds of driving on one stretch of the whole drive.
double driving_s(const Subject& subject, std::size_t stretch) {
  return wish::driven_s(subject.whole, {stretch, stretch});
}

/// The planned stop that is made there; null when none is.
const wish::PullUp* stop_at(const Subject& subject, std::size_t stretch) {
  const auto& stops = subject.loop.pull_ups;
  const auto stop = std::ranges::find_if(stops, [&](const wish::PullUp& one) {
    return one.stretch == stretch && is_at_change(subject, one);
  });
  return stop == stops.end() ? nullptr : &*stop;
}

/// At metres along a stretch of the learner's drive. Stops on it come after that.
Kerb kerb_at(const Subject& subject, lanes::DoorEnd end, std::size_t stretch, double at_m) {
  const std::size_t row = subject.before + stretch;
  const wish::LoopStretch& driven = subject.whole.stretches[row];
  const double length_m = subject.roads.piece(driven.stretch).length_m;
  const double part_s = length_m > 0 ? driving_s(subject, row) * at_m / length_m : 0;
  const wish::Range& from = driven.arrive_s;
  return {end, stretch, at_m, {from.low + part_s, from.likely + part_s, from.high + part_s}};
}

Kerb kerb_at_begin(const Subject& subject) {
  const auto& partial_m = subject.loop.stretches.front().partial_m;
  return kerb_at(subject, lanes::DoorEnd::begin, 0, partial_m ? (*partial_m)[0] : 0);
}

Kerb kerb_at_end(const Subject& subject) {
  const wish::LoopStretch& last = subject.loop.stretches.back();
  return kerb_at(subject, lanes::DoorEnd::end, subject.loop.stretches.size() - 1,
                 last.partial_m ? (*last.partial_m)[1] : last.metres);
}

/// The place to pull up nearest to where the change was asked for, or to the stop that is planned there.
const road::PullUp* place_near(const Subject& subject, const Kerb& kerb) {
  const wish::PullUp* planned = stop_at(subject, kerb.stretch);
  const double near_m = planned == nullptr ? kerb.at_m : planned->at_m;
  const double stay_s = static_cast<double>(change_s) + (planned == nullptr ? 0 : planned->seconds);
  const auto moment = [&](double seconds) {
    return wish::clock_after(subject.loop, seconds, subject.setting);
  };
  const lanes::Stay stay{moment(kerb.seconds.low), moment(kerb.seconds.high + stay_s)};
  const auto off_m = [&](const road::PullUp& place) {
    return std::abs(lanes::stop_at_m(place) - near_m);
  };
  const road::PullUp* nearest = nullptr;
  for (const road::PullUp& place :
       subject.roads.pull_ups_of(subject.loop.stretches[kerb.stretch].stretch)) {
    if (nearest != nullptr && off_m(place) >= off_m(*nearest)) continue;
    const auto judged = lanes::may_stop(subject.roads, place, stay, subject.setting);
    if (judged.verdict == lanes::MayStop::usable) nearest = &place;
  }
  return nearest;
}

/// "pull up on the left, 80 yd before the next corner; no ban mapped …: check lines, signs and drives"
std::string where_to_stop(const Subject& subject, const Kerb& kerb) {
  const say::Words& words = subject.words;
  const road::PullUp* place = place_near(subject, kerb);
  if (place == nullptr) return std::string(words.at("seats.no_place"));
  const bool begins = kerb.end == lanes::DoorEnd::begin;
  const double length_m = subject.roads.piece(place->stretch).length_m;
  const double off_m = begins ? length_m - lanes::stop_at_m(*place) : lanes::stop_at_m(*place);
  const bool left = subject.roads.info().region.side == Side::left;
  return words.fill(
      begins ? "seats.place_before" : "seats.place_behind",
      {{"side", std::string(words.at(left ? "side.left" : "side.right"))},
       {"distance", say::say_distance(off_m, subject.roads.info().region.unit, words)},
       {"why", std::string(subject.roads.text(place->why))},
       {"check", lanes::what_to_check(*place)}});
}

Band change_over(const Subject& subject, const Kerb& kerb) {
  const Instant at = wish::clock_after(subject.loop, kerb.seconds.likely, subject.setting);
  std::string text =
      subject.words.fill("seats.change", {{"street", street_words(subject, kerb.stretch)},
                                          {"clock", write_clock(at)},
                                          {"place", where_to_stop(subject, kerb)}});
  if (const wish::PullUp* planned = stop_at(subject, kerb.stretch)) {
    text += subject.words.fill("seats.stop", {{"what", purpose_words(subject.words, *planned)}});
    if (const std::string on = drive_on_words(subject, *planned); !on.empty()) text += "; " + on;
  }
  return {kerb.seconds.likely, text};
}

/// "; pull up on the left …" for each stop on stretches of the instructor's own.
std::string own_stops(const Subject& subject, std::size_t first, std::size_t end) {
  std::string text;
  for (const wish::PullUp& place : subject.whole.pull_ups)
    if (!place.purpose.empty() && place.stretch >= first && place.stretch < end)
      text += "; " + stop_words(subject, subject.whole, place);
  return text;
}

/// Streets of some stretches of the whole drive, but that of the change.
std::string streets_on(const Subject& subject, std::size_t first, std::size_t end,
                       const std::string& but) {
  std::vector<std::string> streets;
  for (std::size_t i = first; i < end; ++i) {
    const std::string street = say::spoken_name(subject.whole.stretches[i].street);
    if (!street.empty() && street != but && std::ranges::find(streets, street) == streets.end())
      streets.push_back(street);
  }
  const bool more = streets.size() > most_named;
  if (more) streets.resize(most_named);
  return joined(streets, ", ") + (more ? " …" : "");
}

/// "; the kerb at the door: …" where waiting may be forbidden.
std::string door_words(const Subject& subject, lanes::DoorEnd end) {
  std::string text;
  for (const lanes::DoorKerb& kerb :
       lanes::door_kerbs({subject.roads, subject.whole, subject.setting}))
    if (kerb.which == end && kerb.verdict != lanes::MayStop::usable)
      text += "; " + subject.words.fill("seats.door", {{"kerb", lanes::kerb_words(kerb)}});
  return text;
}

std::string driven_words(const Subject& subject, std::string_view key, const std::string& street,
                         const std::string& streets, double seconds) {
  const std::string text = subject.words.fill(
      key, {{"street", street}, {"minutes", write_minutes(subject.words, seconds)}});
  return streets.empty() ? text : text + subject.words.fill("seats.by", {{"streets", streets}});
}

}  // namespace

std::vector<Band> seats_before(const Subject& subject) {
  if (wish::practice_of(subject.loop).first == 0) return {};
  const Kerb kerb = kerb_at_begin(subject);
  const std::string street = street_words(subject, 0);
  double stops_s = 0;
  for (const wish::PullUp& place : subject.whole.pull_ups)
    if (place.stretch < subject.before) stops_s += place.seconds;
  const std::string out =
      driven_words(subject, "card.drive_out", street,
                   streets_on(subject, 0, subject.before, street), kerb.seconds.likely - stops_s) +
      own_stops(subject, 0, subject.before) + door_words(subject, lanes::DoorEnd::begin);
  return {{0, out}, change_over(subject, kerb)};
}

std::vector<Band> seats_behind(const Subject& subject) {
  const std::size_t stretches = subject.loop.stretches.size();
  if (wish::practice_of(subject.loop).last + 1 >= stretches) return {};
  const Kerb kerb = kerb_at_end(subject);
  const std::string street = street_words(subject, stretches - 1);
  const wish::Loop& whole = subject.whole;
  const std::size_t behind = subject.before + stretches;
  double left_s = whole.seconds.likely + whole.stop_seconds - kerb.seconds.likely;
  for (const wish::PullUp& place : whole.pull_ups)
    if (place.stretch + 1 >= behind) left_s -= place.seconds;
  const std::string back =
      driven_words(subject, "card.drive_back", street,
                   streets_on(subject, behind, whole.stretches.size(), street), left_s) +
      own_stops(subject, behind, whole.stretches.size()) + door_words(subject, lanes::DoorEnd::end);
  return {change_over(subject, kerb), {kerb.seconds.likely, back}};
}

std::vector<lanes::DoorKerb> kerbs_of(const lanes::TimedDrive& own) {
  std::vector<lanes::DoorKerb> kerbs = lanes::door_kerbs(own);
  const wish::RowSpan practice = wish::practice_of(own.loop);
  for (lanes::DoorKerb& kerb : kerbs)
    kerb.seats_change = kerb.which == lanes::DoorEnd::begin
                            ? practice.first > 0
                            : practice.last + 1 < own.loop.stretches.size();
  return kerbs;
}

}  // namespace loopwright::card
