// Method: the length of a whole row is measured along the shape of its piece, that of a part is
// the part's; road driven twice is, piece by piece, what was driven less what of it was covered.
#include <map>

#include "loopwright/wish/parts.hpp"
#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

double total_m(const Drive& drive) {
  double sum = 0;
  for (const Part& part : drive.parts) sum += part.metres();
  return sum;
}

/// What row i drives of its piece, from the piece's first node.
Part on_piece(const Drive& drive, std::size_t i) {
  const Part& part = drive.parts[i];
  const double length_m = drive.roads.piece(drive.stretches[i]).length_m;
  return drive.stretches[i].against() ? Part{length_m - part.to_m, length_m - part.from_m} : part;
}

}  // namespace

namespace {

/// On the rows from first to last.
double twice_on(const Drive& drive, wish::RowSpan rows, std::uint32_t only_with_flags) {
  std::map<PieceId, std::vector<Part>> driven;
  for (std::size_t i = rows.first; i < drive.stretches.size() && i <= rows.last; ++i) {
    const std::uint32_t flags = drive.roads.piece(drive.stretches[i]).flags;
    if ((flags & only_with_flags) == only_with_flags)
      driven[drive.stretches[i].piece()].push_back(on_piece(drive, i));
  }
  double twice = 0;
  for (const auto& [piece, parts] : driven) {
    for (const Part& part : parts) twice += part.metres();
    twice -= covered_m(parts);
  }
  return twice;
}

}  // namespace

double metres_twice(const Drive& drive, std::uint32_t only_with_flags) {
  return twice_on(drive, {}, only_with_flags);
}

double practised_twice(const Drive& drive, std::uint32_t only_with_flags) {
  return twice_on(drive, wish::practice_of(drive.loop), only_with_flags);
}

bool lengths_hold(const Drive& drive, Claims& claims) {
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const bool whole = !drive.loop.stretches[i].partial_m;
    const double own_m = whole ? length_m(drive.roads.shape_of(drive.stretches[i].piece()))
                               : drive.parts[i].metres();
    if (!claims.agree(at_stretch(drive, i),
                      {drive.loop.stretches[i].metres, own_m, length_tolerance_m, "m"}))
      return false;
  }
  return claims.agree(at_loop(drive),
                      {drive.loop.metres, total_m(drive), 2 * length_tolerance_m, "m"}) &&
         claims.agree(
             at_loop(drive) + ", road driven twice",
             {drive.loop.metres_twice, metres_twice(drive, 0), 2 * length_tolerance_m, "m"});
}

}  // namespace loopwright::proof
