// Method: one table says which words there are; the options of the command line, the lines of a wish
// file and what is written into one are all made from it.
#include "command/wish_words.hpp"

#include <algorithm>
#include <array>
#include <cassert>

#include "command/arguments.hpp"
#include "command/places.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/file/load_text.hpp"

namespace loopwright::command {
namespace {

/// `flag`: it is said or not, and says nothing more.
enum class Times : std::uint8_t { once, often, flag };

struct Row {
  std::string_view name;
  Times times;
  const char* help;
};

constexpr std::array rows{
    Row{"home", Times::once,
        "the door: LAT,LON, or a street, house number, crossing of two streets, postcode or name"},
    Row{"end", Times::once, "where the lesson ends, when it isn't home; as --home"},
    Row{"drive-out", Times::once, "you drive there first, the learner from there; as --home"},
    Row{"drive-back", Times::once, "the learner drives to there, you drive on home; as --home"},
    Row{"minutes", Times::once, "away from the door, 10 to 600"},
    Row{"reserve", Times::once, "minutes of these to keep free (default: 0)"},
    Row{"want", Times::often,
        "what to practise, such as roundabout:right=3, bus-lane:usable, emerge=max, or "
        "turn-off:left+narrow-road for one that leads into the other; may be repeated"},
    Row{"part", Times::often,
        "instead of --want, a part of the lesson: its minutes, which roads (any, quiet or busier), "
        "'hardest 3' if you like, and behind a colon what to practise: '20 quiet: turn-off:left=3, "
        "emerge:left=2'; repeated, in order"},
    Row{"welcome", Times::often,
        "a kind that is worth a little more, however often it comes; may be repeated"},
    Row{"avoid", Times::often,
        "a kind to keep off, or one movement of it, such as signals:right; may be repeated"},
    Row{"keep-off", Times::often,
        "a street or junction to keep off, as --home, or an area LAT,LON;LAT,LON;LAT,LON; with "
        "'@ HOURS' behind it only then; may be repeated"},
    Row{"take", Times::often,
        "a street or junction that the loop must take, as --home; may be repeated"},
    Row{"spacing", Times::often,
        "KIND=MINUTES between two passes of the kind that count; may be repeated"},
    Row{"place-passes", Times::once,
        "passes of one place that count (default: 6, of a run of road 3)"},
    Row{"street-passes", Times::once, "drives over one quiet street, at most (default: 2)"},
    Row{"hardest", Times::once, "nothing harder, whatever is asked for, 1 to 5"},
    Row{"easy-first", Times::flag,
        "nothing harder than the learner's level in the first fifth, and a gentle last stretch "
        "home"},
    Row{"new", Times::often,
        "a kind that is new to the learner: a brief is planned before the first; may be repeated"},
    Row{"brief", Times::once, "minutes of each brief, 1 to 30 (default: 4)"},
    Row{"talk", Times::once, "minutes of a talk near the end, 1 to 30 (default: none)"},
    Row{"independent", Times::once,
        "minutes in which the learner finds the way, by signs or by at most three directions, 5 "
        "to 120"},
    Row{"through", Times::once, "PLACE;PLACE;… your own drive instead of a search; each as --home"},
    Row{"alternatives", Times::once, "loops to find, 1 to 10 (default: 1)"},
    Row{"variants", Times::flag, "find an easier and a harder variant of the first loop, too"},
    Row{"start", Times::once, "date and time, 2026-11-28T15:00 (default: now)"},
    Row{"level", Times::once, "of the learner, 1 to 5 (default: 3)"},
    Row{"pace", Times::once, pace_help}};

constexpr std::string_view first_line =
    "# A wish for 'loopwright loops AREA --wish': a word of the command line a line.\n";

std::size_t row_named(std::string_view name) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.name == name; });
  return static_cast<std::size_t>(found - rows.begin());
}

std::string all_names() {
  std::string names;
  for (const Row& row : rows) names.append(names.empty() ? "" : ", ").append(row.name);
  return names;
}

}  // namespace

void throw_in_place(const std::string& from, const UsageError& error) {
  if (from.empty()) throw UsageError(error.what());
  std::string_view what = error.what();
  if (what.starts_with("--")) what.remove_prefix(2);
  throw InputError(from + ": " + std::string(what));
}

WishWords::WishWords() : words_(rows.size()) {}

