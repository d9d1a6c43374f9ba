// 1. The town's middle and how far it reaches; from each exit an arm of four points leads to it.
// 2. The railway passes the town on one side, the river on another.
// 3. A loop joins the arms' second points by way of a village in each corner.
// 4. Inside, four streets lead from the arms to the market; between them quarters are grown.
#include "county/other_plan.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <utility>
#include <vector>

#include "county/draft.hpp"
#include "county/other_roads.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::county {
namespace {

constexpr std::size_t arms = 4;  // west, south, east, north, as Side has it

constexpr const char* sets =
    "set town maxspeed=\"30 mph\" maxspeed:type=GB:nsl_restricted lit=yes\n"
    "set zone maxspeed=\"20 mph\" maxspeed:type=GB:zone20 lit=yes\n"
    "set forty maxspeed=\"40 mph\" maxspeed:type=sign lit=yes\n"
    "set national maxspeed=\"60 mph\" maxspeed:type=GB:nsl_single\n"
    "set lane maxspeed=\"60 mph\" maxspeed:type=GB:nsl_single lit=no\n"
    "set village maxspeed=\"30 mph\" maxspeed:type=sign lit=yes\n";

// Invented: none is a place we know of.
constexpr std::array<const char*, 20> roots{"Quell",   "Pellin", "Tarrow",  "Withen", "Brindle",
                                            "Staven",  "Skarl",  "Fennick", "Morvel", "Dunnel",
                                            "Cressil", "Wexel",  "Yarrick", "Ombrel", "Thessel",
                                            "Garrol",  "Lutten", "Ivvel",   "Nethel", "Harrik"};
constexpr std::array<const char*, 7> tails{"mere",  "holt",  "wyke", "sted",
                                           "combe", "garth", "hythe"};
constexpr std::array<const char*, 4> streets{"West Street", "South Street", "East Street",
                                             "North Street"};
constexpr std::array<const char*, 3> styles{"avenues", "crescents", "terraces"};

class OtherPlan {
 public:
  OtherPlan(const Plot& plot, std::uint64_t seed) : plot_(plot), dice_(seed) {}
  std::string text();

 private:
  double between(double least, double most) { return least + (most - least) * dice_.share(); }
  Spot about(Spot place, double metres) {
    return spot(place.x() + between(-metres, metres), place.y() + between(-metres, metres));
  }
  std::string place_name();
  void line(const std::string& text) { out_ += text + '\n'; }
  void road(OtherRoad road) { out_ += plan_lines(road, barriers_, dice_); }

  void lay_out();
  void barriers();
  void rings();
  void arm(std::size_t side);
  void street(std::size_t side);
  void ring_road(std::size_t side);
  void loop(std::size_t side);
  void sector(std::size_t side);
  void country(std::size_t side);
  void market();

