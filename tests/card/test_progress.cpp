#include <catch2/catch.hpp>

#include "loopwright/card/progress.hpp"

namespace loopwright::card {
namespace {

TEST_CASE("a pupil's progress is a PDF, the same each time", "[card][progress]") {
  const wish::ProgressSheet sheet{"WREN",
                                  "Saturday 28 November 2026",
                                  "2026-11-28T00:00:00+00:00",
                                  {{"next goals", {"roundabouts right"}}}};
  const std::string pdf = write_progress(sheet);
  CHECK(pdf.starts_with("%PDF-"));
  CHECK(write_progress(sheet) == pdf);
}

TEST_CASE("a long record runs over several pages", "[card][progress]") {
  wish::ProgressSheet sheet{"WREN",
                            "Saturday 28 November 2026",
                            "2026-11-28T00:00:00+00:00",
                            {{"in your own words", {}}}};
  const auto length_with = [&](int lines) {
    sheet.sections[0].lines.assign(static_cast<std::size_t>(lines), "it went well");
    const std::string pdf = write_progress(sheet);
    std::size_t pages = 0;
    for (std::size_t at = pdf.find("/Type /Page %"); at != std::string::npos;
         at = pdf.find("/Type /Page %", at + 1))
      ++pages;
    return pages;
  };
  CHECK(length_with(1) == 1);
  CHECK(length_with(300) > 1);
}

}  // namespace
}  // namespace loopwright::card
