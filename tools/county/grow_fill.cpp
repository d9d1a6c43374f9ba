// 1. Streets start from the roads that pass by; each street that is laid offers starts on both its
//    sides; a start is taken up in a partly chance order until none is left.
// 2. What then is still empty gets cul-de-sacs from the nearest street.
// Why: a street stops where it meets another, so most junctions have three arms, and rows of streets
// stand staggered, as they do where a town grew field by field.
#include "county/grow_fill.hpp"

#include "county/grow_places.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <numbers>
#include <utility>

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double far_off_m = 450;  // a way in is no longer than this
constexpr double deep_m = 160;     // how far it leads in
constexpr double border_m = 45;    // a road this near to the outline is one of those round it

struct Offer {
  Start start;
  bool from_border = false;
};

class Filling {
 public:
  Filling(Ground& ground, const Patch& patch, Dice& dice)
      : ground_(ground), patch_(patch), dice_(dice) {
    const double base = longest_side(patch.outline) + 0.5 * (dice.share() - 0.5);
    grain_ = grain_of(base, patch.figures.sway, dice.next());
  }

  void fill() {
    offer_borders();
    if (offers_.empty()) reach_out();
    take_offers();
    for (int school = 0; school < patch_.schools; ++school)
      put_school(ground_, patch_.outline, dice_);
    fill_holes(0.85 * patch_.figures.along_gap_m, false);
    fill_holes(patch_.figures.hole_m, true);
  }

 private:
  bool chance(double share) { return dice_.share() < share; }

  void offer_borders() {
    const std::size_t lines = ground_.county().lines.size();
    for (std::size_t n = 0; n < lines; ++n)
      if (joinable(ground_.line(n), patch_.rank, patch_.fast)) offer_along(n, true);
  }

  bool is_inside(Spot place) const { return inside(patch_.outline, place); }

  /// Starts on both sides of a line, as far apart as the streets that would leave it are meant to be.
  void offer_along(std::size_t number, bool border) {
    const std::vector<Spot> points = ground_.line(number).points;
    const double size = length_m(points);
    if (border && !passes_by(points)) return;
    for (const double side : {1.0, -1.0}) {
      double at_m = 15 + dice_.share() * 60;
      while (at_m < size - 15) {
        const Spot at = along(points, at_m);
        const Foot foot = nearest(points, at);
        const double run = angle_of(points[foot.segment], points[foot.segment + 1]);
        const double heading = run + side * pi / 2 + 0.24 * (dice_.share() - 0.5);
        const double gap = border ? entry_gap(number) : gap_between(heading, at);
        const Spot probe =
            spot(at.x() + border_m * std::cos(heading), at.y() + border_m * std::sin(heading));
        if (is_inside(probe)) offers_.push_back({{number, at, heading}, border});
        at_m += gap * (0.75 + 0.55 * dice_.share());
      }
    }
  }

  bool passes_by(const std::vector<Spot>& points) const {
    return std::any_of(points.begin(), points.end(),
                       [&](Spot p) {
                         return is_inside(p) || nearest(closed_outline(), p).off_m < border_m;
                       }) ||
           std::any_of(patch_.outline.begin(), patch_.outline.end(),
                       [&](Spot c) { return nearest(points, c).off_m < border_m; });
  }

  std::vector<Spot> closed_outline() const {
    std::vector<Spot> ring = patch_.outline;
    ring.push_back(ring.front());
    return ring;
  }

  double entry_gap(std::size_t line) const {
    return patch_.figures.entry_m * (rank(ground_.line(line)) >= 4 ? 1.5 : 1.0);
  }

  /// Between streets that run at a heading.
  double gap_between(double heading, Spot at) const {
    const double off = std::abs(std::remainder(grain_(at) - heading, pi));
    return off < pi / 4 ? patch_.figures.along_gap_m : patch_.figures.across_gap_m;
  }

  Manner manner(bool closed, bool loose) {
    const Figures& f = patch_.figures;
    Manner m{.within = patch_.outline, .grain = grain_};
    m.along_gap_m = f.along_gap_m;
    m.across_gap_m = closed ? std::min(f.across_gap_m, f.along_gap_m) : f.across_gap_m;
    m.follow = closed ? 0 : f.follow;
    m.wobble = f.wobble;
    m.bow = f.bow;
    m.longest_m =
        closed ? f.closed_m * (0.5 + dice_.share()) : f.longest_m * (0.6 + 0.4 * dice_.share());
    m.shortest_m = closed ? 38 : 60;
    m.join = closed ? 0.1 : 0.95;
    m.cross = closed ? 0 : f.cross;
    m.may_close = closed || loose;
    m.close_m = f.close_m;
    m.rank = patch_.rank;
    m.fast = patch_.fast;
    return m;
  }