  const Plot& plot_;
  Dice dice_;
  std::string out_;
  std::vector<std::string> names_;
  std::vector<Barrier> barriers_;
  Spot middle_;
  double reach_m_ = 0;
  bool ringed_ = false;
  std::array<std::array<Spot, 3>, arms> ways_{};  // of each arm, from its exit to the town
  std::array<Spot, arms> gates_{};                // where the arms enter the town
};

std::string OtherPlan::place_name() {
  std::string name;
  do {
    name = std::string(roots[dice_.below(roots.size())]) + tails[dice_.below(tails.size())];
  } while (std::ranges::find(names_, name) != names_.end());
  return names_.emplace_back(std::move(name));
}

void OtherPlan::lay_out() {
  middle_ = about(spot(0, 0), 700);
  reach_m_ = between(1800, 2250);
  ringed_ = dice_.thousandths() < 500;
  for (std::size_t side = 0; side < arms; ++side) {
    const Spot exit = plot_.exits[side];
    const double far = apart(exit, middle_);
    ways_[side] = {towards(exit, middle_, 900), about(towards(exit, middle_, far * 0.27), 250),
                   about(towards(exit, middle_, far * 0.5), 300)};
    gates_[side] = towards(middle_, ways_[side][2], reach_m_);
  }
}

void OtherPlan::barriers() {
  const double x = plot_.half_x_m;
  const double y = plot_.half_y_m;
  const double rail = (dice_.below(2) == 0 ? 1 : -1) * between(2700, 3200);
  const double river = (dice_.below(2) == 0 ? 1 : -1) * between(2600, 3100);
  const auto wind = [&](double by) { return between(-by, by); };
  const std::vector<Spot> track{spot(-x, rail + wind(500)), spot(-x / 2, rail + wind(200)),
                                spot(0, rail + wind(150)), spot(x / 2, rail + wind(200)),
                                spot(x, rail + wind(500))};
  std::vector<Spot> water;
  for (int i = -4; i <= 4; ++i) water.push_back(spot(river + wind(260), y * i / 4));
  line("rail 1 " + plan_points(track));
  line("water \"River " + std::string(roots[dice_.below(roots.size())]) + "\" 14 " +
       plan_points(water));
  barriers_ = {{bend(track), true}, {bend(water), false}};
}

void OtherPlan::rings() {
  if (!ringed_) return;
  for (std::size_t side = 0; side < arms; ++side)
    line("ring " + std::to_string(side) + ' ' + written(gates_[side]) + ' ' +
         std::to_string(24 + dice_.below(20)) +
         " highway=primary ref=A7991 lanes=" + std::to_string(1 + dice_.below(2)) + " forty");
}

/// From an exit to the town; its last bit to a ring, or on as a street.
void OtherPlan::arm(std::size_t side) {
  const auto& way = ways_[side];
  const bool main = side % 2 == 0;
  OtherRoad arm{.name = '"' + place_name() + " Road\"",
                .highway = main ? "primary" : "secondary",
                .tags = main ? "ref=A7992 national" : "ref=B9993 national",
                .points = {plot_.exits[side], way[0], way[1], way[2], gates_[side]}};
  arm.ends[0] = "edge";
  if (ringed_) arm.rings[1] = "@" + std::to_string(side) + "^";
  road(std::move(arm));
  const std::string where = written(way[1]);
  if (side < 2)
    line("town \"" + place_name() + "\" " + where + ' ' + std::to_string(950 + dice_.below(250)) +
         " town");
  else
    line("village \"" + place_name() + "\" " + where + ' ' +
         std::to_string(500 + dice_.below(150)) + " village");
}

/// From where an arm enters the town to the market.
void OtherPlan::street(std::size_t side) {
  const bool bus = side == 0;
  OtherRoad street{
      .name = '"' + std::string(streets[side]) + '"',
      .highway = side % 2 == 0 ? "primary" : "secondary",
      .tags = side % 2 == 0 ? "ref=A7992 town" : "ref=B9993 town",
      .points = {gates_[side], about(towards(gates_[side], middle_, reach_m_ / 2), 90), middle_}};
  if (ringed_) street.rings[0] = "@" + std::to_string(side) + "^";
  if (bus)
    street.tags +=
        " lanes=3 lanes:forward=2 lanes:backward=1 bus:lanes:forward=designated|yes "
        "lanes:bus:forward:conditional=\"1 @ (Mo-Sa 07:00-10:00,16:00-19:00)\"";
  road(std::move(street));
}

void OtherPlan::ring_road(std::size_t side) {
  if (!ringed_) return;
  const std::size_t next = (side + 1) % arms;
  const double a = angle_of(middle_, gates_[side]);
  const double turn = std::remainder(angle_of(middle_, gates_[next]) - a, 2 * std::numbers::pi);
  std::vector<Spot> points;
  for (const double share : {0.3, 0.5, 0.7})
    points.push_back(on_circle(middle_, reach_m_ * between(0.95, 1.05), a + turn * share));
  const std::string from = "@" + std::to_string(side);
  const std::string to = "@" + std::to_string(next);
  if (side == 3)
    line("dual \"Ring Way\" primary " + from + ' ' + plan_points(points) + ' ' + to +
         " ref=A7991 dual_carriageway=yes lanes=2 maxspeed=\"50 mph\" maxspeed:type=sign");
  else
    line("road \"Ring Way\" primary " + from + "^ " + plan_points(points) + ' ' + to +
         "^ ref=A7991 forty");
}

/// A lesser road from one arm to the next, by way of a village.
void OtherPlan::loop(std::size_t side) {
  const std::size_t next = (side + 1) % arms;
  const Spot start = ways_[side][2];
  const Spot end = ways_[next][2];
  const Spot corner = spot(start.x() + end.x() - middle_.x(), start.y() + end.y() - middle_.y());
  const Spot village = about(corner, 350);
  OtherRoad loop{
      .name = '"' + place_name() + " Lane\"",
      .highway = "unclassified",
      .tags = "national",
      .points = {start, about(towards(start, village, apart(start, village) / 2), 200), village,
                 about(towards(end, village, apart(end, village) / 2), 200), end}};
  const bool mini = dice_.thousandths() < 300;
  loop.ends = {mini ? "" : "give_way", "give_way"};
  if (mini) line("junction " + written(start) + " highway=mini_roundabout direction=clockwise");
  road(std::move(loop));
  line("village \"" + place_name() + "\" " + written(village) + ' ' +
       std::to_string(500 + dice_.below(170)) + " village");
}

/// A quarter of the town between two of its streets, and for some another outside.
void OtherPlan::sector(std::size_t side) {
  const std::size_t next = (side + 1) % arms;
  const double a = angle_of(middle_, gates_[side]);
  const double turn = std::remainder(angle_of(middle_, gates_[next]) - a, 2 * std::numbers::pi);
  const auto at = [&](double share, double off) {
    return on_circle(middle_, reach_m_ * off, a + turn * share);
  };
  const std::string style = styles[dice_.below(styles.size())];
  line("infill \"" + place_name() + "\" " + style + ' ' +
       plan_points({middle_, gates_[side], at(0.3, 1), at(0.7, 1), gates_[next]}) +
       (dice_.below(3) == 0 ? " zone" : " town"));
  line("quarter \"" + place_name() + "\" " + (dice_.below(4) == 0 ? "works" : "crescents") + ' ' +
       plan_points({at(0.1, 1.05), at(0.5, 1.08), at(0.9, 1.05), at(0.87, 1.5), at(0.13, 1.5)}) +
       " town");
}

void OtherPlan::country(std::size_t side) {
  const std::size_t next = (side + 1) % arms;
  const Spot outer = spot(std::abs(plot_.exits[side].x()) > std::abs(plot_.exits[next].x())
                              ? plot_.exits[side].x() * 0.97
                              : plot_.exits[next].x() * 0.97,
                          std::abs(plot_.exits[side].y()) > std::abs(plot_.exits[next].y())
                              ? plot_.exits[side].y() * 0.97
                              : plot_.exits[next].y() * 0.97);
  line("lanes \"" + place_name() + "\" " +
       plan_points({ways_[side][2], ways_[side][0], outer, ways_[next][0], ways_[next][2]}) +
       " lane");
}

void OtherPlan::market() {
  line("junction " + written(middle_) + " highway=traffic_signals");
  const std::size_t from = dice_.below(arms);
  const std::size_t to = (from + 1 + dice_.below(arms - 1)) % arms;
  line("ban " +
       std::string(to == (from + 2) % arms   ? "no_straight_on"
                   : to == (from + 1) % arms ? "no_right_turn"
                                             : "no_left_turn") +
       ' ' + written(towards(middle_, gates_[from], 60)) + ' ' + written(middle_) + ' ' +
       written(towards(middle_, gates_[to], 60)));
  line("spot " + written(middle_) + " place=town name=\"" + place_name() + '"');
}

std::string OtherPlan::text() {
  std::array<char, 64> origin{};
  std::snprintf(origin.data(), origin.size(), "origin %.9f %.9f", plot_.origin_lat,
                plot_.origin_lon);
  line(origin.data());
  out_ += sets;
  lay_out();
  barriers();
  rings();
  for (const auto step : {&OtherPlan::ring_road, &OtherPlan::street, &OtherPlan::arm,
                          &OtherPlan::loop, &OtherPlan::sector, &OtherPlan::country})
    for (std::size_t side = 0; side < arms; ++side) (this->*step)(side);
  market();
  return std::move(out_);
}

}  // namespace

std::string other_plan(const Plot& plot, std::uint64_t seed) {
  return OtherPlan(plot, seed).text();
}

}  // namespace loopwright::county
