// Downhill: 8 % or more down, in the direction that goes down.
//
// 1. By the number of an incline tag: certain.
// 2. Else by the elevation grid: the steepest 300 m of road whose middle lies in the piece
//    (height_profile.cpp says how sure a slope is). A long piece may hold a steep hill and still
//    have a gentle gradient as a whole. incline=up or down shuts the other direction out.
// Source: 8 % is where a lower gear is taught as a rule (common practice; Highway Code rule 160
// says lower gear before a long downhill, without a figure).
#include <algorithm>
#include <cmath>
#include <string>

#include "height_profile.hpp"
#include "incline.hpp"
#include "shape_runs.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

constexpr double downhill_from_percent = 8, measured_every_m = 30;

/// Greatest rise and fall of any usual stretch of road whose middle lies in the piece.
struct Steepest {
  double up_percent = 0, down_percent = 0;
};

Steepest steepest_of(const HeightProfile& profile) {
  Steepest steepest;
  const double steps = std::ceil(profile.length_m() / measured_every_m);
  for (int i = 0; i <= static_cast<int>(steps); ++i) {
    const double middle = profile.length_m() * i / std::max(1.0, steps);
    const auto slope =
        profile.slope_percent(middle - usual_slope_m / 2, middle + usual_slope_m / 2);
    if (!slope) continue;
    steepest.up_percent = std::max(steepest.up_percent, *slope);
    steepest.down_percent = std::max(steepest.down_percent, -*slope);
  }
  return steepest;
}

class Downhill {
 public:
  explicit Downhill(Draft& draft) : draft_(draft), roads_(draft.roads()) {}
  std::vector<RunMember> find() {
    for_each_road(draft_, [&](PieceId id) { judge(id); });
    return std::move(members_);
  }

 private:
  void judge(PieceId id);
  void add(StretchId stretch, Confidence confidence, std::string_view tag);

  Draft& draft_;
  road::Roads roads_;  // its texts are not read
  std::vector<RunMember> members_;
};

void Downhill::add(StretchId stretch, Confidence confidence, std::string_view tag) {
  add_if_drivable(draft_, members_, {stretch, Kind::downhill, confidence, draft_.text(tag)});
}

void Downhill::judge(PieceId id) {
  const road::Piece& piece = draft_.tables.pieces[id.index()];
  if ((piece.flags & road::piece_flag::gradient_certain) != 0) {
    const bool steep = std::abs(piece.gradient_tenths) >= 10 * downhill_from_percent;
    const StretchId down{id, piece.gradient_tenths > 0};
    if (steep) add(down, Confidence::certain, std::string(draft_.text(piece.gradient_source)));
    return;
  }
  if (!draft_.heights) return;
  const auto incline = read_incline(draft_.way_tags(id).get("incline"));
  const Steepest steepest = steepest_of(HeightProfile(draft_, roads_, id));
  for (const bool against : {false, true}) {
    const double down = against ? steepest.up_percent : steepest.down_percent;
    const int sign = against ? 1 : -1;
    if (down < downhill_from_percent || (incline && incline->sign != sign)) continue;
    const std::string percent = std::to_string(std::lround(down));
    add({id, against}, Confidence::inferred, "elevation grid: about " + percent + " % down");
  }
}

}  // namespace

std::vector<RunMember> downhill_members(Draft& draft) {
  return Downhill(draft).find();
}

}  // namespace loopwright::mark
