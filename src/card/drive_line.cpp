// Method: shapes of the stretches strung together; never of the first and the last, which hold the door.
#include "card/drive_line.hpp"

namespace loopwright::card {

std::vector<Point> drive_line(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<Point> line = line_along(roads, loop, 1, loop.stretches.size() - 1);
  if (line.empty()) line = {roads.nodes[roads.to_node(loop.stretches.front().stretch).index()].at};
  return line;
}

std::vector<Point> line_along(const road::Roads& roads, const wish::Loop& loop, std::size_t first,
                              std::size_t end) {
  const auto& rows = loop.stretches;
  std::vector<Point> line;
  const auto add = [&](Point at) {
    if (line.empty() || at != line.back()) line.push_back(at);
  };
  for (std::size_t i = first; i < end; ++i) {
    const auto shape = roads.shape_of(rows[i].stretch.piece());
    if (rows[i].stretch.against()) {
      for (auto it = shape.rbegin(); it != shape.rend(); ++it) add(*it);
    } else {
      for (const Point at : shape) add(at);
    }
  }
  return line;
}

Point pass_point(const road::Roads& roads, const wish::Loop& loop, const wish::Pass& pass) {
  const StretchId stretch = loop.stretches[pass.first].stretch;
  const road::KindForm form = road::form_of(pass.kind);
  if (form == road::KindForm::roadside || form == road::KindForm::manoeuvre)
    for (const road::Chance& chance : roads.chances_from(stretch))
      if (chance.kind == pass.kind && chance.source == pass.source)
        return roads.places[chance.place.index()].at;
  const bool at_entry = road::is_stretch_like(pass.kind) && pass.first > 0;
  const NodeId node = at_entry ? roads.from_node(stretch) : roads.to_node(stretch);
  return roads.nodes[node.index()].at;
}

}  // namespace loopwright::card
