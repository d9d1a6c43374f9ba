// Noted humps slow their road as mapped ones do.
#pragma once

#include <map>

#include "loopwright/road/note.hpp"
#include "overlay.hpp"

namespace loopwright::mark {

class NotedHumps {
 public:
  /// Counts a note of calming on the pieces it speaks of. A line of humps is a series end to end.
  void count(const road::Roads& roads, const road::Note& note);
  /// Slows the pieces on which the humps counted make a series (humps.hpp).
  void lay(Overlay& over) const;

 private:
  std::map<PieceId, std::size_t> humps_;
};

}  // namespace loopwright::mark
