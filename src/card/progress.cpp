#include "loopwright/card/progress.hpp"

#include "card/flow.hpp"
#include "card/page_frame.hpp"
#include "loopwright/draw/render.hpp"

namespace loopwright::card {
namespace {

/// name: of the pages, for their foot and the file's title.
std::string write_sections(const wish::ProgressSheet& sheet, const Frame& frame,
                           const std::string& name) {
  constexpr double larger =
      1.25;  // than the small print of a lesson: it is read at leisure, by whoever it is about
  const PageStyle style = scaled(style_of(Paper::a4, Print::normal), larger);
  Flow flow(style, [&] { return framed(style, frame, name); });
  for (const wish::ProgressSheet::Section& section : sheet.sections) {
    flow.heading(section.heading);
    for (const std::string& line : section.lines) flow.paragraph(line, plain(style));
  }
  return draw::to_pdf(flow.pages(), {sheet.code + ", " + name, sheet.made});
}

}  // namespace

std::string write_progress(const wish::ProgressSheet& sheet) {
  return write_sections(
      sheet,
      {sheet.code,
       "as of " + sheet.day,
       "",
       "What was seen on these days, no more: it ranks nobody, and promises no pass.",
       {"Levels go up and down; a mock test says nothing about a real one."}},
      "progress");
}

std::string write_record(const wish::ProgressSheet& sheet) {
  return write_sections(
      sheet,
      {sheet.code,
       "as of " + sheet.day,
       "",
       "All that the book holds on you. You may have it put right, or erased.",
       {"Whole texts and every single pass are in the JSON file that goes with it."}},
      "record");
}

}  // namespace loopwright::card
