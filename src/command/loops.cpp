// Method:
//   1. Words become a wish; nothing is opened before all of them are understood.
//   2. find looks for loops, or routes the instructor's own drive through the points given.
//   3. The answer is written to a text, read back, and proved as it stands there; a false claim is
//      our own fault, and then nothing is written.
//   4. The file is written whole, and a summary printed. Wish not met: exit 4, the file is there.
#include <algorithm>
#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/keep_off_words.hpp"
#include "command/lesson_words.hpp"
#include "command/loop_summary.hpp"
#include "command/places.hpp"
#include "command/shut_notes.hpp"
#include "command/stop_options.hpp"
#include "command/wish_words.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/file/ledger.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/store/area.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

// Shorter is no lesson, longer no day's work; both far inside what the search can bear.
constexpr Between minutes_allowed{10, 600};
constexpr Between alternatives_allowed{1, 10};
constexpr Between passes_allowed{1, 99};
// The test's own takes about 20 minutes or all of it (DEVELOPERS.md, Independent driving).
constexpr Between independent_allowed{5, 120};

struct LoopTexts {
  AreaTexts area;
  WishWords words;
  std::string wish_file, keep_wish, driven, output;
  bool thorough = false;
};

struct LoopJob {
  AreaTexts area;
  std::filesystem::path output, wish_file, keep_wish, driven;
  WishWords words;
  std::optional<WrittenTime> start;
  WrittenPlace home;
  std::optional<WrittenPlace> end, drive_out, drive_back;
  std::vector<WrittenPlace> through;
  std::vector<WrittenKeepOff> keep_offs;
  find::Effort effort = find::Effort::usual;
  wish::Wish wish;  ///< its places, start and ledger are filled in once the area is open
};

void add_options(Options& app, LoopTexts& texts) {
  add_area(app, texts.area);
  texts.words.add_options(app);
  app.add_option("--wish", texts.wish_file,
                 "file of words of this command, a line each, such as "
                 "'minutes 60'; what is given here beats it");
  app.add_option("--keep-wish", texts.keep_wish, "file to write these words into, for --wish");
  app.add_option("--driven", texts.driven,
                 "file of streets driven on other lessons: day, OSM way, how often, a line each");
  app.add_flag("--thorough", texts.thorough,
               "look longer, and say more closely how good the loops are");
  app.add_option("-o,--output", texts.output, "loop file to write")->required();
  app.footer(kinds_help());
}

/// The whole number of a word; none when it isn't said.
std::optional<int> number(const WishWords& words, const std::string& name, Between allowed) {
  const Said* said = words.one(name);
  if (said == nullptr) return std::nullopt;
  return whole_number("--" + name, said->text, allowed);
}

void read_minutes(wish::Wish& wish, const WishWords& words) {
  wish.minutes = number(words, "minutes", minutes_allowed);
  if (!wish.minutes && !wish.parts.empty()) {
    const int reserve = number(words, "reserve", {0, minutes_allowed.high}).value_or(0);
    wish.minutes = minutes_of_parts(wish, reserve);
    if (*wish.minutes < minutes_allowed.low || *wish.minutes > minutes_allowed.high)
      throw UsageError("--part: the parts take " + std::to_string(*wish.minutes) +
                       " minutes; a lesson takes 10 to 600");
  }
  if (!wish.minutes && words.one("through") == nullptr)
    throw UsageError("give --minutes for a search, or --through with the points of your own drive");
  if (words.one("reserve") == nullptr) return;
  if (!wish.minutes) throw UsageError("--reserve is a part of --minutes, which is missing");
  wish.reserve_minutes =
      number(words, "reserve", {0, *wish.minutes - minutes_allowed.low}).value_or(0);
}

/// Each of what a word says, as `read` reads it; once, however often it is said.
template <class Value, class Read>
void read_each(const std::vector<Said>& all, std::vector<Value>& values, Read read) {
  for (const Said& said : all) {
    Value value = said.read(read);
    if (std::find(values.begin(), values.end(), value) == values.end())
      values.push_back(std::move(value));
  }
}

/// A spacing said later replaces one of the same kind.
void read_spacings(wish::Wish& wish, const WishWords& words) {
  for (const Said& said : words.all("spacing")) {
    const wish::Spacing spacing = said.read(wish::read_spacing);
    std::erase_if(wish.spacings,
                  [&](const wish::Spacing& other) { return other.kind == spacing.kind; });
    wish.spacings.push_back(spacing);
  }
}

