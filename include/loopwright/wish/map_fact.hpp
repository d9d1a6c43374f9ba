// A fact of the map that someone can look at on the ground, and how it was found there.
//
//   MapFact{"bus lane along", "way/5", "lanes:bus:forward:conditional=1 @ (Mo-Sa 07:00-10:00)"}
//
// Rules: plain data. `what` and `object` say which fact it is, `map_text` what the map says of it today: what was seen holds
// only as long as the map says the same.
#pragma once

#include <string>
#include <vector>

namespace loopwright::wish {

struct MapFact {
  std::string what;      ///< with the direction driven where it matters: "limit against"
  std::string object;    ///< map object, "way/5"
  std::string map_text;  ///< tags, or what was inferred; empty: the map doesn't know
  friend bool operator==(const MapFact&, const MapFact&) = default;
};

/// What a sheet says of something to look at there: its letter when it is to be looked at, and in words when and how it was
/// seen. Both may be empty.
struct GroundMark {
  std::string letter;
  std::string seen;
};

}  // namespace loopwright::wish
