// A place on the command line: degrees, or what people call it.
//
//   WrittenPlace home = read_place("--home", "4 Lantern Row");   // before a file is opened
//   Places places(roads, std::cout);   wish.home = places.find(home);
#pragma once

#include <iosfwd>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "loopwright/base/point.hpp"
#include "loopwright/place/place.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// What the help says of an option that takes a place, behind what the place is for: "the door: ".
std::string place_help(std::string_view before);

struct WrittenPlace {
  std::string option, text;
  std::optional<Point> at;  ///< of degrees; words are looked up once the area is open
};

/// Throws UsageError for degrees that are none on earth, and for no words at all.
WrittenPlace read_place(std::string_view option, std::string_view text);

/// Where words lead to, and what they name there.
struct FoundPlace {
  Point at;
  std::optional<place::Sort> sort = {};  ///< of words; none: degrees
  std::string name = {};                 ///< of words, as the map has it
};

class Places {
 public:
  /// `out` is told what words were taken for, unless they name one mapped house.
  Places(const road::Roads& roads, std::ostream& out);

  /// Throws UsageError when the words mean nothing here, or several places.
  FoundPlace look_up(const WrittenPlace& place);
  Point find(const WrittenPlace& place) { return look_up(place).at; }

 private:
  const road::Roads& roads_;
  std::ostream& out_;
  std::unique_ptr<place::Finder> finder_;  // made when words come
};

}  // namespace loopwright::command