StopTexts stops_in(const WishWords& words) {
  const auto text = [&](std::string_view name) {
    const Said* said = words.one(name);
    return said == nullptr ? std::string() : said->text;
  };
  StopTexts texts{.brief = text("brief"), .talk = text("talk"), .new_kinds = {}};
  for (const Said& said : words.all("new")) texts.new_kinds.push_back(said.text);
  return texts;
}

wish::Wish wish_of(const WishWords& words) {
  wish::Wish wish;
  read_parts(wish, words);
  read_minutes(wish, words);
  wish.alternatives = number(words, "alternatives", alternatives_allowed).value_or(1);
  for (const Said& said : words.all("want")) wish.wants.push_back(said.read(wish::read_want));
  read_each(words.all("avoid"), wish.avoids, wish::read_avoid);
  read_each(words.all("welcome"), wish.welcome, wish::read_welcome);
  read_spacings(wish, words);
  wish.place_passes = number(words, "place-passes", passes_allowed);
  wish.street_passes = number(words, "street-passes", passes_allowed);
  wish.hardest = number(words, "hardest", {1, 5});
  const std::optional<int> level = number(words, "level", {1, 5});
  wish.level = level.value_or(wish.level);
  wish.level_given = level.has_value();
  read_stops(wish, stops_in(words));
  wish.independent_minutes = number(words, "independent", independent_allowed).value_or(0);
  if (wish.minutes && wish.independent_minutes > *wish.minutes - wish.reserve_minutes)
    throw UsageError("--independent is a part of --minutes: give no more than " +
                     std::to_string(*wish.minutes - wish.reserve_minutes));
  if (words.one("variants") != nullptr && words.one("through") != nullptr)
    throw UsageError("--variants is for a search, not for your own drive with --through");
  check_lesson(wish, words);
  return wish;
}

void read_places(LoopJob& job) {
  const Said* home = job.words.one("home");
  if (home == nullptr) throw UsageError("--home is required; see 'loopwright loops --help'");
  job.home = read_place("--home", home->text);
  if (const Said* end = job.words.one("end")) job.end = read_place("--end", end->text);
  if (const Said* out = job.words.one("drive-out"))
    job.drive_out = read_place("--drive-out", out->text);
  if (const Said* back = job.words.one("drive-back"))
    job.drive_back = read_place("--drive-back", back->text);
  if (const Said* through = job.words.one("through"))
    for (const auto point : split(through->text, ';'))
      job.through.push_back(read_place("--through", point));
  for (const Said& said : job.words.all("keep-off"))
    job.keep_offs.push_back(said.read(read_keep_off));
}

