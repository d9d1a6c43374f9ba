#include "command/card_form.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <iostream>

#include "command/arguments.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/card/calendar.hpp"
#include "loopwright/card/html.hpp"

namespace loopwright::command {
namespace {

bool is_format(std::string_view format) {
  constexpr std::array<std::string_view, 6> formats{"text", "pdf", "html", "gpx", "geojson", "ics"};
  return std::ranges::find(formats, format) != formats.end();
}

card::Paper paper_named(const std::string& name) {
  if (name == "a4") return card::Paper::a4;
  if (name == "a5") return card::Paper::a5;
  throw UsageError("--paper takes a4 or a5, not " + as_given(name));
}

std::vector<card::Sheets> sheets_named(const std::vector<std::string>& names) {
  std::vector<card::Sheets> sheets;
  for (const std::string& name : names) {
    std::size_t n = 0;
    while (n < card::sheets_count && card::name(static_cast<card::Sheets>(n)) != name) ++n;
    if (n == card::sheets_count)
      throw UsageError("--sheet takes plan, rows, late, sketches, overview, strip or after, not " +
                       as_given(name));
    sheets.push_back(static_cast<card::Sheets>(n));
  }
  return sheets;
}

/// How a file's name ends, in small letters, without the stop; empty for the screen.
std::string ending_of(const std::string& output) {
  const std::string ending = lower(std::filesystem::path(output).extension().string());
  return ending.empty() ? ending : ending.substr(1);
}

/// The form that the ending of a file's name says; none for any other.
std::optional<std::string> format_by_name(const std::string& ending) {
  if (ending == "txt") return "text";
  if (ending == "htm") return "html";
  if (!is_format(ending)) return std::nullopt;
  return ending;
}

std::string format_meant(const std::string& said, const std::string& output) {
  const std::string ending = ending_of(output);
  const auto by_name = format_by_name(ending);
  if (said.empty() && !by_name && !ending.empty())
    throw UsageError("-o: " + as_given(output) + " ends in " + as_given("." + ending) +
                     ", which is no form of a card; let it end in .txt, .pdf, .html, .gpx, "
                     ".geojson or .ics, or say --format");
  if (said.empty()) return by_name.value_or("text");
  if (!is_format(said))
    throw UsageError("--format takes text, pdf, html, gpx, geojson or ics, not " + as_given(said));
  if (by_name && *by_name != said)
    throw UsageError("-o: " + as_given(output) + " ends in ." + ending + ", but --format says " +
                     said +
                     "; leave out --format, or give the file "
                     "another ending");
  return said;
}

say::Sides sides_named(const std::string& name) {
  if (name == "left-right") return say::Sides::left_right;
  if (name == "my-your") return say::Sides::my_your;
  throw UsageError("--sides takes left-right or my-your, not " + as_given(name));
}

}  // namespace

void add_card_options(Options& app, CardTexts& texts) {
  app.add_option(
      "--format", texts.format,
      "text, pdf, html, gpx, geojson or ics (default: as the file's name ends, else text)");
  app.add_option("--paper", texts.paper, "pdf: a4 or a5 (default: a4)");
  app.add_flag("--large-print", texts.large, "pdf: larger letters, half the rows on a page");
  app.add_option("--sheet", texts.sheets,
                 "pdf: only plan, rows, late, sketches, overview, strip or after (may be given "
                 "several times; default: all but strip)")
      ->one_value_each();
  app.add_option("--sketches", texts.sketches,
                 "pdf: draw at most so many of the hardest places (default: 12)");
  app.add_option("--words", texts.words, "table of words to speak and print in, instead of ours");
  app.add_option("--sides", texts.sides,
                 "left-right, or my-your for who mixes them: my side is the instructor's");
}

CardForm card_form_of(const CardTexts& texts, const std::string& output) {
  const std::string format = format_meant(texts.format, output);
  if (format == "pdf" && output.empty())
    throw UsageError("a PDF isn't for the screen: name its file with -o");
  CardForm form{format, {}, sides_named(texts.sides)};
  form.pack.paper = paper_named(texts.paper);
  form.pack.print = texts.large ? card::Print::large : card::Print::normal;
  if (!texts.sheets.empty()) form.pack.sheets = sheets_named(texts.sheets);
  form.pack.most_sketches =
      static_cast<std::size_t>(whole_number("--sketches", texts.sketches, {0, 999}));
  return form;
}

std::string write_card(const CardForm& form, const card::Lesson& lesson) {
  if (form.format == "pdf") return card::write_pack(lesson, form.pack);
  if (form.format == "html") return card::write_html(lesson, form.pack.pupil);
  if (form.format == "ics")
    return card::write_calendar(lesson, {form.pack.pupil, form.lesson_minutes});
  if (form.format == "gpx") return card::write_gpx(lesson);
  if (form.format == "geojson") return card::write_geojson(lesson);
  return card::write_text(lesson);
}

void tell_barred(const card::Lesson& lesson, const std::string& name) {
  const std::string barred = card::write_barred(lesson);
  if (barred.empty()) return;
  std::cerr << "loopwright: " << name << ": loop " << lesson.loop.id << ": " << barred << '\n';
}

}  // namespace loopwright::command
