// Method: first the sections that hold for all drives, then those of each drive, then the cautions; behind them each drive's
// rows and, on paper, its map.
#include "loopwright/card/at_home.hpp"

#include <array>
#include <memory>

#include "card/at_home_sections.hpp"
#include "card/pack_pages.hpp"
#include "card/row_text.hpp"
#include "card/speech.hpp"
#include "card/subject_of.hpp"
#include "loopwright/draw/render.hpp"

namespace loopwright::card {
namespace {

using Subjects = std::vector<std::unique_ptr<SubjectOf>>;

Subjects subjects_of(std::span<const Lesson> drives) {
  Subjects subjects;
  for (const Lesson& drive : drives) subjects.push_back(std::make_unique<SubjectOf>(drive));
  return subjects;
}

std::vector<const Subject*> all_of(const Subjects& subjects) {
  std::vector<const Subject*> all;
  for (const auto& one : subjects) all.push_back(&one->get());
  return all;
}

/// What holds for all drives, cautions last.
std::vector<Section> sections_before(const HomeSheet& sheet, const Subjects& subjects) {
  const Subject& first = subjects.front()->get();
  std::vector<Section> sections = home_sections(sheet, first);
  sections.push_back(home_cautions(all_of(subjects), first.words));
  return sections;
}

std::vector<Section> sections_of_drives(const Subjects& subjects) {
  std::vector<Section> sections;
  for (std::size_t k = 0; k < subjects.size(); ++k)
    for (Section& section : drive_sections(subjects[k]->get(), k + 1))
      sections.push_back(std::move(section));
  return sections;
}

/// number: of the drive; 0: of the sheet before the drives.
Frame frame_for(const HomeSheet& sheet, const Subject& subject, std::size_t number) {
  const say::Words& words = subject.words;
  const std::string when = write_when(words, subject.loop.start);
  const std::string title =
      number == 0
          ? words.fill("at_home.title", {{"when", when}})
          : words.fill("at_home.drive_title", {{"n", std::to_string(number)}, {"when", when}});
  return {sheet.code,
          title,
          "",
          std::string(words.at("caution.parked")),
          {std::string(words.at("at_home.short")) + " " + write_credit(words, subject.roads) +
           ", " + std::string(words.at("card.licence"))}};
}

void add_sections(Flow& flow, const PageStyle& style, const std::vector<Section>& sections) {
  constexpr double indent = 3;
  for (const Section& section : sections) {
    flow.heading(section.heading);
    for (const SectionLine& line : section.lines)
      flow.paragraph(line.text, plain(style), indent * line.level);
  }
}

void append(std::vector<draw::Picture>& pages, std::vector<draw::Picture> more) {
  for (draw::Picture& page : more) pages.push_back(std::move(page));
}

/// Pages of text in letters as large as keep it on one, when it can be kept there.
std::vector<draw::Picture> text_pages(const PageStyle& style, const Frame& frame,
                                      const std::string& name,
                                      const std::vector<Section>& sections) {
  constexpr std::array scales{1.3, 1.2, 1.1, 1.0};
  for (const double scale : scales) {
    Flow flow(scaled(style, scale), [&] { return framed(style, frame, name); });
    add_sections(flow, scaled(style, scale), sections);
    if (flow.page_count() == 1 || scale == scales.back()) return flow.pages();
  }
  return {};
}

}  // namespace

std::string write_at_home_text(const HomeSheet& sheet, std::span<const Lesson> drives) {
  const Subjects subjects = subjects_of(drives);
  const Subject& first = subjects.front()->get();
  const say::Words& words = first.words;
  Sheet text;
  text.spread(sheet.code,
              words.fill("at_home.title", {{"when", write_when(words, first.loop.start)}}));
  text.paragraph(0, words.at("caution.parked"));
  text.paragraph(0, words.at("at_home.short"));
  text.rule('=');
  for (const Section& section : sections_before(sheet, subjects)) add_section(text, section);
  for (const Section& section : sections_of_drives(subjects)) add_section(text, section);
  for (std::size_t k = 0; k < subjects.size(); ++k) {
    text.blank();
    text.rule('=');
    text.spread(words.fill("at_home.drive", {{"n", std::to_string(k + 1)}}),
                write_when(words, subjects[k]->get().loop.start));
    add_rows(text, subjects[k]->get(), Reader::family);
  }
  text.rule('-');
  text.paragraph(0, write_credit(words, first.roads));
  text.paragraph(0, words.at("card.licence"));
  return text.text();
}

std::string write_at_home(const HomeSheet& sheet, std::span<const Lesson> drives, Paper paper,
                          Print print) {
  const Subjects subjects = subjects_of(drives);
  const Subject& first = subjects.front()->get();
  PackOptions options;
  options.paper = paper, options.print = print;
  options.pupil = sheet.code;
  options.reader = Reader::family;
  const PageStyle style = style_of(paper, print);
  const auto name = [&](std::string_view key) { return std::string(first.words.at(key)); };
  const Frame frame = frame_for(sheet, first, 0);
  std::vector<draw::Picture> pages =
      text_pages(style, frame, name("at_home.page"), sections_before(sheet, subjects));
  append(pages, text_pages(style, frame, name("at_home.drives"), sections_of_drives(subjects)));
  for (std::size_t k = 0; k < subjects.size(); ++k) {
    const Subject& drive = subjects[k]->get();
    const PackPages pack(drive, options, frame_for(sheet, drive, k + 1));
    for (const Sheets part : {Sheets::rows, Sheets::overview}) append(pages, pack.of(part));
  }
  return draw::to_pdf(pages, {sheet.code + ", " + frame.when, write_time(first.loop.start)});
}

}  // namespace loopwright::card
