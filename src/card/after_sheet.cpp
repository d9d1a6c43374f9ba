// Method: a table of what the card practises, with boxes and a line to write on; below it ruled room for what
// no table holds. What is recorded: driver's record of gov.uk (levels), common practice, no source (the rest).
#include "card/after_sheet.hpp"

#include <array>

#include "card/practice.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"

namespace loopwright::card {
namespace {

constexpr int levels = 5;
constexpr double row_pad = 1.4;
/// As asked for, then in the order of the kinds; it all goes on one page of A4.
constexpr std::size_t most_rows = 11;
constexpr int blank_rows = 2;     ///< for what was practised besides
constexpr double line_pitch = 8;  ///< between ruled lines; common practice of writing paper

double height_of(const PageStyle& style) {
  return draw::extent_of({{0, 0}, "0", plain(style)}).height;
}

/// Left edges of the columns, as shares of the width.
struct Columns {
  double what = 0, passes = 0.36, driven = 0.47, level = 0.56, note = 0.74;
};

draw::Picture table_row(const PageStyle& style, double width,
                        const std::array<std::string, 5>& cells) {
  constexpr Columns at;
  const double height = height_of(style);
  draw::Picture row{width, height + 2 * row_pad};
  const std::array<double, 5> lefts{at.what, at.passes, at.driven, at.level, at.note};
  double bottom = row.height;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double room = ((i + 1 < lefts.size() ? lefts.at(i + 1) : 1) - lefts.at(i)) * width - 1.5;
    draw::Label cell{{lefts.at(i) * width, row_pad}, cells.at(i), plain(style), room};
    bottom = std::max(bottom, draw::extent_of(cell).height + 2 * row_pad);
    row.add(std::move(cell));
  }
  row.height = bottom;
  row.add(draw::Stroke{{{0, bottom}, {width, bottom}}, 0.2, draw::Ink::grey});
  return row;
}

void add_boxes(draw::Picture& row, const PageStyle& style) {
  constexpr Columns at;
  const double size = height_of(style);
  double x = at.level * row.width;
  draw::Type type = grey(style);
  type.align = draw::Align::middle;
  for (int level = 1; level <= levels; ++level) {
    const double y = row_pad, end = x + size;
    row.add(draw::Stroke{{{x, y}, {end, y}, {end, y + size}, {x, y + size}, {x, y}}, 0.25});
    row.add(draw::Label{{x + size / 2, y}, std::to_string(level), type});
    x = end + 1;
  }
}

void add_table(Flow& flow, const PageStyle& style, const Subject& subject) {
  const say::Words& words = subject.words;
  const auto head = [&](std::string_view key) { return std::string(words.at(key)); };
  const double width = flow.column_width();
  flow.picture(
      table_row(style, width,
                {head("pack.record.what"), head("pack.record.passes"), head("pack.record.driven"),
                 head("pack.record.level"), head("pack.record.note")}));
  std::size_t rows = 0;
  for (const auto& [what, counted] : practice_of(subject)) {
    if (rows++ == most_rows) break;
    draw::Picture row = table_row(
        style, width,
        {write_kind(words, what.kind, what.movement), std::to_string(counted.passes), "", "", ""});
    add_boxes(row, style);
    flow.picture(row);
  }
  for (int n = 0; n < blank_rows; ++n) {
    draw::Picture row = table_row(style, width, {});
    add_boxes(row, style);
    flow.picture(row);
  }
}

/// "A  B  C"
std::string letters_to_look_at(const Subject& subject) {
  std::vector<std::string> letters;
  if (subject.ground != nullptr)
    for (const wish::GroundMark& mark : *subject.ground)
      if (!mark.letter.empty()) letters.push_back(mark.letter);
  return joined(letters, "  ");
}

void add_ruled(Flow& flow, int lines) {
  draw::Picture room{flow.column_width(), line_pitch * lines};
  for (int n = 1; n <= lines; ++n)
    room.add(
        draw::Stroke{{{0, n * line_pitch}, {room.width, n * line_pitch}}, 0.2, draw::Ink::grey});
  flow.picture(room);
}

}  // namespace

void add_after(Flow& flow, const PageStyle& style, const Subject& subject) {
  const say::Words& words = subject.words;
  flow.heading(std::string(words.at("pack.record.date")));
  for (const std::string_view key :
       {"pack.record.times", "pack.record.weather", "pack.record.traffic"})
    flow.paragraph(std::string(words.at(key)), plain(style));
  flow.heading(std::string(words.at("pack.practised")));
  add_table(flow, style, subject);
  flow.paragraph(std::string(words.at("pack.levels")), grey(style));
  if (const std::string letters = letters_to_look_at(subject); !letters.empty())
    flow.paragraph(words.fill("pack.record.seen", {{"letters", letters}}), plain(style));
  constexpr int ruled_lines = 2;
  for (const std::string_view key : {"pack.record.well", "pack.record.risk", "pack.record.pupil",
                                     "pack.record.next", "pack.record.private"}) {
    flow.heading(std::string(words.at(key)));
    add_ruled(flow, ruled_lines);
  }
}

}  // namespace loopwright::card
