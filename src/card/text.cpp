// Method:
// 1. Head: when, how long, what for; first what bars driving it so.
// 2. Rows. Each is up to five lines: what is said (with limit and hardness at the right), where,
//    how far to the next, what to brief here, what is met before the next. The first and the last
//    tell of their kerb when waiting may be forbidden there. Rows said in one breath
//    are held together by a bracket at the left edge.
// 3. Below: bus lanes, what else has hours, what is practised, what isn't sure, what fell short,
//    cautions, map credit.
#include <cmath>

#include "card/independent.hpp"
#include "card/lesson.hpp"
#include "card/sections.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "loopwright/card/card.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/variant.hpp"

namespace loopwright::card {
namespace {

/// Bracket, blank, row number, two blanks.
constexpr std::size_t text_column = 6;
constexpr std::string_view bracket_top = "┌", bracket_side = "│", bracket_foot = "└";

std::string whole_minutes(double seconds) {
  return std::to_string(std::lround(seconds / 60));
}

Instant back_by(const Subject& subject) {
  const wish::Wish& wish = subject.answer.wish;
  constexpr double seconds_per_minute = 60;
  const double seconds = wish.minutes ? seconds_per_minute * (*wish.minutes - wish.reserve_minutes)
                                      : subject.loop.seconds.high + subject.loop.stop_seconds;
  return wish::clock_after(subject.loop, seconds, subject.setting);
}

/// "back by 01:30", or with a word on clocks that are changed before.
std::string words_for_end(const Subject& subject) {
  const Instant end = back_by(subject);
  const std::int32_t moved_s = end.offset_s - subject.setting.on_clock(subject.loop.start).offset_s;
  const std::string_view key = moved_s == 0  ? "card.back_by"
                               : moved_s < 0 ? "card.back_by_earlier"
                                             : "card.back_by_later";
  return subject.words.fill(key, {{"clock", write_clock(end)}});
}

std::string goal_of(const Subject& subject) {
  std::vector<std::string> goals;
  if (!subject.loop.parts.empty())
    return subject.words.count("card.parts", subject.loop.parts.size());
  for (const wish::Met& met : subject.loop.met)
    goals.push_back(subject.words.fill("card.got", {{"want", write_asked(subject.words, met.want)},
                                                    {"n", std::to_string(met.got)}}));
  const bool own_drive = !subject.answer.wish.through.empty();
  if (goals.empty())
    return std::string(subject.words.at(own_drive ? "card.own_drive" : "card.no_goal"));
  return joined(goals, ", ");
}

void add_head(Sheet& sheet, const Subject& subject) {
  const say::Words& words = subject.words;
  const wish::Loop& loop = subject.loop;
  sheet.spread(words.fill("card.title", {{"n", std::to_string(loop.id)}}),
               write_when(words, loop.start));
  const std::string variant = wish::variant_words(subject.answer, loop);
  if (!variant.empty()) sheet.paragraph(0, say::capitalised(variant));
  const std::string barred = write_barred(words, barred_on(subject.timed));
  if (!barred.empty()) sheet.paragraph(0, barred);
  const Date day = subject.setting.on_clock(loop.start).civil().date;
  const std::string_view holiday = subject.setting.bank_holiday_name(day);
  if (!holiday.empty())
    sheet.paragraph(0, words.fill("card.holiday", {{"name", std::string(holiday)}}));
  std::vector<std::string> parts{
      words.fill("card.driving", {{"likely", whole_minutes(loop.seconds.likely)},
                                  {"low", whole_minutes(loop.seconds.low)},
                                  {"high", whole_minutes(loop.seconds.high)}})};
  if (loop.stop_seconds > 0)
    parts.push_back(words.fill("card.stops", {{"n", whole_minutes(loop.stop_seconds)}}));
  sheet.spread(joined(parts, "; "), words_for_end(subject));
  sheet.spread(words.fill("card.level", {{"n", std::to_string(subject.answer.wish.level)}}),
               words.count("card.rows", subject.rows.size()));
  sheet.paragraph(0, words.fill("card.goal", {{"goal", goal_of(subject)}}));
  std::vector<std::string> avoided;
  for (const wish::Avoid& avoid : subject.answer.wish.avoids)
    avoided.push_back(write_kind(words, avoid.kind, road::Movement::none));
  if (!avoided.empty())
    sheet.paragraph(0, words.fill("card.kept_off", {{"kinds", joined(avoided, ", ")}}));
  sheet.paragraph(0, words.at("caution.head"));
  sheet.rule('=');
}

/// One line of a row, with what stands at its right edge.
struct RowLine {
  std::string left, right;
};

std::vector<RowLine> lines_of(const Subject& subject, std::size_t k) {
  const say::Words& words = subject.words;
  const say::Row& row = subject.rows[k];
  const SpeedUnit unit = subject.roads.info().region.unit;
  std::vector<std::string> numerals;
  if (row.new_limit) numerals.push_back(write_limit(words, *row.new_limit));
  if (row.hardness > 0)
    numerals.push_back(words.fill("card.hard", {{"n", std::to_string(row.hardness)}}));
  std::vector<RowLine> lines{{say::capitalised(row.say), joined(numerals, "  ")}};
  const bool look = row.new_limit && !road::is_sure(row.new_limit->confidence);
  std::vector<std::string> where;
  // A road that is spoken of needn't be printed once more.
  const bool spoken = row.say.ends_with(row.where);
  if (!row.where.empty() && !spoken) where.push_back(row.where);
  if (row.counts)
    where.push_back(
        words.fill("card.say_before", {{"distance", say::say_distance(row.speak_m, unit)}}));
  if (!where.empty() || look)
    lines.push_back({joined(where, "; "), look ? std::string(words.at("card.look")) : ""});
  const std::string kerb = write_kerb(words, subject.kerbs, k, subject.rows.size());
  if (!kerb.empty()) lines.push_back({kerb, {}});
  // Less than a car's length to the next row: both are at one place.
  constexpr double same_place_m = 5;
  if (row.to_next_m > same_place_m)
    lines.push_back({words.fill("card.next", {{"distance", say::say_distance(row.to_next_m, unit)},
                                              {"minutes", write_minutes(words, row.to_next_s)}}),
                     {}});
  if (!row.briefs.empty())
    lines.push_back({words.fill("card.brief", {{"hazards", joined(row.briefs, "; ")}}), {}});
  if (!row.hazards.empty())
    lines.push_back({words.fill("card.then", {{"hazards", joined(row.hazards, "; ")}}), {}});
  for (const std::string& stop : stop_lines(subject, k)) lines.push_back({stop, {}});
  return lines;
}

/// The same lines, wrapped, so that left and right fit beside each other.
std::vector<RowLine> fitted(const std::vector<RowLine>& lines) {
  constexpr std::size_t gap = 2;
  std::vector<RowLine> result;
  for (const RowLine& line : lines) {
    const std::size_t taken = line.right.empty() ? 0 : columns(line.right) + gap;
    std::string right = line.right;
    for (std::string& part : wrapped(line.left, sheet_columns - text_column - taken)) {
      result.push_back({std::move(part), std::move(right)});
      right.clear();
    }
  }
  return result;
}

class RowPrinter {
 public:
  RowPrinter(Sheet& sheet, const Subject& subject) : sheet_(sheet), subject_(subject) {}

