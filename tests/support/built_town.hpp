// A drawn town, built into a graph as a real map is, and spoken of by its letters.
//
//   const BuiltTown town = built_town(drawing, "GB-ENG");
//   town.roads().drivable(town.stretch("AB"));   town.drives("ABC");
//
// Rules: letters in a path are nodes of the graph (junctions, ends, points that matter), one after
// the other; a letter that is only a bend is no part of it. Throws std::invalid_argument otherwise.
#pragma once

#include <string_view>

#include "loopwright/read/build.hpp"
#include "loopwright/road/setting_of.hpp"
#include "support/drawn_town.hpp"

namespace loopwright::test {

struct BuiltTown {
  read::Built built;
  road::Report report;

  [[nodiscard]] road::Roads roads() const { return road::view_of(built.tables, built.info); }
  [[nodiscard]] NodeId node(char letter) const;
  /// The piece from the first letter to the second, driven that way. The first in order of way id
  /// when there are several.
  [[nodiscard]] StretchId stretch(std::string_view two_letters) const;
  /// True when one may drive these nodes in this order, by legal turns, starting on the first
  /// stretch with nothing to remember.
  [[nodiscard]] bool drives(std::string_view letters) const;
};

BuiltTown built_town(const mark::RawMap& raw, std::string_view region,
                     read::BuildOptions options = {});
BuiltTown built_town(std::string_view drawing, std::string_view region = "GB-ENG");

/// Its bank holidays and clock, without school terms.
inline hours::Setting setting_of(const road::Roads& roads) {
  return road::setting_of(roads.info(), std::nullopt);
}

}  // namespace loopwright::test
