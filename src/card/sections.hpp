// The parts of a sheet below its rows, as plain text: headings with paragraphs. Text, PDF and page print the
// same.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/timed.hpp"
#include "loopwright/card/card.hpp"
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
  const wish::Loop& loop;  ///< the learner's own drive (wish/learners_drive.hpp); mostly all of it
  const std::vector<say::Row>& rows;
  const say::Words& words;
  const hours::Setting& setting;
  const std::vector<Timed>& timed;              ///< of the whole drive
  const std::vector<lanes::DoorKerb>& kerbs;    ///< at which the learner's drive begins and ends
  const std::vector<wish::GroundMark>* ground;  ///< of what ground_items() names; may be null
  const wish::Loop& whole;                      ///< with the roads that the instructor drives
  std::size_t before;                           ///< stretches of it before the learner's
  const Help& help;
};

/// A paragraph of a section.
struct SectionLine {
  int level = 0;  ///< 0, or 1: it tells more of the last one with 0
  std::string text;
};

struct Section {
  std::string heading;
  std::vector<SectionLine> lines;  ///< at least one
};

/// Bus lanes; what else has hours; what is practised; what isn't sure in the map, or what is to be looked at on the ground
/// when somebody says what was seen; the light; what fell short; cautions. Those with nothing in them are left out.
std::vector<Section> sections_of(const Subject& subject);

/// Number, from 1, of the row that a stretch is driven after.
std::size_t row_of_stretch(const Subject& subject, std::size_t stretch);
/// The same of one in the whole drive; none: the instructor drives it.
std::optional<std::size_t> row_of_visit(const Subject& subject, const Visit& visit);

Section bus_lanes_of(const Subject& subject);
Section hours_of(const Subject& subject);
Section practised_of(const Subject& subject);
Section unsure_of(const Subject& subject);
Section shortfall_of(const Subject& subject);
Section cautions_of(const Subject& subject);

}  // namespace loopwright::card
