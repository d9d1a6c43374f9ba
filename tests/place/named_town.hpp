// A drawn town one may ask for places by name.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/place/place.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {

class NamedTown {
 public:
  explicit NamedTown(std::string_view drawing, double metres_per_character = 25)
      : town_(built_town(draw_town(drawing, metres_per_character), "GB-ENG")) {
    const std::string index = place::make_index(town_.roads());
    town_.built.tables.place_index.assign(index.begin(), index.end());
  }
  [[nodiscard]] road::Roads roads() const { return town_.roads(); }
  [[nodiscard]] place::Finding find(std::string_view text) const {
    return place::Finder(roads()).find(text);
  }
  /// "Lantern Row (street)" of each that is meant; with what tells it apart when several are.
  [[nodiscard]] std::vector<std::string> meant(std::string_view text) const {
    std::vector<std::string> texts;
    const place::Finding finding = find(text);
    for (std::size_t i = 0; i < finding.meant; ++i) {
      const place::Candidate& found = finding.candidates[i];
      texts.push_back(found.name + (found.near.empty() ? "" : ", " + found.near) + " (" +
                      found.what + ")");
    }
    return texts;
  }
  /// Where a node of the drawing lies.
  [[nodiscard]] Point at(char letter) const { return roads().nodes[town_.node(letter).index()].at; }

 private:
  BuiltTown town_;
};

}  // namespace loopwright::test
