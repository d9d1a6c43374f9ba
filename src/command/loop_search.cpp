// Method:
//   1. Words become a wish; nothing is opened before all of them are understood.
//   2. find looks for loops, or routes the instructor's own drive through the points given.
//   3. What will be written is read back, and proved as it stands there; a false claim is our own fault.
#include "command/loop_search.hpp"

#include <algorithm>
#include <cmath>
#include <ostream>
#include <string>
#include <utility>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/print.hpp"
#include "command/shut_notes.hpp"
#include "command/wish_of_words.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/easier_begin.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::command {
namespace {

/// A loop file holds so many of each; nobody should wait for a search that can't be written.
void need_short_lists(const LoopAsk& ask) {
  const auto need = [](std::string_view word, std::size_t count) {
    if (count > file::most_listed)
      throw UsageError("--" + std::string(word) + ": at most " + std::to_string(file::most_listed) +
                       ", not " + std::to_string(count) + "; leave some out");
  };
  need("through", ask.through.size());
  for (const WrittenKeepOff& keep_off : ask.keep_offs) need("keep-off", keep_off.outline.size());
  for (const std::string& name : ask.words.names_said()) need(name, ask.words.all(name).size());
}

void read_places(LoopAsk& ask) {
  const Said* home = ask.words.one("home");
  if (home == nullptr) throw UsageError("--home is required; see 'loopwright loops --help'");
  ask.home = read_place("--home", home->text);
  if (const Said* end = ask.words.one("end")) ask.end = read_place("--end", end->text);
  if (const Said* out = ask.words.one("drive-out"))
    ask.drive_out = read_place("--drive-out", out->text);
  if (const Said* back = ask.words.one("drive-back"))
    ask.drive_back = read_place("--drive-back", back->text);
  if (const Said* through = ask.words.one("through"))
    for (const auto point : split(through->text, ';'))
      ask.through.push_back(read_place("--through", point));
  for (const Said& said : ask.words.all("keep-off"))
    ask.keep_offs.push_back(said.read(read_keep_off));
  for (const Said& said : ask.words.all("take")) ask.takes.push_back(said.read(read_take));
}

void find_places(LoopAsk& ask, const road::Roads& roads, std::ostream& out) {
  Places places(roads, out);
  ask.wish.home = places.find(ask.home);
  if (ask.end) ask.wish.end = places.find(*ask.end);
  if (ask.drive_out) ask.wish.drive_out = places.find(*ask.drive_out);
  if (ask.drive_back) ask.wish.drive_back = places.find(*ask.drive_back);
  for (const WrittenPlace& point : ask.through) ask.wish.through.push_back(places.find(point));
  for (const WrittenKeepOff& written : ask.keep_offs)
    ask.wish.keep_offs.push_back(find_keep_off(written, places, roads));
  for (const WrittenTake& written : ask.takes)
    ask.wish.takes.push_back(find_take(written, places, roads));
}

/// What a step throws of a word that stands in the wish file is told with the line it stands in.
template <class Step>
void with_lines(const WishWords& words, Step step) {
  try {
    step();
  } catch (const UsageError& error) {
    words.throw_in_its_line(error);
  }
}

void tell_moved(const Ground& ground, const road::Roads& roads, const wish::Wish& wish,
                std::ostream& out) {
  std::vector<NamedPlace> places{{"home", wish.home}};
  for (std::size_t k = 0; k < wish.through.size(); ++k)
    places.push_back({"point " + std::to_string(k + 1), wish.through[k]});
  if (wish.drive_out) places.push_back({"where the learner begins", *wish.drive_out});
  if (wish.drive_back) places.push_back({"where the learner ends", *wish.drive_back});
  if (wish.end) places.push_back({"the end", *wish.end});
  tell_moved_places(out, ground, roads, places);
}

struct SearchOn {
  const road::Roads& roads;
  const hours::Setting& setting;
  find::Effort effort;
};

/// What is found. Where nothing at all comes back unless the car is turned round, the wish is made to let it.
find::FindResult found_for(wish::Wish& wish, const SearchOn& on) {
  if (!wish.through.empty()) return find::route_through(on.roads, wish, on.setting);
  find::FindResult found = find::find_loops(on.roads, wish, on.setting, on.effort);
  if (!found.loops.empty() || wish::wants_turning_round(wish)) return found;
  wish::Wish turning = wish;
  turning.welcome.push_back(road::Kind::turn_in_road);
  find::FindResult turned = find::find_loops(on.roads, turning, on.setting, on.effort);
  if (turned.loops.empty()) return found;
  wish = std::move(turning);
  return turned;
}

std::string in_minutes(double minutes) {
  return std::to_string(std::lround(minutes)) + " min";
}

std::string place_words(const find::BeginPlace& place) {
  return "begun in " + place.street + " near " + place.corner + ", where you drive (";
}

std::string passes_words(int street_passes) {
  return "with quiet streets driven up to " + std::to_string(street_passes) + " times";
}

/// "begun in Bell Yard near Ropewalk, …": what the wish needs for it; empty when no such place was found.
std::string begun_elsewhere(const wish::Wish& wish, const SearchOn& on) {
  const auto begin = find::easier_begin(on.roads, wish, on.setting);
  if (!begin) return {};
  const std::string at = degrees(begin->place.at);
  std::string text = place_words(begin->place) + in_minutes(begin->there_minutes) + " there, " +
                     std::to_string(std::lround(begin->back_minutes)) + " back), ";
  if (begin->street_passes) text += "and " + passes_words(*begin->street_passes) + ", ";
  text += "it is met: --drive-out " + at + " --drive-back " + at;
  if (begin->street_passes) text += " --street-passes " + std::to_string(*begin->street_passes);
  return text;
}

/// "nowhere about here …": when no place to begin has roads that are easy enough for so long; else empty.
std::string too_little_road(const wish::Wish& wish, const SearchOn& on) {
  const auto round = find::longest_round(on.roads, wish, on.setting);
  if (!round) return {};
  std::string text =
      "nowhere about here do roads easy enough hang together for that long: the most is some " +
      in_minutes(round->minutes) + " of driving, " + place_words(round->place) +
      in_minutes(round->away_minutes) + " there and back)";
  if (round->street_passes > 0)
    text += "; " + passes_words(round->street_passes) + " (--street-passes " +
            std::to_string(round->street_passes) + ") some " + in_minutes(round->most_minutes);
  return text;
}

/// Where the wish was met only by turning the car round, or not at all.
void tell_hard_door(const wish::Wish& wish, bool turns, const SearchOn& on, std::ostream& out) {
  const std::string elsewhere = begun_elsewhere(wish, on);
  if (turns)
    print_folded(out, 0,
                 "nothing comes back in the minutes unless the car is turned round where a road "
                 "ends: it may be, as rarely as the search finds, and each time is told");
  if (!elsewhere.empty())
    print_folded(out, 0, (turns ? "without turning round: " : "not from this door: ") + elsewhere);
  else if (const std::string little = turns ? "" : too_little_road(wish, on); !little.empty())
    print_folded(out, 0, little);
}

wish::Answer searched(Ground& ground, const SearchAsk& search, std::ostream& out) {
  const LoopAsk& ask = search.ask;
  const hours::Setting setting = ground.setting_of(ask.wish);
  const road::Roads& roads = ground.for_lesson(wish::lesson_time(ask.wish, setting));
  tell_moved(ground, roads, ask.wish, out);
  wish::Answer answer;
  answer.area = name_of(roads.info(), search.area);
  answer.notes = ground.notes_name();
  answer.wish = ask.wish;
  const SearchOn on{roads, setting, ask.effort};
  find::FindResult found = found_for(answer.wish, on);
  const bool turns = wish::wants_turning_round(answer.wish) && !wish::wants_turning_round(ask.wish);
  if (turns || found.loops.empty()) tell_hard_door(ask.wish, turns, on, out);
  if (ask.words.one("variants") != nullptr)
    find::add_variants(roads, answer.wish, setting, ask.effort, found);
  answer.loops = std::move(found.loops);
  answer.shortfall = std::move(found.shortfall);
  // A start asked for now can only be put off.
  if (answer.shortfall && !ask.start)
    std::erase_if(answer.shortfall->better_starts,
                  [&](const Instant& at) { return at.unix_s < ask.wish.start.unix_s; });
  answer.fewer_because = std::move(found.fewer_because);
  return answer;
}

}  // namespace

