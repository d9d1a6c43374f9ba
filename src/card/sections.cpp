// Method: a section with nothing in it isn't printed. What is sure is said plainly, what isn't is
// listed by row. Kinds come in the order they were asked for, then that of the catalogue.
#include "card/sections.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "card/ground_items.hpp"
#include "card/lesson.hpp"
#include "card/light.hpp"
#include "card/practice.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/say/limit_told.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::card {
namespace {

Section with_heading(const Subject& subject, std::string_view key) {
  return {std::string(subject.words.at(key)), {}};
}

void add(Section& section, std::string text) {
  section.lines.push_back({0, std::move(text)});
}

void add_more(Section& section, std::string text) {
  section.lines.push_back({1, std::move(text)});
}

}  // namespace

std::size_t row_of_stretch(const Subject& subject, std::size_t stretch) {
  std::size_t number = 1;
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    if (k > 0 && subject.rows[k].stretch < stretch) number = k + 1;
  return number;
}

std::optional<std::size_t> row_of_visit(const Subject& subject, const Visit& visit) {
  const std::size_t end = subject.before + subject.loop.stretches.size();
  if (visit.stretch < subject.before || visit.stretch >= end) return std::nullopt;
  return row_of_stretch(subject, visit.stretch - subject.before);
}

namespace {

/// Rows after which some stretch's limit is known no better than this.
std::vector<std::size_t> rows_with(const Subject& subject, road::LimitConfidence confidence) {
  std::vector<std::size_t> numbers;
  const wish::RowSpan practice = wish::practice_of(subject.loop);
  for (std::size_t i = practice.first; i <= practice.last; ++i) {
    const wish::LoopStretch& driven = subject.loop.stretches[i];
    if (driven.limit.confidence != confidence || !say::tells_limit(subject.roads, driven)) continue;
    const std::size_t number = row_of_stretch(subject, i);
    if (numbers.empty() || numbers.back() != number) numbers.push_back(number);
  }
  return numbers;
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
      const bool learners = wish::lies_in(pass, wish::practice_of(subject.loop));
      if (!learners || pass.confidence != road::Confidence::inferred) continue;
      inferred[write_unsure(subject.words, pass.kind)].insert(k + 1);
    }
  return inferred;
}

/// Passes of which the same is said, in driving order.
struct SaidAlike {
  std::string verdict;
  std::vector<lanes::Passing> times;
  std::vector<std::size_t> rows;
  bool on_yours = false;  ///< on roads that the instructor drives
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
    const auto row = row_of_visit(subject, visit);
    if (!row)
      said->on_yours = true;
    else if (said->rows.empty() || said->rows.back() != *row)
      said->rows.push_back(*row);
  }
  return all;
}

/// "rows 3, 7 to 9", "your own road, row 3"
std::string write_where(const say::Words& words, const SaidAlike& said) {
  std::vector<std::string> parts;
  if (said.on_yours) parts.emplace_back(words.at("card.own_road"));
  if (!said.rows.empty()) parts.push_back(write_rows(words, said.rows));
  return joined(parts, ", ");
}

void add_timed(Section& section, const Subject& subject, const Timed& timed) {
  const say::Words& words = subject.words;
  add(section, say::capitalised(write_thing(timed)));
  add_more(section, write_hours(words, timed));
  if (!timed.thing.doubt.empty())
    add_more(section, words.fill("card.doubt", {{"doubt", timed.thing.doubt}}));
  for (const SaidAlike& said : passes_of(subject, timed))
    add_more(section, words.fill("card.passed", {{"times", write_all_times(words, said.times)},
                                                 {"rows", write_where(words, said)},
                                                 {"verdict", said.verdict}}));
}

/// What was seen of a thing on the ground, and the letter of what is to be looked at. Things come first in the list.
void add_ground_mark(Section& section, const Subject& subject, std::size_t k) {
  if (subject.ground == nullptr || k >= subject.ground->size()) return;
  const wish::GroundMark& mark = (*subject.ground)[k];
  if (!mark.seen.empty()) add_more(section, mark.seen);
  if (!mark.letter.empty())
    add_more(section, subject.words.fill("ground.look", {{"letter", mark.letter}}));
}

