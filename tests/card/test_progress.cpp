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
  for (int n = 0; n < 200; ++n)
    sheet.sections[0].lines.push_back("lesson " + std::to_string(n) + ": it went well");
  CHECK(write_progress(sheet).size() >
        write_progress({"WREN", "", "2026-11-28T00:00:00+00:00", {}}).size());
}

}  // namespace
}  // namespace loopwright::card
