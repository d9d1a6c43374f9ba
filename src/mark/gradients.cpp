// How steep each piece of road is.
//
// 1. incline with a number, in per cent or degrees: certain. What can't be read is reported.
// 2. Else by the elevation grid: the mean rise of the piece, told over at least 300 m of road
//    (200 m where it ends; height_profile.cpp says how sure that is). A piece on a bridge or in a
//    tunnel, and a service road, gets none.
// 3. incline=up or down gives only the sign: it stays without a number where the grid is silent,
//    or says the contrary (which is reported).
// Sources: OSM wiki, page Key:incline; the 300 m are ours.
#include <algorithm>
#include <cmath>

#include "height_profile.hpp"
#include "incline.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr double surely_sloping_percent = 2;  // twice the error of a grid's slope

class Gradients {
 public:
  explicit Gradients(Draft& draft) : draft_(draft), roads_(draft.roads()) {}
  void find();

 private:
  void judge(PieceId id);
  void set(PieceId id, double percent, std::string_view source);
  [[nodiscard]] std::optional<double> by_grid(PieceId id) const;
  void report_odd(PieceId id, std::string_view what);
  [[nodiscard]] road::Piece& row(PieceId id) { return draft_.tables.pieces[id.index()]; }

  Draft& draft_;
  road::Roads roads_;
  std::int64_t reported_way_ = 0;
};

void Gradients::report_odd(PieceId id, std::string_view what) {
  if (reported_way_ == row(id).way) return;
  reported_way_ = row(id).way;
  draft_.report.odd({row(id).way, ObjectType::way, {}}, what,
                    tag_text(draft_.way_tags(id), "incline"));
}

void Gradients::set(PieceId id, double percent, std::string_view source) {
  row(id).gradient_tenths = static_cast<std::int16_t>(std::lround(percent * 10));
  row(id).gradient_source = draft_.text(source);
}

std::optional<double> Gradients::by_grid(PieceId id) const {
  const road::Piece& piece = roads_.pieces[id.index()];
  if (!draft_.heights || piece.road_class == road::RoadClass::service) return std::nullopt;
  const HeightProfile profile(draft_, roads_, id);
  const double beyond = std::max(0.0, (usual_slope_m - piece.length_m) / 2);
  return profile.slope_percent(-beyond, piece.length_m + beyond);
}

void Gradients::judge(PieceId id) {
  row(id).gradient_source = draft_.text({});
  const Tags& tags = draft_.way_tags(id);
  const std::string text = tag_text(tags, "incline");
  const auto incline = read_incline(tags.get("incline"));
  if (!text.empty() && !incline) report_odd(id, "incline can't be read");
  if (incline && incline->percent) {
    set(id, *incline->percent, text);
    row(id).flags |= road::piece_flag::gradient_certain;
    return;
  }
  const auto measured = by_grid(id);
  const bool contrary = incline && measured && *measured * incline->sign <= -surely_sloping_percent;
  if (contrary) report_odd(id, "incline and the elevation grid say the contrary");
  const bool right_way = !incline || (measured && *measured * incline->sign > 0);
  if (measured && right_way) {
    set(id, *measured, incline ? text + ", elevation grid" : "elevation grid");
  } else if (incline) {
    set(id, 0, text);
  }
}

void Gradients::find() {
  for (std::size_t p = 0; p < draft_.tables.pieces.size(); ++p) judge(PieceId{p});
  const auto count = [&](std::string_view what, auto&& wanted) {
    draft_.report.count(what, std::ranges::count_if(draft_.tables.pieces, wanted));
  };
  count("pieces: gradient by tag",
        [](const road::Piece& p) { return (p.flags & road::piece_flag::gradient_certain) != 0; });
  const TextId grid = draft_.text("elevation grid");
  count("pieces: gradient by the elevation grid",
        [grid](const road::Piece& p) { return p.gradient_source == grid; });
}

}  // namespace

void mark_gradients(Draft& draft) {
  Gradients(draft).find();
}

}  // namespace loopwright::mark