Section things_of(const Subject& subject, std::string_view key, bool for_buses) {
  Section section{subject.words.fill(key, {{"clock", write_clock(subject.loop.start)}}), {}};
  for (std::size_t k = 0; k < subject.timed.size(); ++k) {
    const Timed& timed = subject.timed[k];
    if (is_for_buses(timed) != for_buses) continue;
    add_timed(section, subject, timed);
    add_ground_mark(section, subject, k);
  }
  return section;
}

void add_missing(Section& section, const Subject& subject, const wish::Missing& missing) {
  const say::Words& words = subject.words;
  constexpr double seconds_per_minute = 60;
  std::vector<std::string> parts{
      words.fill("short.missing",
                 {{"want", write_asked(words, missing.want)}, {"n", std::to_string(missing.got)}})};
  if (!missing.why.empty()) parts.push_back(missing.why);
  const auto add_time = [&](std::string_view key, const std::optional<double>& minutes) {
    if (!minutes) return;
    const std::string text = write_minutes(words, *minutes * seconds_per_minute);
    parts.push_back(words.fill(key, {{"minutes", text}}));
  };
  add_time("short.nearest", missing.nearest_minutes);
  add_time("short.needs", missing.needs_minutes);
  add(section, joined(parts, "; "));
}

}  // namespace

Section bus_lanes_of(const Subject& subject) {
  Section section = things_of(subject, "card.bus_lanes", true);
  if (!section.lines.empty()) add(section, std::string(subject.words.at("card.plate")));
  return section;
}

Section hours_of(const Subject& subject) {
  return things_of(subject, "card.hours", false);
}

Section practised_of(const Subject& subject) {
  Section section = with_heading(subject, "card.practised");
  for (const auto& [what, counted] : practice_of(subject))
    add(section, words_for(subject, what, counted));
  return section;
}

Section unsure_of(const Subject& subject) {
  const say::Words& words = subject.words;
  Section section = with_heading(subject, "card.unsure");
  if (subject.ground != nullptr) return section;  // ground_of lists it one by one
  const auto add_rows = [&](std::string_view key, const std::vector<std::size_t>& rows) {
    if (!rows.empty()) add(section, words.fill(key, {{"rows", write_rows(words, rows)}}));
  };
  add_rows("unsure.limit", rows_with(subject, road::LimitConfidence::inferred));
  add_rows("unsure.changed", rows_with(subject, road::LimitConfidence::check));
  for (const auto& [text, rows] : inferred_passes(subject))
    add(section,
        words.fill("unsure.in_rows",
                   {{"what", text}, {"rows", write_rows(words, {rows.begin(), rows.end()})}}));
  return section;
}

Section shortfall_of(const Subject& subject) {
  Section section = with_heading(subject, "card.short");
  if (!subject.answer.shortfall) return section;
  const wish::Shortfall& shortfall = *subject.answer.shortfall;
  if (!shortfall.why.empty()) add(section, shortfall.why);
  for (const wish::Missing& missing : shortfall.missing) add_missing(section, subject, missing);
  for (const std::string& stop : shortfall.stops) add(section, stop);
  const auto& asked = subject.answer.wish.minutes;
  if (!shortfall.least_minutes || (asked && *shortfall.least_minutes <= *asked)) return section;
  constexpr double seconds_per_minute = 60;
  const std::string minutes =
      write_minutes(subject.words, *shortfall.least_minutes * seconds_per_minute);
  add(section, subject.words.fill("short.least", {{"minutes", minutes}}));
  return section;
}

Section cautions_of(const Subject& subject) {
  Section section = with_heading(subject, "card.cautions");
  for (std::string& caution : cautions_for(subject.words, subject.loop, subject.timed))
    add(section, std::move(caution));
  return section;
}

std::vector<Section> sections_of(const Subject& subject) {
  std::vector<Section> sections;
  for (const auto& make : {bus_lanes_of, hours_of, practised_of, unsure_of, ground_of, light_of,
                           shortfall_of, cautions_of}) {
    Section section = make(subject);
    if (!section.lines.empty()) sections.push_back(std::move(section));
  }
  return sections;
}

}  // namespace loopwright::card
