// Method: of each piece near by, every run of segments within the radius has one nearest place.
#include "trace/candidates.hpp"

#include <algorithm>
#include <tuple>

namespace loopwright::trace {
namespace {

struct Place {
  PieceId piece;
  double along_m = 0, off_m = 0;
};

void add_places(const road::Roads& roads, PieceId piece, Point at, double radius_m,
                std::vector<Place>& places) {
  const auto shape = roads.shape_of(piece);
  double begin_m = 0;
  for (std::size_t i = 1; i < shape.size();) {
    std::size_t end = i;  // of a run of segments i … end - 1
    while (end < shape.size() && nearest_on_line(shape.subspan(end - 1, 2), at).off_m <= radius_m)
      ++end;
    if (end > i) {
      const auto part = shape.subspan(i - 1, end - i + 1);
      const Foot foot = nearest_on_line(part, at);
      const double along_m = std::min(begin_m + foot.along_m, roads.pieces[piece.index()].length_m);
      places.push_back({piece, along_m, foot.off_m});
      begin_m += length_m(part);
    } else {
      begin_m += distance_m(shape[i - 1], shape[i]);
      ++end;
    }
    i = end;
  }
}

}  // namespace

std::vector<Candidate> candidates_at(const road::Roads& roads, Point at, double radius_m) {
  std::vector<Place> places;
  for (const PieceId piece : road::pieces_near(roads, at, radius_m))
    if (roads.drivable(StretchId(piece, false)) || roads.drivable(StretchId(piece, true)))
      add_places(roads, piece, at, radius_m, places);
  std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) {
    return std::tuple(a.off_m, a.piece, a.along_m) < std::tuple(b.off_m, b.piece, b.along_m);
  });
  std::vector<Candidate> candidates;
  for (const Place& place : places) {
    if (candidates.size() + 2 > most_candidates) break;
    const StretchId along(place.piece, false), against = along.back();
    const bool both = roads.drivable(along) && roads.drivable(against);
    const auto row = static_cast<int>(candidates.size());
    const double length_m = roads.pieces[place.piece.index()].length_m;
    if (roads.drivable(along))
      candidates.push_back({along, place.along_m, place.off_m, both ? row + 1 : -1});
    if (roads.drivable(against))
      candidates.push_back({against, length_m - place.along_m, place.off_m, both ? row : -1});
  }
  return candidates;
}

}  // namespace loopwright::trace
