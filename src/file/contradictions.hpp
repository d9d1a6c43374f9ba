// Notes that take back what another note says of the same place.
#pragma once

#include <optional>
#include <span>

#include "loopwright/road/note.hpp"

namespace loopwright::file {

/// Two notes, by their place in the file: one says that something is there, the other that it isn't.
struct Contradiction {
  std::size_t there = 0, not_there = 0;
  road::Kind kind = road::Kind::roundabout;
};

/// The first in the file's order of the "not" notes. Rules: of points, at most 10 m apart (ours: what a
/// finger misses) and not of opposite headings; of lines, each along the whole of the other.
std::optional<Contradiction> contradiction_in(std::span<const road::Note> notes);

/// "note 7 says there is no zebra where note 3 says there is one; take out the one that isn't so"
std::string words_for(const Contradiction& found);

}  // namespace loopwright::file
