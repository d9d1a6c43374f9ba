// Method: the head; the order of the lesson by the clock (parts, planned stops, the first of each kind asked
// for); level crossings by row; the sections of the sheet; how the card is read.
#include "card/plan_page.hpp"

#include <algorithm>
#include <optional>

#include "card/crossings.hpp"
#include "card/lesson.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::card {
namespace {

/// Something that comes at its time.
struct Moment {
  double seconds = 0;
  std::string text;
};

std::string clock_of(const Subject& subject, double seconds) {
  return write_clock(wish::clock_after(subject.loop, seconds, subject.setting));
}

/// row: its number on the card.
Moment at_row(const Subject& subject, std::string what, std::size_t stretch, std::size_t row) {
  const double seconds = subject.loop.stretches[stretch].arrive_s.likely;
  return {seconds, subject.words.fill("pack.at_row", {{"clock", clock_of(subject, seconds)},
                                                      {"what", std::move(what)},
                                                      {"row", std::to_string(row)}})};
}

Moment at_row(const Subject& subject, std::string what, std::size_t stretch) {
  return at_row(subject, std::move(what), stretch, row_of_stretch(subject, stretch));
}

/// The row in which a pass is spoken: mostly the one behind that of the stretch on which it begins.
std::size_t row_of_pass(const Subject& subject, std::size_t pass) {
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    if (std::ranges::find(subject.rows[k].passes, pass) != subject.rows[k].passes.end())
      return k + 1;
  return row_of_stretch(subject, subject.loop.passes[pass].first);
}

/// The row that has the car turned round onto a stretch: the next row may be due at the same place.
std::size_t row_of_turning(const Subject& subject, std::size_t onto) {
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    if (subject.rows[k].kind == say::RowKind::turn_round && subject.rows[k].exit == onto)
      return k + 1;
  return row_of_stretch(subject, onto);
}

void add_first_passes(std::vector<Moment>& moments, const Subject& subject) {
  const auto& passes = subject.loop.passes;
  const wish::RowSpan practice = wish::practice_of(subject.loop);
  for (const wish::Met& met : all_met(subject.loop)) {
    std::optional<std::size_t> first;
    for (std::size_t i = 0; i < passes.size(); ++i)
      if (wish::lies_in(passes[i], practice) && wish::counts_for(i, passes, met.want) &&
          (!first || passes[i].first < passes[*first].first))
        first = i;
    if (!first) continue;
    const std::string what = subject.words.fill(
        "pack.first_pass", {{"kind", write_kind(subject.words, met.want.kind, met.want.movement)}});
    moments.push_back(at_row(subject, what, passes[*first].first, row_of_pass(subject, *first)));
  }
}

void add_planned_stops(std::vector<Moment>& moments, const Subject& subject) {
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    for (const PlannedStop& stop : planned_stops(subject, k)) {
      std::vector<std::string> parts{stop.what, stop.street};
      if (!stop.drive_on.empty()) parts.push_back(stop.drive_on);
      moments.push_back(at_row(subject, joined(parts, ", "), stop.place.stretch));
    }
}

void add_bands(std::vector<Moment>& moments, const Subject& subject,
               const std::vector<Band>& bands) {
  for (const Band& band : bands)
    moments.push_back(
        {band.seconds, subject.words.fill("pack.at", {{"clock", clock_of(subject, band.seconds)},
                                                      {"what", band.text}})});
}

void add_order(Flow& flow, const PageStyle& style, const Subject& subject) {
  const say::Words& words = subject.words;
  std::vector<Moment> moments;
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    add_bands(moments, subject, bands_before(subject, k));
  add_bands(moments, subject, seats_behind(subject));
  add_first_passes(moments, subject);
  add_planned_stops(moments, subject);
  for (const wish::IndependentStretch& one : subject.loop.independent)
    moments.push_back(at_row(subject, std::string(words.at("pack.independent")), one.first));
  for (const std::size_t row : wish::turns_round(subject.loop))
    moments.push_back(at_row(subject, std::string(words.at("pack.turn_round")), row,
                             row_of_turning(subject, row)));
  std::stable_sort(moments.begin(), moments.end(),
                   [](const Moment& a, const Moment& b) { return a.seconds < b.seconds; });
  flow.heading(std::string(words.at("pack.order")));
  flow.paragraph(words.fill("pack.leave", {{"clock", clock_of(subject, 0)}}), bold(style));
  flow.paragraph(std::string(words.at("pack.leave_note")), plain(style));
  for (const Moment& moment : moments) flow.paragraph(moment.text, plain(style));
  const std::string home = write_clock(wish::likely_end(subject.whole, subject.setting));
  flow.paragraph(words.fill("pack.home", {{"clock", home}}), bold(style));
}

void add_section(Flow& flow, const PageStyle& style, const Section& section) {
  constexpr double indent = 3;
  if (section.lines.empty()) return;
  flow.heading(section.heading);
  for (const SectionLine& line : section.lines)
    flow.paragraph(line.text, plain(style), indent * line.level);
}

void add_reading(Flow& flow, const PageStyle& style, const say::Words& words) {
  constexpr int lines = 6;
  flow.heading(std::string(words.at("pack.reading")));
  for (int n = 1; n <= lines; ++n)
    flow.paragraph(std::string(words.at("pack.reading." + std::to_string(n))), plain(style));
  flow.paragraph(std::string(words.at("pack.levels")), plain(style));
}

std::string help_words(const Subject& subject) {
  const say::Words& words = subject.words;
  const auto help_at = [&](const std::string& level) {
    return std::string(words.at("pack.help." + level));
  };
  if (subject.help.mock_test) return words.fill("pack.help", {{"help", help_at("none")}});
  const std::string level = std::to_string(subject.answer.wish.level);
  std::string told = words.fill("pack.help", {{"help", help_at(level)}});
  for (const LowerGoal& goal : subject.help.lower)
    told +=
        "; " + words.fill("pack.help.for", {{"goal", write_kind(words, goal.kind, goal.movement)},
                                            {"help", help_at(std::to_string(goal.level))}});
  return told;
}

}  // namespace

void add_plan(Flow& flow, const PageStyle& style, const Subject& subject, const Head& head) {
  const say::Words& words = subject.words;
  for (const std::string& line : head.first) flow.paragraph(line, bold(style));
  flow.paragraph(head.goal, bold(style));
  flow.paragraph(head.driving, plain(style));
  flow.paragraph(head.level + "; " + help_words(subject), plain(style));
  if (!head.kept_off.empty()) flow.paragraph(head.kept_off, plain(style));
  add_order(flow, style, subject);
  add_section(flow, style, crossings_of(subject));
  // The long list last, so that what must be known before one sets off is on the first page.
  const Section practised = practised_of(subject);
  for (const Section& section : sections_of(subject))
    if (section.heading != practised.heading) add_section(flow, style, section);
  add_reading(flow, style, words);
  add_section(flow, style, practised);
}

}  // namespace loopwright::card
