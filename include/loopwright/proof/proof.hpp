// Checks a loop file against the area, claim by claim, by code that shares nothing with the search.
//
//   Proof p = prove(roads, answer, setting);   if (p.false_claim) say(*p.false_claim);
//
// Checked: the file's area is this one; each stretch exists and follows the last; directions, walls,
// turns (bans over several ways too) and access, also at the hour of passing; start and end at the places asked; lengths, limits,
// times by pace's rules, planned stops; the time window; every pass claimed is driven, none missing; what
// was avoided; bus-lane verdicts; places to pull up, the next after hard passes, when to drive on, planned
// stops and that the others have no place; ways home; counts against the wish; a shortfall that the loops bear out.
// Rules: never includes find, reach or mark; stops at the first false claim. Stretches, passes and
// bus lanes are numbered from 0 in the text, as they are in the file.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::proof {

struct Proof {
  std::optional<std::string> false_claim;  ///< "loop 1, stretch 14 (way 7): …"
  std::int64_t loops = 0;
  std::int64_t claims = 0;  ///< checked
};

/// setting: whose bank holidays, terms and clock the area's hours are read by (road::setting_of).
Proof prove(const road::Roads& roads, const wish::Answer& answer, const hours::Setting& setting);

/// An area as an instructor's notes make it, and the bare map it was made of.
struct NotedArea {
  const road::Roads& map;
  const road::Roads& roads;
  std::span<const road::Note> notes;
};
/// The same for a loop made with notes; each thing noted must be borne out by a note, and what the
/// notes shut isn't driven.
Proof prove(const NotedArea& area, const wish::Answer& answer, const hours::Setting& setting);

}  // namespace loopwright::proof