  void print() {
    for (std::size_t k = 0; k < subject_.rows.size(); ++k) {
      for (const std::string& line : lines_before(subject_, k)) print_apart(line);
      add_independent_before(sheet_, subject_, k);
      if (!is_instructors(subject_.loop, subject_.rows[k])) print_row(k);
    }
    add_independent_before(sheet_, subject_, subject_.rows.size());
    if (const std::string line = line_behind(subject_); !line.empty()) print_apart(line);
  }

 private:
  void print_apart(const std::string& line) {
    sheet_.blank();
    sheet_.paragraph(0, line);
  }

  [[nodiscard]] bool joins_next(std::size_t k) const {
    return k + 1 < subject_.rows.size() && subject_.rows[k + 1].joined_to_previous;
  }

  [[nodiscard]] std::string_view mark(std::size_t k, std::size_t line) const {
    const bool joined_before = subject_.rows[k].joined_to_previous;
    if (line == 0 && joined_before) return joins_next(k) ? bracket_side : bracket_foot;
    if (line == 0 && joins_next(k)) return bracket_top;
    return joins_next(k) ? bracket_side : " ";
  }

  void print_row(std::size_t k) {
    if (!subject_.rows[k].joined_to_previous) sheet_.blank();
    const std::vector<RowLine> lines = fitted(lines_of(subject_, k));
    for (std::size_t i = 0; i < lines.size(); ++i) {
      std::string text(mark(k, i));
      const std::string number = i == 0 ? std::to_string(k + 1) : "";
      text += std::string(number.size() < 3 ? 3 - number.size() : 0, ' ') + number + "  ";
      text += lines[i].left;
      const std::size_t taken = columns(text) + columns(lines[i].right);
      text += std::string(taken < sheet_columns ? sheet_columns - taken : 0, ' ');
      sheet_.line(text + lines[i].right);
    }
  }

  Sheet& sheet_;
  const Subject& subject_;
};

}  // namespace

std::string write_text(const road::Roads& roads, const wish::Answer& answer, const wish::Loop& loop,
                       const hours::Setting& setting) {
  const say::Words words;
  const std::vector<say::Row> rows = say::say_loop(roads, loop);
  const std::vector<Timed> timed = timed_on({roads, loop, setting});
  const std::vector<lanes::DoorKerb> kerbs = lanes::door_kerbs({roads, loop, setting});
  const Subject subject{roads, answer, loop, rows, words, setting, timed, kerbs};
  Sheet sheet;
  add_head(sheet, subject);
  RowPrinter(sheet, subject).print();
  add_bus_lanes(sheet, subject);
  add_hours(sheet, subject);
  add_practised(sheet, subject);
  add_unsure(sheet, subject);
  add_shortfall(sheet, subject);
  add_cautions(sheet, subject);
  return sheet.text();
}

std::string write_barred(const road::Roads& roads, const wish::Loop& loop,
                         const hours::Setting& setting) {
  const std::vector<Timed> timed = timed_on({roads, loop, setting});
  return write_barred(say::Words(), barred_on(timed));
}

}  // namespace loopwright::card
