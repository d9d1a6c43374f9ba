// 1. From each stretch of a half (one may drive it one way only) the drivable stretches that leave its
//    end are walked, 40 m at most: no reservation with a gap is wider. The road's own going on, and a
//    roundabout, are no gap.
// 2. Where the walk meets a half of the same road, headed back, it is a way round.
// 3. A gap is another road: a link, a crossing street. Named like the road it must be short (20 m),
//    else it is the short side of a one-way square.
// 4. Who can't go anywhere else isn't turning round but following the road, as at the end of a one-way
//    system: such ways stay.
//    Nor is it turning round where the road leads on from there to where its half began, one-way and under its
//    own name all along, within 120 m: the end of a street that is drawn as a circle.
// 5. Who would come to the same stretch again within 60 m, and by no roundabout, drives in a circle
//    inside one junction, which is turning round by another name. Where all of it is one-way, as inside
//    a crossing of two divided roads and in a yard, the circle may measure 120 m.
// The figures are ours.
#include "reservation_gaps.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::read {
namespace {

constexpr double gap_within_m = 40;
constexpr double own_name_within_m = 20;
constexpr double turning_back_deg = 120;  // as at the tip of an island (turn_table.cpp)
constexpr double straight_deg = 60;
constexpr double circle_within_m = 60, one_way_circle_within_m = 120;
/// From one stretch: no junction needs a tenth, but ways drawn over each other many times have no end of paths.
constexpr int most_looks = 5000;
constexpr std::size_t most_found = 100;
constexpr int most_pieces_of_a_circle = 100;  // pieces without length would be followed for ever

class Finder {
 public:
  explicit Finder(const road::Roads& roads) : roads_(roads) {}

  std::vector<StretchPath> find() {
    for (std::size_t row = 0; row < roads_.stretch_count(); ++row) {
      const StretchId s{row};
      if (!roads_.drivable(s) || is_ring(s)) continue;
      begin_at(s);
      if (is_half(s)) follow(0);
      begin_at(s);
      if (may_circle(roads_.piece(s).length_m)) circle(roads_.piece(s).length_m);
    }
    return std::move(found_);
  }

 private:
  void begin_at(StretchId s) {
    path_ = {s};
    looks_ = 0, found_before_ = found_.size();
  }
  [[nodiscard]] bool is_enough() {
    return ++looks_ > most_looks || found_.size() - found_before_ >= most_found;
  }
  [[nodiscard]] bool is_half(StretchId s) const {
    return roads_.drivable(s) && !roads_.drivable(s.back());
  }
  [[nodiscard]] bool is_ring_tagged(StretchId s) const {
    return (roads_.piece(s).flags & road::piece_flag::ring) != 0 && is_half(s);
  }
  [[nodiscard]] bool is_ring(StretchId s) const;
  [[nodiscard]] bool is_own_road(StretchId s) const;
  [[nodiscard]] double change_deg(StretchId to) const {
    return std::abs(heading_change_deg(road::bearing_in_deg(roads_, path_.front()),
                                       road::bearing_out_deg(roads_, to)));
  }
  [[nodiscard]] bool is_other_half(StretchId s) const {
    return is_half(s) && is_own_road(s) && roads_.piece(s).way != roads_.piece(path_.front()).way &&
           change_deg(s) > turning_back_deg;
  }
  [[nodiscard]] bool is_gap(double metres) const;
  [[nodiscard]] bool is_forced(StretchId last) const;
  [[nodiscard]] bool leads_out(StretchId s) const;
  [[nodiscard]] bool is_end_circle(StretchId last) const;
  [[nodiscard]] bool may_circle(double metres) const;
  void follow(double metres);
  void circle(double metres);

