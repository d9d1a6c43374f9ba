// Method:
//   1. Words become a text, a region, a moment and a place; with --batch the texts come in a file.
//   2. One text is told in words with its verdict, the reason and the next change (hours_said.cpp);
//      one that can't be read, or a condition that can't, is shown with the place where reading
//      stopped, and is bad input.
//   3. Of a batch each line comes back with a letter (hours_batch.cpp).
#include "loopwright/hours/hours.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iostream>

#include "command/arguments.hpp"
#include "command/ground.hpp"
#include "command/hours_batch.hpp"
#include "command/hours_said.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::command {
namespace {

struct HoursTexts {
  std::vector<std::string> words;  ///< of TEXT: one when it is quoted as it should be
  std::string at, region, place, terms, base, batch;
  bool conditional = false;
};

void add_options(Options& app, HoursTexts& texts) {
  app.add_option("TEXT", texts.words, "hours in quotes, such as \"Mo-Fr 07:00-10:00; PH off\"");
  app.add_option("--region", texts.region,
                 "whose bank holidays: GB-ENG, GB-WLS, GB-SCT, GB-NIR, IE");
  app.add_option("--at", texts.at, "date and time there, 2026-11-30T08:30 (default: now)");
  app.add_option("--place", texts.place, "LAT,LON for sunrise and sunset");
  add_terms(app, texts.terms);
  app.add_flag("--conditional", texts.conditional,
               "TEXT is a value with conditions, such as \"20 mph @ (Mo-Fr 08:00-09:00)\"");
  app.add_option("--base", texts.base, "with --conditional: the value when no condition holds");
  app.add_option("--batch", texts.batch,
                 "instead of TEXT: a file, or - for standard input, with lines of region, text and "
                 "local time parted by tabs; each comes back with O in force, C not, U unknown or "
                 "ERR unreadable");
}

void check(const HoursTexts& texts) {
  const bool one = !texts.words.empty() || !texts.region.empty() || !texts.at.empty();
  if (!texts.batch.empty() && (one || texts.conditional)) {
    throw UsageError("--batch has texts, regions and times in its file; give none beside it");
  }
  if (texts.batch.empty() && texts.words.empty()) throw UsageError("give TEXT, or --batch FILE");
  if (texts.words.size() > 1) {
    throw UsageError("TEXT is one word to the shell; put it in quotes: \"" +
                     printable(texts.words[0] + " " + texts.words[1]) + " …\"");
  }
  if (texts.batch.empty() && texts.region.empty()) {
    throw UsageError("give --region, since bank holidays are a nation's");
  }
  if (!texts.conditional && !texts.base.empty()) {
    throw UsageError("--base is for a value with conditions; give --conditional too");
  }
}

std::optional<Point> point_of(const std::string& text) {
  if (text.empty()) return std::nullopt;
  const auto parts = split(text, ',');
  const auto lat = parts.size() == 2 ? read_number(parts[0]) : std::nullopt;
  const auto lon = parts.size() == 2 ? read_number(parts[1]) : std::nullopt;
  constexpr double most_lat = 90, most_lon = 180;
  if (lat && lon && std::abs(*lat) <= most_lat && std::abs(*lon) <= most_lon)
    return point_from_degrees(*lat, *lon);
  throw UsageError(
      "--place takes LAT,LON in degrees, LAT from -90 to 90 and LON from -180 to 180, " +
      std::string("such as 53.35,-6.26, not ") + as_given(text));
}

/// No text has a zero byte; what isn't one would come back as rows of rubbish.
bool begins_as_text(std::istream& in) {
  std::string begin(4096, ' ');
  in.read(begin.data(), static_cast<std::streamsize>(begin.size()));
  const bool text = begin.find('\0') == std::string::npos;
  in.clear();
  in.seekg(0);
  return text;
}

std::ifstream open_batch(const std::string& file) {
  if (printable(file) != file) {
    throw UsageError("--batch takes a file, or - for standard input, not " + as_given(file));
  }
  std::ifstream opened(file, std::ios::binary);
  std::error_code ignored;  // then it doesn't open either
  if (!opened || std::filesystem::is_directory(file, ignored)) {
    throw InputError(file + ": can't be read");
  }
  if (!begins_as_text(opened)) {
    throw InputError(file +
                     ": is no text; --batch takes lines of region, text and local time, "
                     "parted by tabs");
  }
  return opened;
}

Exit run_batch(const std::string& file, const HoursPlace& place) {
  std::ifstream opened;
  if (file != "-") opened = open_batch(file);
  const std::size_t without = answer_batch(file == "-" ? std::cin : opened, std::cout, place);
  if (without > 0) std::cerr << "loopwright: lines without an answer (ERR): " << without << '\n';
  return Exit::done;
}

/// Shows where reading stopped; the line that refuses the text.
InputError unreadable(const std::string& text, const hours::Unread& unread) {
  show_unreadable(std::cout, text, unread);
  return InputError("the text can't be read from character " +
                    std::to_string(character_at(text, unread.at)) +
                    " on: " + std::string(unread.wanted) + " was looked for there");
}

void say_readable(const std::string& text, const Moment& when) {
  const auto hours = hours::read_hours(text);
  if (hours.readable()) return say_hours(std::cout, hours, when);
  const InputError error = unreadable(text, {hours.stopped_at(), hours.problem()});
  if (text.find('@') == std::string::npos) throw error;
  throw InputError(std::string(error.what()) + "; for a value with conditions give --conditional");
}

void say_readable_conditional(const HoursTexts& texts, const Moment& when) {
  const std::string& text = texts.words.front();
  const std::string base = texts.base.empty() ? "the value without conditions" : texts.base;
  const auto value = hours::read_conditional(base, text);
  if (value.rows().empty()) {
    throw InputError("a value with conditions has an @, such as 20 mph @ (Mo-Fr 08:00-09:00)");
  }
  const bool lacks_value = std::ranges::any_of(value.rows(), [](const auto& row) {
    return row.value.empty();  // nothing to tell, whenever it holds
  });
  if (lacks_value && value.unread()) throw unreadable(text, *value.unread());
  say_conditional(std::cout, value, when);
  if (value.unread()) throw unreadable(text, *value.unread());
}

Exit run_one(const HoursTexts& texts, const HoursPlace& place) {
  const Region region = region_named(texts.region);
  std::optional<WrittenTime> written;
  if (!texts.at.empty()) written = time_of("--at", texts.at);
  const Nation nation = nation_of(region, place);
  const Instant at = nation.setting.on_clock(moment(written, nation.zone));
  tell_jump(std::cout, written, at);
  const Moment when{region, nation.setting, at};
  if (texts.conditional) {
    say_readable_conditional(texts, when);
  } else {
    say_readable(texts.words.front(), when);
  }
  return Exit::done;
}

}  // namespace

Exit hours(const Arguments& words) {
  Options app{"Tells whether a text of hours is in force, and why.", "loopwright hours"};
  HoursTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return Exit::done;
  check(texts);
  const std::optional<Point> at = point_of(texts.place);
  const HoursPlace place{at, terms_in(texts.terms)};
  return texts.batch.empty() ? run_one(texts, place) : run_batch(texts.batch, place);
}

}  // namespace loopwright::command
