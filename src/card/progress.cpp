#include "loopwright/card/progress.hpp"

#include "card/flow.hpp"
#include "card/page_frame.hpp"
#include "loopwright/draw/render.hpp"

namespace loopwright::card {

std::string write_progress(const wish::ProgressSheet& sheet) {
  constexpr double larger =
      1.25;  // than the small print of a lesson: it is read at leisure, by whoever it is about
  const PageStyle style = scaled(style_of(Paper::a4, Print::normal), larger);
  const Frame frame{sheet.code,
                    "as of " + sheet.day,
                    "",
                    "What was seen on these days, no more: it ranks nobody, and promises no pass.",
                    {"Levels go up and down; a mock test says nothing about a real one."}};
  Flow flow(style, [&] { return framed(style, frame, "progress"); });
  for (const wish::ProgressSheet::Section& section : sheet.sections) {
    flow.heading(section.heading);
    for (const std::string& line : section.lines) flow.paragraph(line, plain(style));
  }
  return draw::to_pdf(flow.pages(), {sheet.code + ", progress", sheet.made});
}

}  // namespace loopwright::card