LoopAsk ask_of(WishWords words) {
  LoopAsk ask{.words = std::move(words),
              .start = {},
              .home = {},
              .end = {},
              .drive_out = {},
              .drive_back = {},
              .through = {},
              .keep_offs = {},
              .takes = {},
              .wish = {}};
  with_lines(ask.words, [&] {
    if (const Said* start = ask.words.one("start")) ask.start = time_of("--start", start->text);
    read_places(ask);
    ask.wish = wish_of(ask.words);
    need_short_lists(ask);
  });
  return ask;
}

void settle(LoopAsk& ask, const Ground& ground, std::ostream& out) {
  with_lines(ask.words, [&] { find_places(ask, ground.map(), out); });
  ask.wish.start = moment(ask.start, ground.info());
  ask.wish.terms = ground.terms();
}

void keep_quiet(std::vector<wish::StreetUse>& use, const road::Roads& roads) {
  std::erase_if(use, [&](const wish::StreetUse& one) {
    const auto pieces = roads.pieces_of_way(one.way);
    return std::none_of(pieces.begin(), pieces.end(), [](const road::Piece& piece) {
      return (piece.flags & road::piece_flag::quiet) != 0;
    });
  });
}

wish::Answer answer_to(Ground& ground, const SearchAsk& search, std::ostream& out) {
  wish::Answer answer;
  with_lines(search.ask.words, [&] { answer = searched(ground, search, out); });
  return answer;
}

TextProof proof_of_text(const Ground& ground, std::string_view text,
                        const std::filesystem::path& name) {
  const wish::Answer written = file::read_answer(text, name.string());
  proof::Proof proof = proof::prove(ground.noted(), written, ground.setting_of(written.wish));
  return {std::move(proof.false_claim), proof.claims};
}

std::int64_t prove_text(const Ground& ground, std::string_view text,
                        const std::filesystem::path& name) {
  const TextProof proof = proof_of_text(ground, text, name);
  if (!proof.false_claim) return proof.claims;
  throw Error(Exit::false_claim,
              "internal fault, nothing is written: what was found doesn't hold (" +
                  *proof.false_claim + "); please report the command");
}

}  // namespace loopwright::command
