// Forms of junctions from shape and class. A junction is told for certain where nobody could read it
// otherwise: three roads for both ways that nobody closes, two of them one straight road, the third of
// no higher class meeting it squarely, and no other control. HC 170 to 183; src/rules/kinds.txt.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "county/truth_parts.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;
constexpr double degree = std::numbers::pi / 180;
constexpr double straight_deg = 30, square_deg = 60;
constexpr double acute_deg = 50;
constexpr double stagger_m = 40;
constexpr double alone_m = 45;  // no other junction so near: it is no part of a larger one

double between(double a, double b) {
  return std::abs(std::remainder(a - b, 2 * std::numbers::pi));
}

class Junctions {
 public:
  Junctions(const Net& net, Rows& rows) : net_(net), rows_(rows) {
    for (const Spot p : net.points())
      if (arms(p).size() >= 3) places_.push_back(p);
    for (const Spot p : net.tagged("highway")) {
      if (says(net.tags(p), "highway", {"traffic_signals"})) lights_.push_back(p);
      if (says(net.tags(p), "highway", {"mini_roundabout"})) minis_.push_back(p);
    }
  }
  void tell() {
    for (const Spot p : places_) tell_at(p);
  }

 private:
  /// Without driveways and aisles.
  [[nodiscard]] std::vector<Arm> arms(Spot p) const {
    std::vector<Arm> found = net_.arms(p);
    std::erase_if(found, [&](const Arm& arm) { return net_.road(arm).minor; });
    return found;
  }
  void tell_at(Spot p);
  void tell_may(Spot p, const std::vector<Arm>& all);
  /// `other`: a junction near by that doesn't count.
  [[nodiscard]] bool plain(Spot p, const std::vector<Arm>& all, Spot other) const;
  [[nodiscard]] bool straight(const Arm& a, const Arm& b) const;
  void tell_acute(Spot p, const std::vector<Arm>& all);
  void tell_staggered(Spot p);
  [[nodiscard]] std::optional<Arm> stem_of(Spot p, Spot other) const;
  [[nodiscard]] bool tee(const std::vector<Arm>& all, std::size_t stem) const;
  void tell_tee(Spot p, const Arm& stem);
  [[nodiscard]] bool cycles_pass(const Arm& stem, const Arm& main) const;
  [[nodiscard]] bool tell_cross(Spot p, const std::vector<Arm>& all);
  [[nodiscard]] bool near(const std::vector<Spot>& places, Spot p, double metres) const {
    return std::ranges::any_of(places, [&](Spot q) { return q != p && apart(p, q) < metres; });
  }

  const Net& net_;
  Rows& rows_;
  std::vector<Spot> places_, lights_, minis_;
};

/// What any rule may infer here.
void Junctions::tell_may(Spot p, const std::vector<Arm>& all) {
  std::uint64_t kinds =
      bit(Kind::emerge) | bit(Kind::turn_off) | bit(Kind::limit_change) | bit(Kind::stop_line);
  bool cycles = false;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Road& road = net_.road(all[i]);
    if (is_narrow(road) != Answer::no) kinds |= bit(Kind::narrow_mouth);
    for (const auto& [key, text] : road.line->tags)
      cycles = cycles || (key.starts_with("cycleway") && text != "no");
    for (std::size_t j = 0; j < i; ++j)
      if (between(net_.heading(all[i]), net_.heading(all[j])) < 75 * degree)
        kinds |= bit(Kind::acute_junction);
  }
  if (cycles) kinds |= bit(Kind::cycle_lane_mouth);
  if (all.size() >= 4) kinds |= bit(Kind::crossroads);
  if (near(places_, p, stagger_m + 5)) kinds |= bit(Kind::staggered_junction);
  rows_.may_at(kinds, p, 25);
}

