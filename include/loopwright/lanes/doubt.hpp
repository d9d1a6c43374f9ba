// What the map leaves in doubt about a bus lane, in words.
//
//   doubt_words("lanes:psv=1 says always, lanes:psv:conditional says Mo-Fr 07:30-09:30")
//     == "the map says at all times, and also Monday to Friday, half past seven till half past nine"
//
// Rules: takes the texts of road::BusLane::doubt, which name tags, as the report of a build prints
// them for mappers. A text of another kind is told in general words, so that no tag is ever printed
// as if it were English.
#pragma once

#include <string>
#include <string_view>

namespace loopwright::lanes {

std::string doubt_words(std::string_view doubt);

}  // namespace loopwright::lanes
