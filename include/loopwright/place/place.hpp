// Finds a street, a house, a crossing of two streets, a postcode or a named place in an area by
// what people type.
//
//   const place::Finder finder(area.roads());
//   const place::Finding found = finder.find("4 Lantern Row");
//   if (found.meant == 1) go_to(found.candidates.front().at);
//
// Understood: "Lantern Row", "4 Lantern Row", "Lantern Row 4", "Rose Cottage, Mill Lane",
// "Lantern Row / Mill Street", "corner of Lantern Row and Mill Street", "ZQ1 4AA", "the Red Lion".
// What follows a comma (a settlement, a postcode, another street) narrows it. Case, accents,
// apostrophes, hyphens and the usual abbreviations don't matter.
// Rules: a typo finds, but never beats a name that is spelled as typed; a house number or a postcode
// is never taken for another one. Degrees are the caller's business.
// Why an index in the area: a country has a million names, and the file must open at once.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/point.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::place {

enum class Sort { house, street, crossing, postcode, spot };

enum class Match {
  exact,     ///< the map has just this
  inferred,  ///< the house lies between two mapped ones, or its street has no numbers at all
  part,      ///< the words are a part of the name
  typo
};

struct Candidate {
  Point at;  ///< of a street a point on it, about its middle
  Sort sort = Sort::spot;
  Match match = Match::exact;
  int score = 0;     ///< less is better; candidates of one score are equally good
  std::string name;  ///< "4 Lantern Row", "Lantern Row / Mill Street"
  std::string what;  ///< "street", "amenity=pub", "inferred between the mapped 2 and 6"
  std::string near;  ///< when several of one name are meant: what to add after a comma, if it helps
};

struct Finding {
  std::vector<Candidate> candidates;  ///< best first
  std::size_t meant = 0;  ///< of these: one is found, more are equally good, none is nothing found
  std::string why;        ///< when none: "Lantern Row has no 99 on the map"
  std::vector<std::string> instead;  ///< when none: the nearest there is, as one may type it
  std::string note;                  ///< what of the text was passed over, and why; empty mostly
};

/// The index an area carries in its column place_index: the same bytes for the same map and the
/// same version of SQLite.
std::string make_index(const road::Roads& roads);

class Finder {
 public:
  /// Rules: the area must outlive it; one thread at a time may use it. Throws InputError when its index is missing or damaged; so
  /// does find.
  explicit Finder(const road::Roads& roads);
  ~Finder();
  Finder(const Finder&) = delete;
  Finder& operator=(const Finder&) = delete;

  [[nodiscard]] Finding find(std::string_view text) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::place