/// Nobody is shut out, nothing but the roads' own order rules here.
bool Junctions::plain(Spot p, const std::vector<Arm>& all, Spot other) const {
  if (net_.arms(p).size() != all.size() || net_.banned_at(p) ||
      minis_.end() != std::ranges::find(minis_, p))
    return false;
  if (near(lights_, p, alone_m) || near(minis_, p, alone_m) || std::ranges::count(lights_, p) > 0)
    return false;
  if (!passable(net_.tags(p))) return false;
  const bool crowded = std::ranges::any_of(
      places_, [&](Spot q) { return q != p && q != other && apart(p, q) < alone_m; });
  if (crowded) return false;
  return std::ranges::all_of(all, [&](const Arm& arm) {
    const Road& road = net_.road(arm);
    const bool timed = std::ranges::any_of(road.line->tags, [](const auto& tag) {
      return tag.first.ends_with(":conditional") && tag.first.starts_with("motor_vehicle");
    });
    return road.learner && road.two_way() && !road.service() && !road.ring && !road.link &&
           !timed && road.length > 40;
  });
}

bool Junctions::tee(const std::vector<Arm>& all, std::size_t stem) const {
  const Arm &a = all[(stem + 1) % 3], &b = all[(stem + 2) % 3];
  const double s = net_.heading(all[stem]), ha = net_.heading(a), hb = net_.heading(b);
  const bool straight = between(ha, hb) > (180 - straight_deg) * degree;
  const bool square = between(s, ha) > square_deg * degree && between(s, hb) > square_deg * degree;
  const bool one_road = a.road == b.road || (!net_.road(a).tag("name").empty() &&
                                             net_.road(a).tag("name") == net_.road(b).tag("name"));
  const int bar = std::max(rank_of(net_.road(a)), rank_of(net_.road(b)));
  const bool other = all[stem].road != a.road && all[stem].road != b.road;
  return straight && square && one_road && other && rank_of(net_.road(all[stem])) >= bar;
}

/// The main road has a lane or track for cycles on the side of the side road, before it and after.
bool Junctions::cycles_pass(const Arm& stem, const Arm& main) const {
  const Road& road = net_.road(main);
  const double off = net_.heading(stem) - net_.heading(main);
  const bool left_of_points = (std::sin(off) > 0) == (main.step > 0);
  const char* side = left_of_points ? "cycleway:left" : "cycleway:right";
  const auto runs = [&](const char* key) { return says(road.line->tags, key, {"lane", "track"}); };
  return runs(side) || runs("cycleway:both") || runs("cycleway");
}

void Junctions::tell_tee(Spot p, const Arm& stem) {
  const std::vector<Arm> all = arms(p);
  const bool cycles = std::ranges::all_of(
      all, [&](const Arm& arm) { return arm.road == stem.road || cycles_pass(stem, arm); });
  if (cycles) rows_.must_at(Kind::cycle_lane_mouth, p, 25);
  rows_.must_at(Kind::emerge, p, 25, "moves=left,right");
  const Answer narrow = is_narrow(net_.road(stem));
  if (narrow == Answer::maybe) return;
  rows_.must_at(narrow == Answer::yes ? Kind::narrow_mouth : Kind::turn_off, p, 25,
                "moves=left,right");
}

bool Junctions::tell_cross(Spot p, const std::vector<Arm>& all) {
  std::vector<double> headings;
  for (const Arm& arm : all) headings.push_back(net_.heading(arm));
  std::ranges::sort(headings);
  for (std::size_t i = 0; i < 4; ++i) {
    const double gap = between(headings[(i + 1) % 4], headings[i]);
    if (gap < square_deg * degree || gap > (180 - square_deg) * degree) return false;
  }
  rows_.must_at(Kind::crossroads, p, 25);
  return true;
}

bool Junctions::straight(const Arm& a, const Arm& b) const {
  return between(net_.heading(a), net_.heading(b)) > (180 - straight_deg) * degree;
}