  bool grow(const Start& start, bool closed, bool loose) {
    const Manner m = manner(closed, loose);
    const Spot at = ground_.would_share(start.line, start.at);
    const int arms = ground_.arms(at);
    if (arms == 1 || arms > 2 || ground_.junction_off(at, m.keep_m) < m.keep_m) return false;
    const auto way = trace(ground_, m, start, dice_);
    if (!way) return false;
    offer_along(lay_street(*way), false);
    return true;
  }

  std::size_t lay_street(const Trace& way) {
    Line line{.kind = LineKind::road};
    line.quarter = patch_.name;
    line.tags = patch_.tags;
    if (patch_.street_tags)
      for (auto& [key, value] : patch_.street_tags(way.closed, length_m(way.points), dice_))
        line.tags.emplace(key, value);
    line.tags.emplace("highway", "residential");
    return lay(ground_, way, std::move(line));
  }

  void take_offers() {
    while (!offers_.empty()) {
      const std::size_t pick = dice_.below(std::min<std::size_t>(offers_.size(), 6));
      const Offer offer = offers_[pick];
      offers_.erase(offers_.begin() + static_cast<std::ptrdiff_t>(pick));
      const bool closed = !offer.from_border && chance(patch_.figures.closed);
      const bool loose = chance(patch_.figures.loose);
      if (!grow(offer.start, closed, loose) && !closed && chance(patch_.figures.closed))
        grow(offer.start, true, true);
    }
  }

  /// Two ways in for ground that no road passes, from the nearest roads that can be reached straight.
  void reach_out() {
    std::vector<Spot> entries;
    for (const Spot place : places_every(80)) {
      const auto near = ground_.nearest(
          place, far_off_m, [&](const Line& line) { return joinable(line, patch_.rank, true); });
      if (!near || entries.size() == 2) continue;
      const Spot from = ground_.would_share(near->line, near->at);
      if (!entries.empty() && apart(entries.front(), from) < 300) continue;
      if (!square_on(angle_of(from, place), near->angle) || ground_.arms(from) == 1 ||
          ground_.arms(from) > 2 || ground_.junction_off(from, 60) < 60 ||
          ground_.first_hit(from, place) || !ground_.clear(place, 40))
        continue;
      const Spot deep = towards(from, place, near->away_m + deep_m);
      const bool free =
          is_inside(deep) && !ground_.first_hit(from, deep) && ground_.clear(deep, 40);
      if (!free) continue;
      entries.push_back(from);
      offer_along(lay_street({.points = {from, deep}, .joints = {{near->line, from}}}), false);
    }
  }

  /// Streets into places that are farther than so many metres from every street.
  void fill_holes(double far_m, bool closed) {
    for (const Spot place : places_every(0.5 * patch_.figures.along_gap_m)) {
      const auto near = ground_.nearest(
          place, 4 * far_m, [&](const Line& l) { return joinable(l, patch_.rank, patch_.fast); });
      if (!near || near->away_m < far_m) continue;
      const double heading = angle_of(near->at, place);
      if (!square_on(heading, near->angle)) continue;
      grow({near->line, near->at, heading}, closed, true);
      if (closed) offers_.clear();
      take_offers();
    }
  }

  /// Places over the whole outline, in chance order.
  std::vector<Spot> places_every(double gap) {
    Spot low = patch_.outline.front();
    Spot high = low;
    for (const Spot p : patch_.outline) {
      low = {std::min(low.x_cm, p.x_cm), std::min(low.y_cm, p.y_cm)};
      high = {std::max(high.x_cm, p.x_cm), std::max(high.y_cm, p.y_cm)};
    }
    std::vector<Spot> places;
    for (double x = low.x(); x < high.x(); x += gap)
      for (double y = low.y(); y < high.y(); y += gap) {
        const double east = x + gap * dice_.share();
        const Spot p = spot(east, y + gap * dice_.share());
        if (is_inside(p)) places.push_back(p);
      }
    for (std::size_t i = places.size(); i > 1; --i)
      std::swap(places[i - 1], places[dice_.below(i)]);
    return places;
  }

  Ground& ground_;
  const Patch& patch_;
  Dice& dice_;
  std::function<double(Spot)> grain_;
  std::deque<Offer> offers_;
};

}  // namespace

void fill(Ground& ground, const Patch& patch, Dice& dice) {
  Filling(ground, patch, dice).fill();
}

}  // namespace loopwright::county
