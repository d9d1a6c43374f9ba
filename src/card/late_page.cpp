// Method: rows from which one goes home the same way stand together, with the longest of their times.
#include "card/late_page.hpp"

#include <algorithm>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::card {
namespace {

struct Homes {
  std::vector<std::size_t> rows;
  HomeFrom way;
};

std::vector<Homes> homes_of(const Subject& subject) {
  std::vector<Homes> homes;
  for (std::size_t k = 0; k < subject.rows.size(); ++k) {
    const auto way = home_from(subject, k);
    if (!way) continue;
    const bool same = !homes.empty() && homes.back().way.streets == way->streets &&
                      homes.back().way.hard == way->hard;
    if (!same) homes.push_back({{}, *way});
    Homes& last = homes.back();
    last.rows.push_back(k + 1);
    if (way->seconds > last.way.seconds) last.way = *way;
  }
  return homes;
}

void add_homes(Flow& flow, const PageStyle& style, const Subject& subject) {
  const say::Words& words = subject.words;
  const std::vector<Homes> homes = homes_of(subject);
  if (homes.empty()) return;
  flow.heading(std::string(words.at("pack.ways_home")));
  if (std::ranges::any_of(homes, [](const Homes& one) { return one.way.hard > 0; }))
    flow.paragraph(std::string(words.at("pack.home_note")), bold(style));
  for (const Homes& one : homes) {
    const std::string rows = write_rows(words, one.rows);
    const std::string minutes = write_minutes(words, one.way.seconds);
    const std::string_view key = one.way.hard == 0 ? "pack.home_from" : "pack.home_hard";
    flow.paragraph(words.fill(key, {{"rows", rows},
                                    {"minutes", minutes},
                                    {"streets", one.way.streets},
                                    {"n", std::to_string(one.way.hard)}}),
                   plain(style));
  }
}

/// What a text says beyond words that stand above the list.
std::string beyond(std::string_view text, std::string_view known) {
  if (!text.starts_with(known)) return std::string(text);
  text.remove_prefix(known.size());
  const std::size_t begin = text.find_first_not_of(";, ");
  return begin == std::string_view::npos ? std::string() : std::string(text.substr(begin));
}

/// Why one may stop there, beyond what is so of nearly every place: no ban, and the least that is said of
/// how far junctions are.
std::string reason_words(const say::Words& words, const wish::PullUp& place) {
  return beyond(beyond(place.why, words.at("pack.no_ban")), words.at("pack.clear_least"));
}

std::string place_words(const Subject& subject, const wish::PullUp& place) {
  const say::Words& words = subject.words;
  const std::string street = street_words(subject, place.stretch);
  const std::string row = write_rows(words, {row_of_stretch(subject, place.stretch)});
  const std::string side(words.at(place.left ? "side.left" : "side.right"));
  std::vector<std::string> parts{
      words.fill("pack.place", {{"street", street}, {"row", row}, {"side", side}}),
      reason_words(words, place), beyond(place.check, words.at("pack.check"))};
  if (place.leave_by_s != 0) {
    const Instant by = wish::clock_after(subject.loop, place.leave_by_s, subject.setting);
    parts.push_back(words.fill("stop.drive_on", {{"clock", write_clock(by)}}));
  }
  std::erase(parts, "");
  return joined(parts, "; ");
}

void add_places(Flow& flow, const PageStyle& style, const Subject& subject) {
  const say::Words& words = subject.words;
  if (subject.loop.pull_ups.empty()) return;
  flow.heading(std::string(words.at("pack.places")));
  flow.paragraph(std::string(words.at("pack.places_note")), bold(style));
  for (const wish::PullUp& place : subject.loop.pull_ups)
    flow.paragraph(place_words(subject, place), plain(style));
}

}  // namespace

void add_late(Flow& flow, const PageStyle& style, const Subject& subject) {
  add_homes(flow, style, subject);
  add_places(flow, style, subject);
}

}  // namespace loopwright::card