/// A side road that leaves a straight road at so sharp an angle that turning in is half a turn round;
/// at its mouth and further out, for a road that swings round is none.
void Junctions::tell_acute(Spot p, const std::vector<Arm>& all) {
  const auto leads = [&](const Arm& arm, double metres) {
    return angle_of(p, net_.ahead(arm, metres));
  };
  const auto sharp = [&](const Arm& a, const Arm& b) {
    return std::ranges::all_of(std::array{15.0, 30.0, 60.0}, [&](double metres) {
      const double angle = between(leads(a, metres), leads(b, metres));
      return angle < acute_deg * degree && angle > 10 * degree;
    });
  };
  for (std::size_t stem = 0; stem < 3; ++stem) {
    const Arm &a = all[(stem + 1) % 3], &b = all[(stem + 2) % 3];
    if (!straight(a, b) || (!sharp(all[stem], a) && !sharp(all[stem], b))) continue;
    rows_.must_at(Kind::acute_junction, p, 25);
    return;
  }
}

/// The side road of a plain T, when `other` near by is left out of sight.
std::optional<Arm> Junctions::stem_of(Spot p, Spot other) const {
  const std::vector<Arm> all = arms(p);
  if (all.size() != 3 || !plain(p, all, other)) return {};
  for (std::size_t stem = 0; stem < 3; ++stem)
    if (tee(all, stem)) return all[stem];
  return {};
}

/// Two side roads on opposite sides, so near that one drives across from one into the other.
void Junctions::tell_staggered(Spot p) {
  for (const Spot q : places_) {
    const double metres = apart(p, q);
    if (!(p < q) || metres < 12 || metres > stagger_m - 4) continue;
    const std::optional<Arm> one = stem_of(p, q), two = stem_of(q, p);
    if (!one || !two) continue;
    const auto leads = [&](Spot from, Spot to, const Arm& stem) {
      return std::ranges::any_of(net_.arms(from), [&](const Arm& arm) {
        return arm.road != stem.road && net_.ahead(arm, metres) == to;
      });
    };
    const bool joined = leads(p, q, *one) && leads(q, p, *two);
    const double on = angle_of(p, q);
    const bool left_one = std::sin(net_.heading(*one) - on) > 0;
    const bool left_two = std::sin(net_.heading(*two) - on) > 0;
    if (joined && left_one != left_two)
      rows_.must_at(Kind::staggered_junction, along(std::vector{p, q}, metres / 2), 35,
                    "moves=ahead");
  }
}

void Junctions::tell_at(Spot p) {
  const std::vector<Arm> all = arms(p);
  tell_may(p, all);
  tell_staggered(p);
  if (!plain(p, all, p)) return;
  if (all.size() == 4) (void)tell_cross(p, all);
  if (all.size() != 3) return;
  for (std::size_t stem = 0; stem < 3; ++stem)
    if (tee(all, stem)) return tell_tee(p, all[stem]);
  tell_acute(p, all);
}

}  // namespace

void tell_junctions(const Net& net, Rows& rows) {
  Junctions(net, rows).tell();
  // A limit changes where mapped numbers differ on either side of a point of one road.
  for (const Spot p : net.points()) {
    const std::vector<Arm>& arms = net.arms(p);
    if (arms.size() != 2 || arms[0].road == arms[1].road) continue;
    const Road &a = net.road(arms[0]), &b = net.road(arms[1]);
    const int in = limit_mph(a, arms[0].step < 0), out = limit_mph(b, arms[1].step > 0);
    const bool both = a.learner && b.learner && !a.ring && !b.ring && !a.service() && !b.service();
    const bool timed =
        !a.tag("maxspeed:conditional").empty() || !b.tag("maxspeed:conditional").empty();
    if (both && in > 0 && out > 0 && in != out && !timed && a.two_way() && b.two_way())
      rows.must_at(Kind::limit_change, p, 25);
    else
      rows.may_at(bit(Kind::limit_change), p, 25);
  }
}

}  // namespace loopwright::county
