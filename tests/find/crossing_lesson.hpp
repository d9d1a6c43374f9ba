// Lessons over the crossing streets, found, written, read again and proved.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include "find/answer_of.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/proof/proof.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

/// The crossing streets; all their kerbs forbidden to stop at by `kerbs`, tags for every street.
inline BuiltTown crossing_town(const std::string& kerbs = "") {
  std::string drawing(crossing_streets);
  const std::string mark = "maxspeed=";
  for (std::size_t at = drawing.find(mark); at != std::string::npos && !kerbs.empty();
       at = drawing.find(mark, at + kerbs.size() + 1 + mark.size()))
    drawing.insert(at, kerbs + " ");
  return built_town(draw_town(drawing, 100), "GB-ENG");
}

/// That town, built once.
inline const BuiltTown& town() {
  static const BuiltTown built = crossing_town();
  return built;
}

/// From Lantern Row on Saturday 28 November 2026 at three.
inline wish::Wish crossing_wish(const BuiltTown& town, int minutes,
                                std::initializer_list<std::string_view> wants) {
  const road::Roads roads = town.roads();
  const Point a = roads.nodes[town.node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = {1795878000, 0};
  wish.minutes = minutes;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

inline wish::Answer answer_in(const BuiltTown& town, const wish::Wish& wish) {
  const road::Roads roads = town.roads();
  const hours::Setting setting = setting_of(roads);
  find::FindResult found = wish.through.empty() ? find::find_loops(roads, wish, setting)
                                                : find::route_through(roads, wish, setting);
  const wish::Answer answer = answer_of(roads, wish, std::move(found));
  return file::read_answer(file::write_answer(answer), "drawn.json");
}

inline std::string false_claim_in(const BuiltTown& town, const wish::Answer& answer) {
  const road::Roads roads = town.roads();
  return proof::prove(roads, answer, setting_of(roads)).false_claim.value_or("");
}

}  // namespace loopwright::test
