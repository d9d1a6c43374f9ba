#include "support/built_town.hpp"

#include <stdexcept>
#include <string>

namespace loopwright::test {

NodeId BuiltTown::node(char letter) const {
  const NodeId found = roads().find_node(osm_node(letter));
  if (!found.known()) {
    throw std::invalid_argument(std::string("built town: no node of the graph: ") + letter);
  }
  return found;
}

StretchId BuiltTown::stretch(std::string_view two_letters) const {
  if (two_letters.size() != 2) throw std::invalid_argument("built town: two letters, please");
  const road::Roads all = roads();
  const NodeId to = node(two_letters[1]);
  StretchId best;
  for (const StretchId s : all.leaving(node(two_letters[0]))) {
    if (all.to_node(s) == to && (!best.known() || s < best)) best = s;
  }
  if (!best.known()) {
    throw std::invalid_argument("built town: no road between " + std::string(two_letters));
  }
  return best;
}

bool BuiltTown::drives(std::string_view letters) const {
  const road::Roads all = roads();
  const StretchId first = stretch(letters.substr(0, 2));
  if (!all.drivable(first)) return false;
  StateId state{first.index()};
  for (std::size_t i = 1; i + 1 < letters.size(); ++i) {
    const StretchId wanted = stretch(letters.substr(i, 2));
    StateId next;
    for (const road::Turn& turn : all.turns_from(state)) {
      if (all.stretch_of(turn.to) == wanted) next = turn.to;
    }
    if (!next.known()) return false;
    state = next;
  }
  return true;
}

BuiltTown built_town(const mark::RawMap& raw, std::string_view region, read::BuildOptions options) {
  BuiltTown town;
  options.region = find_region(region).value();
  town.built = read::assemble(raw, options, town.report, {});
  return town;
}

BuiltTown built_town(std::string_view drawing, std::string_view region) {
  return built_town(draw_town(drawing), region);
}

}  // namespace loopwright::test
