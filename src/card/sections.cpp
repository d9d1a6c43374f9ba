// Method: a section with nothing in it isn't printed. What is sure is said plainly, what isn't is
// listed by row. Kinds come in the order they were asked for, then that of the catalogue.
#include "card/sections.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "card/lesson.hpp"
#include "card/speech.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::card {
namespace {

constexpr std::size_t indent = 2;

void add_heading(Sheet& sheet, const Subject& subject, std::string_view key) {
  sheet.blank();
  sheet.line(std::string(subject.words.at(key)));
}

/// Number of the row that a stretch is driven after.
std::size_t row_of_stretch(const Subject& subject, std::size_t stretch) {
  std::size_t number = 1;
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    if (k > 0 && subject.rows[k].stretch < stretch) number = k + 1;
  return number;
}

/// Rows after which some stretch's limit is known no better than this.
std::vector<std::size_t> rows_with(const Subject& subject, road::LimitConfidence confidence) {
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < subject.loop.stretches.size(); ++i) {
    if (subject.loop.stretches[i].limit.confidence != confidence) continue;
    const std::size_t number = row_of_stretch(subject, i);
    if (numbers.empty() || numbers.back() != number) numbers.push_back(number);
  }
  return numbers;
}

struct Practice {
  std::size_t order = 0;  ///< of the want it counts for
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;
  friend auto operator<=>(const Practice&, const Practice&) = default;
};

struct Counted {
  std::size_t passes = 0, inferred = 0;
  std::vector<std::size_t> rows;
};

std::map<Practice, Counted> practice_of(const Subject& subject) {
  std::map<Practice, Counted> practice;
  const std::vector<wish::Met> met = all_met(subject.loop);
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    for (const std::size_t index : subject.rows[k].passes) {
      const wish::Pass& pass = subject.loop.passes[index];
      if (!wish::lies_in(pass, wish::practice_of(subject.loop))) continue;
      const auto want = std::find_if(met.begin(), met.end(), [&](const wish::Met& m) {
        return wish::counts_for(index, subject.loop.passes, m.want);
      });
      const auto order = static_cast<std::size_t>(want - met.begin());
      Counted& counted = practice[{order, pass.kind, pass.movement}];
      ++counted.passes;
      if (pass.confidence == road::Confidence::inferred) ++counted.inferred;
      if (counted.rows.empty() || counted.rows.back() != k + 1) counted.rows.push_back(k + 1);
    }
  return practice;
}

std::string words_for(const Subject& subject, const Practice& what, const Counted& counted) {
  const say::Words& words = subject.words;
  const std::string kind = write_kind(words, what.kind, what.movement);
  const std::string passes = std::to_string(counted.passes);
  const std::string rows = write_rows(words, counted.rows);
  if (counted.inferred == 0)
    return words.fill("card.counted", {{"what", kind}, {"n", passes}, {"rows", rows}});
  return words.fill("card.counted_unsure", {{"what", kind},
                                            {"n", passes},
                                            {"unsure", std::to_string(counted.inferred)},
                                            {"rows", rows}});
}

/// Rows of what the map only lets us infer, by what is said of it. Kinds that are said to be unsure
/// in the same words come together.
std::map<std::string, std::set<std::size_t>> inferred_passes(const Subject& subject) {
  std::map<std::string, std::set<std::size_t>> inferred;
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    for (const std::size_t index : subject.rows[k].passes) {
      const wish::Pass& pass = subject.loop.passes[index];
      if (pass.confidence != road::Confidence::inferred) continue;
      inferred[write_unsure(subject.words, pass.kind)].insert(k + 1);
    }
  return inferred;
}

/// Passes of which the same is said, in driving order.
struct SaidAlike {
  std::string verdict;
  std::vector<lanes::Passing> times;
  std::vector<std::size_t> rows;
};

/// Two passes whose times overlap are one to a driver: the next piece of the same lane.
void add_time(std::vector<lanes::Passing>& times, const lanes::Passing& when) {
  if (times.empty() || when.from.unix_s > times.back().to.unix_s) {
    times.push_back(when);
  } else if (when.to.unix_s > times.back().to.unix_s) {
    times.back().to = when.to;
  }
}

std::string write_all_times(const say::Words& words, const std::vector<lanes::Passing>& times) {
  std::vector<std::string> written;
  for (const lanes::Passing& when : times) written.push_back(write_times(words, when));
  return listed(written);
}

std::vector<SaidAlike> passes_of(const Subject& subject, const Timed& timed) {
  std::vector<SaidAlike> all;
  for (const Visit& visit : timed.visits) {
    std::string verdict = write_verdict(subject.words, timed, visit);
    auto said = std::ranges::find(all, verdict, &SaidAlike::verdict);
    if (said == all.end()) said = all.insert(all.end(), {std::move(verdict), {}, {}});
    add_time(said->times, visit.when);
    const std::size_t row = row_of_stretch(subject, visit.stretch);
    if (said->rows.empty() || said->rows.back() != row) said->rows.push_back(row);
  }
  return all;
}

