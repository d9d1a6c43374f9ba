// --keep-off, a place or an area and maybe hours, and --take, a place: as typed and as the search takes them.
//
//   WrittenKeepOff written = read_keep_off("Mill Street @ Mo-Fr 08:15-09:15");   // before a file is opened
//   wish.keep_offs.push_back(find_keep_off(written, places, roads));
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "command/places.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

struct WrittenKeepOff {
  std::string name;                   ///< what stands before the hours
  std::string hours;                  ///< empty: always
  std::vector<Point> outline;         ///< of an area
  std::optional<WrittenPlace> place;  ///< when it is none
};

/// The corners of an area. Throws UsageError for corners that are none, too few of them, or over 100 km apart.
std::vector<Point> read_outline(std::string_view option, std::string_view text);

/// Throws UsageError as read_outline does, and for hours that can't be read.
WrittenKeepOff read_keep_off(std::string_view text);

/// A place becomes one point: a junction's, or one on the road there that is no junction's. Throws
/// UsageError when the words mean nothing here or several places, or no road is near.
wish::KeepOff find_keep_off(const WrittenKeepOff& written, Places& places,
                            const road::Roads& roads);

struct WrittenTake {
  std::string name;
  WrittenPlace place;
};

/// Throws UsageError when it is no place.
WrittenTake read_take(std::string_view text);

/// The point is found as that of a place to keep off. Throws UsageError as find_keep_off does.
wish::Take find_take(const WrittenTake& written, Places& places, const road::Roads& roads);

}  // namespace loopwright::command
