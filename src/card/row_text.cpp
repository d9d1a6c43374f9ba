// Method: a row is up to six lines: what is said (with limit and hardness at the right), where, how far to the next, what
// to brief here, what is met before the next. The first and the last tell of their kerb when waiting may be forbidden
// there.
#include "card/row_text.hpp"

#include "card/entries.hpp"
#include "card/independent.hpp"
#include "card/lesson.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"

namespace loopwright::card {
namespace {

/// Bracket, blank, row number, two blanks.
constexpr std::size_t text_column = 6;
constexpr std::string_view bracket_top = "┌", bracket_side = "│", bracket_foot = "└";

/// One line of a row, with what stands at its right edge.
struct RowLine {
  std::string left, right;
};

std::vector<RowLine> lines_of(const Subject& subject, std::size_t k, Reader reader) {
  const say::Words& words = subject.words;
  const Entry entry = row_entry(subject, k);
  std::vector<std::string> numerals;
  if (!entry.limit.empty()) numerals.push_back(write_limit(words, *subject.rows[k].new_limit));
  if (entry.hardness > 0 && reader == Reader::instructor)
    numerals.push_back(words.fill("card.hard", {{"n", std::to_string(entry.hardness)}}));
  std::vector<RowLine> lines{{entry.say, joined(numerals, "  ")}};
  std::vector<std::string> where{entry.where, entry.landmark};
  std::erase(where, "");
  const std::string look = entry.limit_sure ? "" : std::string(words.at("card.look"));
  if (!where.empty() || !look.empty()) lines.push_back({joined(where, "; "), look});
  for (const std::string* line : {&entry.lane, &entry.kerb, &entry.next, &entry.brief, &entry.then})
    if (!line->empty()) lines.push_back({*line, {}});
  if (reader == Reader::family) {
    // The way home leads to where the drive began, which isn't the family's home.
    if (!entry.after.empty()) lines.push_back({entry.after, {}});
    return lines;
  }
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
  RowPrinter(Sheet& sheet, const Subject& subject, Reader reader)
      : sheet_(sheet), subject_(subject), reader_(reader) {}

  void print() {
    for (std::size_t k = 0; k < subject_.rows.size(); ++k) {
      for (const Band& band : bands_before(subject_, k)) print_apart(band.text);
      print_notices(k);
      print_row(k);
    }
    print_notices(subject_.rows.size());
    for (const Band& band : seats_behind(subject_)) print_apart(band.text);
  }

 private:
  void print_notices(std::size_t k) {
    constexpr std::size_t indent = 2;
    for (const Notice& notice : independent_before(subject_, k)) {
      sheet_.blank();
      if (notice.kind == NoticeKind::begins) sheet_.rule('-');
      sheet_.paragraph(0, notice.head);
      for (const std::string& line : notice.lines) sheet_.paragraph(indent, line);
      if (notice.kind == NoticeKind::ends) sheet_.rule('-');
    }
  }

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
    const std::vector<RowLine> lines = fitted(lines_of(subject_, k, reader_));
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
  Reader reader_;
};

}  // namespace

void add_rows(Sheet& sheet, const Subject& subject, Reader reader) {
  RowPrinter(sheet, subject, reader).print();
}

void add_section(Sheet& sheet, const Section& section) {
  constexpr std::size_t indent = 2;
  sheet.blank();
  sheet.line(section.heading);
  for (const SectionLine& line : section.lines)
    sheet.paragraph(indent * static_cast<std::size_t>(1 + line.level), line.text);
}

}  // namespace loopwright::card