void find_places(LoopJob& job, const road::Roads& roads) {
  Places places(roads, std::cout);
  job.wish.home = places.find(job.home);
  if (job.end) job.wish.end = places.find(*job.end);
  if (job.drive_out) job.wish.drive_out = places.find(*job.drive_out);
  if (job.drive_back) job.wish.drive_back = places.find(*job.drive_back);
  for (const WrittenPlace& point : job.through) job.wish.through.push_back(places.find(point));
  for (const WrittenKeepOff& written : job.keep_offs)
    job.wish.keep_offs.push_back(find_keep_off(written, places, roads));
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

std::optional<LoopJob> job_of(const Arguments& words) {
  Options app{"Finds loops from the door and back that meet a wish inside the time.",
              "loopwright loops"};
  LoopTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return std::nullopt;
  texts.words.settle(texts.wish_file);
  LoopJob job{.area = texts.area,
              .output = texts.output,
              .wish_file = texts.wish_file,
              .keep_wish = texts.keep_wish,
              .driven = texts.driven,
              .words = std::move(texts.words),
              .start = {},
              .home = {},
              .end = {},
              .drive_out = {},
              .drive_back = {},
              .through = {},
              .keep_offs = {},
              .effort = texts.thorough ? find::Effort::thorough : find::Effort::usual,
              .wish = {}};
  with_lines(job.words, [&] {
    if (const Said* start = job.words.one("start")) job.start = time_of("--start", start->text);
    read_places(job);
    job.wish = wish_of(job.words);
  });
  return job;
}

/// What the ledger says of quiet streets of this area, for the day of the lesson.
std::vector<wish::StreetUse> street_use(const LoopJob& job, const road::Roads& roads) {
  if (job.driven.empty()) return {};
  const std::string name = job.driven.string();
  const auto rows = file::read_ledger(file::load_text(job.driven, {"ledger", {}}), name);
  std::vector<wish::StreetUse> use = file::street_use(rows, job.wish.start.civil().date);
  std::erase_if(use, [&](const wish::StreetUse& one) {
    const auto pieces = roads.pieces_of_way(one.way);
    return std::none_of(pieces.begin(), pieces.end(), [](const road::Piece& piece) {
      return (piece.flags & road::piece_flag::quiet) != 0;
    });
  });
  return use;
}

void tell_moved(const Ground& ground, const road::Roads& roads, const wish::Wish& wish) {
  std::vector<NamedPlace> places{{"home", wish.home}};
  for (std::size_t k = 0; k < wish.through.size(); ++k)
    places.push_back({"point " + std::to_string(k + 1), wish.through[k]});
  if (wish.drive_out) places.push_back({"where the learner begins", *wish.drive_out});
  if (wish.drive_back) places.push_back({"where the learner ends", *wish.drive_back});
  if (wish.end) places.push_back({"the end", *wish.end});
  tell_moved_places(std::cout, ground, roads, places);
}

wish::Answer answer_to(Ground& ground, const LoopJob& job) {
  const hours::Setting setting = ground.setting_of(job.wish);
  const road::Roads& roads = ground.for_lesson(wish::lesson_time(job.wish, setting));
  tell_moved(ground, roads, job.wish);
  wish::Answer answer;
  answer.area = name_of(roads.info(), job.area.area);
  answer.notes = ground.notes_name();
  answer.wish = job.wish;
  find::FindResult found = job.wish.through.empty()
                               ? find::find_loops(roads, job.wish, setting, job.effort)
                               : find::route_through(roads, job.wish, setting);
  if (job.words.one("variants") != nullptr)
    find::add_variants(roads, job.wish, setting, job.effort, found);
  answer.loops = std::move(found.loops);
  answer.shortfall = std::move(found.shortfall);
  // A start asked for now can only be put off.
  if (answer.shortfall && !job.start)
    std::erase_if(answer.shortfall->better_starts,
                  [&](const Instant& at) { return at.unix_s < job.wish.start.unix_s; });
  answer.fewer_because = std::move(found.fewer_because);
  return answer;
}

/// Claims checked in the file as it will be written. Throws when one is false.
std::int64_t prove_text(const Ground& ground, std::string_view text, const LoopJob& job) {
  wish::Answer written = file::read_answer(text, job.output.string());
  const proof::Proof proof = proof::prove(ground.noted(), written, ground.setting_of(written.wish));
  if (!proof.false_claim) return proof.claims;
  throw Error(Exit::false_claim,
              "internal fault, nothing is written: what was found doesn't hold (" +
                  *proof.false_claim + "); please report the command");
}

/// Nothing is worked out that couldn't be written, or would be written over what is read.
void need_room_for_files(const LoopJob& job) {
  for (const std::filesystem::path& file : {job.output, job.keep_wish}) {
    if (file.empty()) continue;
    need_folder_of(file);
    need_own_file(file, {job.area.area, job.area.notes, job.wish_file, job.driven});
  }
  if (!job.keep_wish.empty()) need_own_file(job.keep_wish, {job.output});
}

void keep_wish(const LoopJob& job, const std::string& text) {
  if (job.keep_wish.empty()) return;
  store::write_whole(job.keep_wish, text);
  std::cout << job.keep_wish.string() << ": written; --wish " << job.keep_wish.string()
            << " asks for the same again\n";
}

Exit run(LoopJob job) {
  need_room_for_files(job);
  const std::string kept = job.words.file_text();
  Ground ground(job.area);
  with_lines(job.words, [&] { find_places(job, ground.map()); });
  job.wish.start = moment(job.start, ground.info());
  job.wish.street_use = street_use(job, ground.map());
  job.wish.terms = ground.terms();
  wish::Answer answer;
  with_lines(job.words, [&] { answer = answer_to(ground, job); });
  const std::string text = file::write_answer(answer);
  const std::int64_t claims = prove_text(ground, text, job);
  store::write_whole(job.output, text);
  const hours::Setting setting = ground.setting_of(answer.wish);
  print_summary(std::cout, answer, {ground.noted().roads, setting});
  std::cout << job.output.string() << ": written; " << claims
            << " claims checked, all agree with the map's rules\n";
  keep_wish(job, kept);
  return answer.shortfall ? Exit::wish_not_met : Exit::done;
}

}  // namespace

Exit loops(const Arguments& words) {
  const std::optional<LoopJob> job = job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