void WishWords::add_options(Options& app) {
  for (std::size_t k = 0; k < rows.size(); ++k) {
    const std::string option = "--" + std::string(rows[k].name);
    if (rows[k].times == Times::flag)
      app.add_flag(option, words_[k].flag, rows[k].help);
    else if (rows[k].times == Times::once)
      app.add_option(option, words_[k].one, rows[k].help);
    else
      app.add_option(option, words_[k].many, rows[k].help)->one_value_each();
  }
}

void WishWords::take_line(std::string_view line, const std::string& from) {
  const std::size_t blank = std::min(line.find_first_of(" \t"), line.size());
  const std::string_view name = line.substr(0, blank);
  const std::string_view value = trim(line.substr(blank));
  const std::size_t row = row_named(name);
  if (row == rows.size())
    throw InputError(from + ": there is no word " + as_given(name) + "; a wish has " + all_names());
  const bool is_flag = rows[row].times == Times::flag;
  if (value.empty() && !is_flag)
    throw InputError(from + ": '" + std::string(name) +
                     "' stands alone; write behind it what it is");
  if (!value.empty() && is_flag)
    throw InputError(from + ": '" + std::string(name) + "' stands alone, without " +
                     as_given(value));
  std::vector<Said>& said = words_[row].said;
  if (rows[row].times != Times::often && !said.empty())
    throw InputError(from + ": '" + std::string(name) + "' was said before, in " + said[0].from);
  said.push_back({std::string(value), from});
}

void WishWords::take_text(std::string_view text, const std::string& from) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = trim(text.substr(0, end));
    if (!line.empty() && line.front() != '#')
      take_line(line, from + ", line " + std::to_string(number));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

void WishWords::fill(std::string_view name, const std::string& value, const std::string& from) {
  const std::size_t row = row_named(name);
  assert(row < rows.size());
  if (rows[row].times == Times::often || words_[row].said.empty())
    words_[row].said.push_back({value, from});
}

void WishWords::settle(const std::filesystem::path& wish_file) {
  if (!wish_file.empty())
    take_text(file::load_text(wish_file, {"wish file", "loopwright loops --keep-wish"}),
              wish_file.string());
  for (std::size_t k = 0; k < rows.size(); ++k) {
    Word& word = words_[k];
    if (!word.one.empty() || word.flag) word.said = {Said{word.one}};
    for (const std::string& text : word.many) word.said.push_back({text});
  }
}

const Said* WishWords::one(std::string_view name) const {
  const std::vector<Said>& said = all(name);
  return said.empty() ? nullptr : &said.front();
}

const std::vector<Said>& WishWords::all(std::string_view name) const {
  const std::size_t row = row_named(name);
  assert(row < rows.size());
  return words_[row].said;
}

std::vector<std::string> WishWords::names_said() const {
  std::vector<std::string> names;
  for (std::size_t k = 0; k < rows.size(); ++k)
    if (!words_[k].said.empty()) names.emplace_back(rows[k].name);
  return names;
}

void WishWords::throw_in_its_line(const UsageError& error) const {
  std::string_view name = error.what();
  if (name.starts_with("--")) name.remove_prefix(2);
  const std::size_t row = row_named(name.substr(0, name.find_first_of(" :")));
  if (row == rows.size() || words_[row].said.empty()) throw UsageError(error.what());
  // Of a word that is said several times the one that is quoted.
  const std::vector<Said>& said = words_[row].said;
  const auto quoted = std::find_if(said.begin(), said.end(), [&](const Said& one) {
    return name.find("'" + one.text) != std::string_view::npos;
  });
  throw_in_place((quoted == said.end() ? said.front() : *quoted).from, error);
}

std::string WishWords::file_text() const {
  std::string text(first_line);
  for (std::size_t k = 0; k < rows.size(); ++k) {
    if (rows[k].name == "start") continue;  // the lesson is kept to be repeated on another day
    for (const Said& said : words_[k].said) {
      if (said.text.find_first_of("\r\n") != std::string::npos)
        throw UsageError("--keep-wish: what --" + std::string(rows[k].name) +
                         " says has a line end, which a wish file can't keep; leave it out");
      const std::string_view value = trim(said.text);
      text.append(rows[k].name).append(value.empty() ? "" : " ").append(value).append("\n");
    }
  }
  return text;
}

}  // namespace loopwright::command
