// Open country has less than 6 km of road to the square kilometre, drives and aisles left out, in the
// 5 by 5 cells round the middle of the piece (road_density.hpp). Lanes among fields have 1 to 5, docks
// and industrial estates 6 to 16, town centres 20 to 28 (seen in Newport; the limit is ours).
#include "open_country.hpp"

namespace loopwright::mark {
namespace {

constexpr int reach = 2;
constexpr double most_m_per_km2 = 6000;

}  // namespace

OpenCountry::OpenCountry(const road::Roads& roads)
    : all_roads_(roads, reach, [](PieceId) { return true; }) {}

bool OpenCountry::holds(PieceId piece) const {
  return all_roads_.m_per_km2(piece) < most_m_per_km2;
}

}  // namespace loopwright::mark
