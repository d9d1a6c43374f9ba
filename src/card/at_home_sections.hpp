// What a sheet for practice at home says before its drives, and of each of them, as plain text.
#pragma once

#include <vector>

#include "card/sections.hpp"
#include "loopwright/card/at_home.hpp"

namespace loopwright::card {

/// Before the drives. Rules: the subject is the first drive's.
std::vector<Section> home_sections(const HomeSheet& sheet, const Subject& subject);
/// Of one drive: how long, what is on it, what has hours, what isn't sure, the light. Number from 1.
std::vector<Section> drive_sections(const Subject& subject, std::size_t number);
/// What the drives call for, each caution once.
Section home_cautions(const std::vector<const Subject*>& drives, const say::Words& words);

}  // namespace loopwright::card
