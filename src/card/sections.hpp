// The parts of a sheet below its rows.
#pragma once

#include <vector>

#include "card/sheet.hpp"
#include "card/timed.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/lanes/door_kerb.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/say/words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::card {

/// What the sections speak of. Rules: all of it outlives them.
struct Subject {
  const road::Roads& roads;
  const wish::Answer& answer;
  const wish::Loop& loop;
  const std::vector<say::Row>& rows;
  const say::Words& words;
  const hours::Setting& setting;
  const std::vector<Timed>& timed;
  const std::vector<lanes::DoorKerb>& kerbs;  ///< at which it begins and ends
};

void add_bus_lanes(Sheet& sheet, const Subject& subject);
void add_hours(Sheet& sheet, const Subject& subject);
void add_practised(Sheet& sheet, const Subject& subject);
void add_unsure(Sheet& sheet, const Subject& subject);
void add_shortfall(Sheet& sheet, const Subject& subject);
void add_cautions(Sheet& sheet, const Subject& subject);

}  // namespace loopwright::card
