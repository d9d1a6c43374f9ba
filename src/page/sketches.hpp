// The junctions of a loop that was found, as sketches to look at beside what is said there.
//
//   GET /jobs/JOB/sketches?loop=       rows with a junction: {"rows": [{"row": 5, "text": "at the roundabout …, Tanner
//                                      Street", "passes": [2]}]}; passes: rows of the loop's passes that begin there
//   GET /jobs/JOB/sketch?loop=&row=    one as a picture (SVG), drawn as the pack has it
//
// Rules: pure but for the loop file. The text says what the picture's row says: it stands for the picture where that
// can't be seen. Throws InputError for a loop file that can't be read.
#pragma once

#include <filesystem>
#include <string_view>

#include "loopwright/page/page.hpp"
#include "page/request.hpp"

namespace loopwright::page {

/// what: "sketches" or "sketch"; loops: the loop file, made with this area.
Reply sketches_of(const OpenArea& area, const std::filesystem::path& loops, std::string_view what,
                  const Address& address);

}  // namespace loopwright::page
