// One reading of a text at a time: as a name, as a house, as a crossing.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/place/place.hpp"
#include "loopwright/place/typed.hpp"
#include "place/index.hpp"
#include "place/streets.hpp"

namespace loopwright::place {

/// A candidate with the points it covers, for narrowing.
struct Hit {
  Candidate candidate;
  std::vector<Point> extent;
};
using Hits = std::vector<Hit>;

/// So many names are offered instead of what was not found (ours).
inline constexpr std::size_t most_hints = 3;

/// Why a reading that fits the words found nothing all the same.
struct Miss {
  std::string why;
  std::vector<std::string> instead;
};

enum class Spelling { exact, near };

/// How good a hit is, less is better; typos add their edits.
namespace grade {
inline constexpr int exact = 0;         ///< house, crossing, street, settlement, postcode
inline constexpr int exact_spot = 100;  ///< anything else that bears the name
inline constexpr int part = 200;
inline constexpr int typo = 300;
constexpr int by_edits(int edits) {
  return edits == 0 ? exact : typo + edits;
}
}  // namespace grade

class Lookup {
 public:
  Lookup(const road::Roads& roads, const Names& names) : roads_(roads), names_(names) {}

  /// Everything of that name. `near`: names of which it is a part, then those misspelt by it.
  [[nodiscard]] Hits named(std::string_view text, Spelling spelling) const;
  /// Settlements of that name; `near`: those misspelt by it.
  [[nodiscard]] Hits settlements(std::string_view text, Spelling spelling) const;
  /// The house of that number in every street of that name. When the street is known and the house
  /// isn't, `miss` says so.
  [[nodiscard]] Hits houses(const NumberAndStreet& typed, Spelling spelling,
                            std::optional<Miss>& miss) const;
  /// Where the two meet. When both are known and don't meet, `miss` says so.
  [[nodiscard]] Hits crossings(const std::pair<std::string, std::string>& typed, Spelling spelling,
                               std::optional<Miss>& miss) const;
  /// The nearest spellings there are, best first.
  [[nodiscard]] std::vector<std::string> spelled_like(std::string_view text) const;

 private:
  struct StreetsOfName {
    std::vector<Street> streets;
    std::vector<const road::Address*> houses;
    int edits = 0;
  };
  [[nodiscard]] std::vector<StreetsOfName> streets_named(std::string_view text,
                                                         Spelling spelling) const;
  void add_name(Hits& hits, const Name& name, int grade) const;
  void add_streets(Hits& hits, const Name& name, int grade) const;
  void add_addresses(Hits& hits, const Name& name, int grade) const;
  void add_spots(Hits& hits, const Name& name, int grade) const;
  void add_houses(Hits& hits, const StreetsOfName& found, std::string_view number,
                  std::optional<Miss>& miss) const;
  [[nodiscard]] std::string written(const Name& name) const;

  const road::Roads& roads_;
  const Names& names_;
};

/// True for place=city, suburb …: what may stand after a comma as the settlement.
bool is_settlement(std::string_view what);

}  // namespace loopwright::place
