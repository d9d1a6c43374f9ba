// A pupil's record as the page shows it: what the book keeps and what follows from it.
//
//   {"code", "home", "scheme", "added", "test", "ticks": {"licence-seen": "2026-09-01"}, "avoids": ["signals"], "my_your",
//    "level": 2,                                                              that a wish is given, none without a scheme
//    "skills": [{"group", "name", "seen": [{"day", "level", "word"}]}],       the earliest first
//    "exposure": [{"road", "light", "weather", "traffic", "minutes"}],
//    "lessons": [{"number", "state", "day", "start", "length", "likely", "passes", "stepped_in"}]}
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string_view>

#include "loopwright/book/book.hpp"

namespace loopwright::page {

/// Throws InputError when there is no such pupil.
nlohmann::json record_of_pupil(const book::Book& book, std::string_view code);

}  // namespace loopwright::page