  const road::Roads& roads_;
  StretchPath path_;
  int looks_ = 0;
  std::size_t found_before_ = 0;
  std::vector<StretchPath> found_;
};

/// Tagged as a roundabout, and closed: an open arc, where the extract was cut, is a road like others.
bool Finder::is_ring(StretchId s) const {
  if (!is_ring_tagged(s)) return false;
  std::vector<StretchId> reached = {s};
  for (std::size_t i = 0; i < reached.size(); ++i) {
    for (const StretchId next : roads_.leaving(roads_.to_node(reached[i]))) {
      if (next == s) return true;
      if (is_ring_tagged(next) && std::ranges::find(reached, next) == reached.end())
        reached.push_back(next);
    }
  }
  return false;
}

/// Of the class of the half we came by, and of its name or number.
bool Finder::is_own_road(StretchId s) const {
  const road::Piece &half = roads_.piece(path_.front()), &other = roads_.piece(s);
  if (half.road_class != other.road_class) return false;
  const bool same_name = half.name == other.name, same_ref = half.ref == other.ref;
  return (same_name && same_ref) || (same_name && !roads_.text(half.name).empty()) ||
         (same_ref && !roads_.text(half.ref).empty());
}

bool Finder::is_gap(double metres) const {
  if (metres <= own_name_within_m) return true;
  return std::none_of(path_.begin() + 1, path_.end(),
                      [this](StretchId s) { return is_own_road(s); });
}

/// Nothing else may be driven to on the way.
bool Finder::is_forced(StretchId last) const {
  for (std::size_t i = 0; i < path_.size(); ++i) {
    const StretchId next = i + 1 < path_.size() ? path_[i + 1] : last;
    for (const StretchId other : roads_.leaving(roads_.to_node(path_[i]))) {
      if (other != next && other != path_[i].back() && roads_.drivable(other)) return false;
    }
  }
  return true;
}

/// Where it ends the road is for both directions: there a circle is left.
bool Finder::leads_out(StretchId s) const {
  return std::ranges::any_of(roads_.leaving(roads_.to_node(s)), [this](StretchId on) {
    return is_own_road(on) && roads_.drivable(on) && !is_half(on);
  });
}

/// The road goes on from `last`, one way and under its own name, to the begin of the half one came by, and to
/// nowhere else but out of the circle: where two divided roads cross it does, and there it is turning round.
bool Finder::is_end_circle(StretchId last) const {
  const NodeId begin = roads_.from_node(path_.front());
  double metres = roads_.piece(path_.front()).length_m;
  StretchId here = last;
  for (int pieces = 0; here.known() && pieces < most_pieces_of_a_circle; ++pieces) {
    metres += roads_.piece(here).length_m;
    if (metres > one_way_circle_within_m) return false;
    const NodeId node = roads_.to_node(here);
    if (node == begin) return true;
    StretchId on;
    for (const StretchId next : roads_.leaving(node)) {
      if (!is_half(next) || !is_own_road(next) || next == last) continue;
      if (leads_out(next)) {
        if (roads_.to_node(next) == begin) return true;
        continue;
      }
      if (on.known()) return false;
      on = next;
    }
    here = on;
  }
  return false;
}

void Finder::follow(double metres) {
  for (const StretchId next : roads_.leaving(roads_.to_node(path_.back()))) {
    if (next == path_.back().back() || !roads_.drivable(next) || is_ring(next)) continue;
    if (path_.size() > 1 && is_other_half(next)) {
      if (!is_gap(metres) || is_forced(next) || is_end_circle(next)) continue;
      found_.push_back(path_);
      found_.back().push_back(next);
      continue;
    }
    if (is_enough()) return;
    const double beyond = metres + roads_.piece(next).length_m;
    const bool goes_on = is_half(next) && is_own_road(next) && change_deg(next) < straight_deg;
    if (goes_on || beyond > gap_within_m || std::ranges::find(path_, next) != path_.end()) continue;
    path_.push_back(next);
    follow(beyond);
    path_.pop_back();
  }
}

/// The path, so long as told, may be part of a circle: its begin can still be come to.
bool Finder::may_circle(double metres) const {
  const bool one_way = std::ranges::all_of(path_, [this](StretchId s) { return is_half(s); });
  const Point begin = roads_.nodes[roads_.from_node(path_.front()).index()].at;
  const Point end = roads_.nodes[roads_.to_node(path_.back()).index()].at;
  return metres + distance_m(end, begin) <= (one_way ? one_way_circle_within_m : circle_within_m);
}

void Finder::circle(double metres) {
  for (const StretchId next : roads_.leaving(roads_.to_node(path_.back()))) {
    if (next == path_.back().back() || !roads_.drivable(next) || is_ring(next)) continue;
    if (next == path_.front()) {
      found_.push_back(path_);
      found_.back().push_back(next);
    }
    if (is_enough()) return;
    if (std::ranges::find(path_, next) != path_.end()) continue;
    const double beyond = metres + roads_.piece(next).length_m;
    path_.push_back(next);
    if (may_circle(beyond)) circle(beyond);
    path_.pop_back();
  }
}

}  // namespace

std::vector<StretchPath> ways_round_a_gap(const road::Roads& roads) {
  return Finder(roads).find();
}

}  // namespace loopwright::read