void add_timed(Sheet& sheet, const Subject& subject, const Timed& timed) {
  const say::Words& words = subject.words;
  sheet.paragraph(indent, say::capitalised(write_thing(timed)));
  sheet.paragraph(2 * indent, write_hours(words, timed));
  if (!timed.thing.doubt.empty())
    sheet.paragraph(2 * indent, words.fill("card.doubt", {{"doubt", timed.thing.doubt}}));
  for (const SaidAlike& said : passes_of(subject, timed))
    sheet.paragraph(2 * indent,
                    words.fill("card.passed", {{"times", write_all_times(words, said.times)},
                                               {"rows", write_rows(words, said.rows)},
                                               {"verdict", said.verdict}}));
}

/// Heading and things; false when there are none.
bool add_things(Sheet& sheet, const Subject& subject, std::string_view key, bool for_buses) {
  bool any = false;
  for (const Timed& timed : subject.timed) {
    if (is_for_buses(timed) != for_buses) continue;
    if (!any) {
      sheet.blank();
      sheet.line(subject.words.fill(key, {{"clock", write_clock(subject.loop.start)}}));
    }
    any = true;
    add_timed(sheet, subject, timed);
  }
  return any;
}

void add_missing(Sheet& sheet, const Subject& subject, const wish::Missing& missing) {
  const say::Words& words = subject.words;
  constexpr double seconds_per_minute = 60;
  std::vector<std::string> parts{
      words.fill("short.missing",
                 {{"want", write_asked(words, missing.want)}, {"n", std::to_string(missing.got)}})};
  if (!missing.why.empty()) parts.push_back(missing.why);
  const auto add = [&](std::string_view key, const std::optional<double>& minutes) {
    if (!minutes) return;
    const std::string text = write_minutes(words, *minutes * seconds_per_minute);
    parts.push_back(words.fill(key, {{"minutes", text}}));
  };
  add("short.nearest", missing.nearest_minutes);
  add("short.needs", missing.needs_minutes);
  sheet.paragraph(indent, joined(parts, "; "));
}

}  // namespace

void add_bus_lanes(Sheet& sheet, const Subject& subject) {
  if (add_things(sheet, subject, "card.bus_lanes", true))
    sheet.paragraph(indent, subject.words.at("card.plate"));
}

void add_hours(Sheet& sheet, const Subject& subject) {
  add_things(sheet, subject, "card.hours", false);
}

void add_practised(Sheet& sheet, const Subject& subject) {
  const auto practice = practice_of(subject);
  if (practice.empty()) return;
  add_heading(sheet, subject, "card.practised");
  for (const auto& [what, counted] : practice)
    sheet.paragraph(indent, words_for(subject, what, counted));
}

void add_unsure(Sheet& sheet, const Subject& subject) {
  const say::Words& words = subject.words;
  std::vector<std::string> lines;
  const auto add = [&](std::string_view key, const std::vector<std::size_t>& rows) {
    if (!rows.empty()) lines.push_back(words.fill(key, {{"rows", write_rows(words, rows)}}));
  };
  add("unsure.limit", rows_with(subject, road::LimitConfidence::inferred));
  add("unsure.changed", rows_with(subject, road::LimitConfidence::check));
  for (const auto& [text, rows] : inferred_passes(subject))
    lines.push_back(
        words.fill("unsure.in_rows",
                   {{"what", text}, {"rows", write_rows(words, {rows.begin(), rows.end()})}}));
  if (lines.empty()) return;
  add_heading(sheet, subject, "card.unsure");
  for (const std::string& line : lines) sheet.paragraph(indent, line);
}

void add_shortfall(Sheet& sheet, const Subject& subject) {
  if (!subject.answer.shortfall) return;
  const wish::Shortfall& shortfall = *subject.answer.shortfall;
  add_heading(sheet, subject, "card.short");
  if (!shortfall.why.empty()) sheet.paragraph(indent, shortfall.why);
  for (const wish::Missing& missing : shortfall.missing) add_missing(sheet, subject, missing);
  for (const std::string& stop : shortfall.stops) sheet.paragraph(indent, stop);
  if (!shortfall.least_minutes) return;
  constexpr double seconds_per_minute = 60;
  const std::string minutes =
      write_minutes(subject.words, *shortfall.least_minutes * seconds_per_minute);
  sheet.paragraph(indent, subject.words.fill("short.least", {{"minutes", minutes}}));
}

void add_cautions(Sheet& sheet, const Subject& subject) {
  add_heading(sheet, subject, "card.cautions");
  for (const std::string& caution : cautions_for(subject.words, subject.loop, subject.timed))
    sheet.paragraph(indent, caution);
  sheet.rule('-');
  sheet.paragraph(0, write_credit(subject.words, subject.roads));
  sheet.paragraph(0, subject.words.at("card.licence"));
}

}  // namespace loopwright::card
