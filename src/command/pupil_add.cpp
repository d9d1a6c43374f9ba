// Method: words are read onto a pupil: a new one, or the one of the book; only what is said changes.
#include <algorithm>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/folded.hpp"
#include "command/note.hpp"
#include "command/places.hpp"
#include "command/pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/scheme.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/store/area.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {
namespace {

struct PupilTexts {
  std::string code, book, home, area, scheme, licence, eyesight, theory, test, sides, today;
  std::vector<std::string> avoids;
};

std::string all_schemes() {
  std::string names;
  for (const book::Scheme& scheme : book::schemes()) {
    names.append(names.empty() ? "" : " or ").append(scheme.code);
    names.append(" (").append(scheme.name).append(")");
  }
  return names;
}

void add_options(Options& app, PupilTexts& texts) {
  app.add_option("CODE", texts.code,
                 "a code for the pupil, never a name: up to 12 letters and digits")
      ->required();
  add_book(app, texts.book);
  app.add_option("--home", texts.home,
                 "the door, as --home of 'loops'; used to plan, never printed");
  app.add_option("--area", texts.area,
                 "area file to look the home up in: one that it doesn't know is refused");
  app.add_option("--scheme", texts.scheme,
                 "how skills are recorded: " + all_schemes() + " (default: car-27)");
  app.add_option("--licence-seen", texts.licence,
                 "the day on which you saw the licence, 2026-11-28; 'none' takes it back");
  app.add_option("--eyesight-read", texts.eyesight, "the day on which a number plate was read");
  app.add_option("--theory-passed", texts.theory, "the day on which theory was passed");
  app.add_option("--test", texts.test, "the day of the driving test");
  app.add_option("--avoid", texts.avoids,
                 "a kind that plans keep off for this pupil; may be repeated; 'none' clears")
      ->one_value_each();
  app.add_option("--sides", texts.sides, "left-right, or my-your for who mixes them");
  app.add_option("--today", texts.today, "date, 2026-11-28 (default: today)");
}

/// A day, or none when it is taken back; no value when nothing was said.
std::optional<std::optional<Date>> day_said(std::string_view option, const std::string& text) {
  if (text.empty()) return std::nullopt;
  if (text == "none") return std::optional<Date>();
  return std::optional<Date>(day_of(option, text));
}

void set_tick(book::Pupil& pupil, book::Tick tick, const std::string& text) {
  const auto said = day_said("--" + std::string(book::name(tick)), text);
  if (!said) return;
  pupil.ticks.erase(tick);
  if (*said) pupil.ticks[tick] = **said;
}

void set_avoids(book::Pupil& pupil, const std::vector<std::string>& avoids) {
  for (const std::string& text : avoids) {
    if (text == "none") {
      pupil.avoids.clear();
      continue;
    }
    const auto [kind, movement] = wish::read_avoid(text);
    if (movement != road::Movement::none)
      throw UsageError("--avoid: " + text +
                       ": the book keeps a kind off whole; leave the movement out, or say it with "
                       "each plan");
    if (std::find(pupil.avoids.begin(), pupil.avoids.end(), kind) == pupil.avoids.end())
      pupil.avoids.push_back(kind);
  }
}

void set_sides(book::Pupil& pupil, const std::string& sides) {
  if (sides.empty()) return;
  if (sides != "left-right" && sides != "my-your")
    throw UsageError("--sides takes left-right or my-your, not " + as_given(sides));
  pupil.my_your = sides == "my-your";
}

void set(book::Pupil& pupil, const PupilTexts& texts) {
  if (!texts.home.empty()) pupil.home = std::string(trim(texts.home));
  if (!texts.scheme.empty()) {
    if (book::find_scheme(texts.scheme) == nullptr)
      throw UsageError("--scheme takes " + all_schemes() + ", not " + as_given(texts.scheme));
    pupil.scheme = texts.scheme;
  }
  set_tick(pupil, book::Tick::licence_seen, texts.licence);
  set_tick(pupil, book::Tick::eyesight_read, texts.eyesight);
  set_tick(pupil, book::Tick::theory_passed, texts.theory);
  if (const auto test = day_said("--test", texts.test)) pupil.test_day = *test;
  set_avoids(pupil, texts.avoids);
  set_sides(pupil, texts.sides);
}

void need_home_with_area(const PupilTexts& texts) {
  if (!texts.area.empty() && texts.home.empty())
    throw UsageError("--area is for looking --home up: give that as well");
}

/// Looks the home up as a plan will. Throws UsageError when the area doesn't know it, or no learner can begin there.
void check_home(const PupilTexts& texts) {
  if (texts.home.empty()) return;
  const WrittenPlace written = read_place("--home", texts.home);
  if (texts.area.empty()) return;
  const store::Area area = store::open_area(texts.area);
  const Point door = Places(area.roads(), std::cout).find(written);
  if (!reach::snap_home(area.roads(), door))
    throw UsageError("--home: " + as_given(texts.home) +
                     " has no road within 150 m on which a learner may drive, in " + texts.area +
                     "; name the nearest corner, or build an area that reaches farther");
}

/// Great Britain and Ireland lie there, from memory, with half a degree round them; the other way round it is sea and desert.
bool is_swapped_home(Point at) {
  return at.lat() > -11.5 && at.lat() < 3 && at.lon() > 49 && at.lon() < 61.5;
}

/// A home is kept as it is said; whether a map knows it may turn out only with the first plan.
void tell_unchecked(const PupilTexts& texts) {
  if (texts.home.empty() || !texts.area.empty()) return;
  const auto at = read_place("--home", texts.home).at;
  if (at && is_swapped_home(*at))
    print_folded(std::cout, 0,
                 "look at the home: in " + texts.home +
                     " the longitude seems to stand first; it is LAT,LON, such as 54.2973,2.5988, "
                     "and 'loopwright pupil change' puts it right");
  else
    print_folded(std::cout, 0,
                 "the home isn't looked up yet: --area AREA does it at once, else the first plan");
}

}  // namespace

Exit pupil_add(const Arguments& words) {
  Options app{
      "Puts a pupil into the book. No name, birth date, licence number or diagnosis belongs there.",
      "loopwright pupil add"};
  PupilTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return Exit::done;
  need_home_with_area(texts);
  book::Pupil pupil{.code = pupil_code("CODE", texts.code),
                    .scheme = {},
                    .added = today_of(texts.today),
                    .home = {}};
  pupil.scheme = book::scheme_of("", pupil.added).code;
  set(pupil, texts);
  check_home(texts);
  book::Book book = open_book(texts.book, book::Opening::may_make);
  book::add_pupil(book, pupil);
  std::cout << pupil.code << " is in the book " << book.file().string() << '\n';
  tell_unchecked(texts);
  return Exit::done;
}

Exit pupil_change(const Arguments& words) {
  Options app{"Changes what is kept of a pupil; what isn't said stays.", "loopwright pupil change"};
  PupilTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return Exit::done;
  need_home_with_area(texts);
  book::Book book = open_book(texts.book, book::Opening::must_be_there);
  book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.code));
  set(pupil, texts);
  check_home(texts);
  book::change_pupil(book, pupil);
  std::cout << pupil.code << " is changed\n";
  tell_unchecked(texts);
  return Exit::done;
}

}  // namespace loopwright::command
