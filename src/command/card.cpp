// Method: the loop asked for is read, tied to the area and written by room card in one of its
// formats, to a file or to standard output. One that may not be driven at its hour is told on standard
// error too, since a file is written without being looked at.
#include "loopwright/card/card.hpp"

#include <algorithm>
#include <array>
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/words_file.hpp"
#include "loopwright/card/calendar.hpp"
#include "loopwright/card/html.hpp"
#include "loopwright/card/pack.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

struct CardJob {
  AreaTexts area;
  std::filesystem::path loops, output, words;
  say::Sides sides = say::Sides::left_right;
  int loop = 1;
  std::string format;
  card::PackOptions pack;
};

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

say::Sides sides_named(const std::string& name) {
  if (name == "left-right") return say::Sides::left_right;
  if (name == "my-your") return say::Sides::my_your;
  throw UsageError("--sides takes left-right or my-your, not " + as_given(name));
}

std::optional<CardJob> job_of(const Arguments& words) {
  Options app{
      "Writes a loop as a lesson on paper, as a card to read from, or as a file to exchange.",
      "loopwright card"};
  AreaTexts area;
  std::string words_file, sides = "left-right";
  std::string loops, output, loop = "1", format = "text", paper = "a4", pupil, sketches = "12";
  std::vector<std::string> sheets;
  bool large = false;
  add_area(app, area);
  app.add_option("LOOPS", loops, "loop file")->required();
  app.add_option("--loop", loop, "number of the loop (default: 1)");
  app.add_option("--format", format, "text, pdf, html, gpx, geojson or ics (default: text)");
  app.add_option("--paper", paper, "pdf: a4 or a5 (default: a4)");
  app.add_flag("--large-print", large, "pdf: larger letters, half the rows on a page");
  app.add_option("--sheet", sheets,
                 "pdf: only plan, rows, late, sketches, overview, strip or after (may be given "
                 "several times; default: all but strip)")
      ->one_value_each();
  app.add_option("--sketches", sketches,
                 "pdf: draw at most so many of the hardest places (default: 12)");
  app.add_option("--pupil", pupil, "pdf, html, ics: a code for the learner, never a name");
  app.add_option("--words", words_file, "table of words to speak and print in, instead of ours");
  app.add_option("--sides", sides,
                 "left-right, or my-your for who mixes them: my side is the instructor's");
  app.add_option("-o,--output", output, "file to write (default: standard output)");
  if (!parse(app, words)) return std::nullopt;
  if (!is_format(format))
    throw UsageError("--format takes text, pdf, html, gpx, geojson or ics, not " +
                     as_given(format));
  if (format == "pdf" && output.empty())
    throw UsageError("a PDF isn't for the screen: name its file with -o");
  CardJob job{
      area,   loops, output, words_file, sides_named(sides), whole_number("--loop", loop, {1, 999}),
      format, {}};
  job.pack.paper = paper_named(paper);
  job.pack.print = large ? card::Print::large : card::Print::normal;
  if (!sheets.empty()) job.pack.sheets = sheets_named(sheets);
  job.pack.most_sketches = static_cast<std::size_t>(whole_number("--sketches", sketches, {0, 999}));
  if (!pupil.empty()) job.pack.pupil = pupil_code("--pupil", pupil);
  return job;
}

std::string write(const CardJob& job, const card::Lesson& lesson) {
  if (job.format == "pdf") return card::write_pack(lesson, job.pack);
  if (job.format == "html") return card::write_html(lesson, job.pack.pupil);
  if (job.format == "ics") return card::write_calendar(lesson, job.pack.pupil);
  if (job.format == "gpx") return card::write_gpx(lesson);
  if (job.format == "geojson") return card::write_geojson(lesson);
  return card::write_text(lesson);
}

Exit run(const CardJob& job) {
  if (!job.output.empty()) {
    need_folder_of(job.output);
    need_own_file(job.output, {job.area.area, job.area.notes, job.loops, job.words});
  }
  std::optional<WordsFile> words;
  if (!job.words.empty()) words.emplace(job.words);
  Ground ground(job.area);
  const TiedLoops tied = loops_of(ground, job.loops);
  const wish::Loop& loop = loop_numbered(tied.answer, job.loop, job.loops);
  const card::Lesson lesson{
      tied.roads, tied.answer, loop, tied.setting, {words ? &words->words() : nullptr, job.sides}};
  const std::string text = write(job, lesson);
  const std::string barred = card::write_barred(lesson);
  if (!barred.empty()) {
    std::cerr << "loopwright: " << job.loops.string() << ": loop " << loop.id << ": " << barred
              << '\n';
  }
  if (job.output.empty()) {
    std::cout << text;
  } else {
    store::write_whole(job.output, text);
  }
  return Exit::done;
}

}  // namespace

Exit card(const Arguments& words) {
  const std::optional<CardJob> job = job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
