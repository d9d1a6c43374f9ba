// Method: every part of the pack makes its own pages within the same frame; they are bound in the order asked
// for. A part with nothing to say has no page.
#include "loopwright/card/pack.hpp"

#include <array>

#include "card/pack_pages.hpp"
#include "card/speech.hpp"
#include "card/subject_of.hpp"
#include "loopwright/draw/render.hpp"

namespace loopwright::card {
namespace {

constexpr std::array<std::string_view, sheets_count> sheet_names{
    "plan", "rows", "late", "sketches", "overview", "strip", "after"};

void add_pages(std::vector<draw::Picture>& pages, const DayLesson& one) {
  const SubjectOf subject(one.lesson);
  const Frame frame = frame_of(subject.get(), head_of(subject.get()), one.options.pupil);
  const PackPages pack(subject.get(), one.options, frame);
  for (const Sheets sheets : one.options.sheets)
    for (draw::Picture& page : pack.of(sheets)) pages.push_back(std::move(page));
}

}  // namespace

std::string_view name(Sheets sheets) {
  return sheet_names.at(static_cast<std::size_t>(sheets));
}

std::string write_pack(const Lesson& lesson, const PackOptions& options) {
  const DayLesson one{lesson, options};
  return write_day({&one, 1});
}

std::string write_day(std::span<const DayLesson> lessons) {
  std::vector<draw::Picture> pages;
  for (const DayLesson& one : lessons) add_pages(pages, one);
  const Lesson& first = lessons.front().lesson;
  const SubjectOf subject(first);
  const say::Words& words = subject.get().words;
  return draw::to_pdf(pages, {words.fill("card.title", {{"n", std::to_string(first.loop.id)}}) +
                                  ", " + write_when(words, first.loop.start),
                              write_time(first.loop.start)});
}

}  // namespace loopwright::card
