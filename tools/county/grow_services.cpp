// Along every street at chance intervals, on either side where there is room: a car park, a yard or a
// drive; along lanes a farm's drive or a track. Each begins at a Spot of its road and ends at nothing.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "county/grow.hpp"
#include "county/grow_parking.hpp"
#include "county/grow_trace.hpp"

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double drive_gap_m = 64;  // between drives on one side of a street, on average
constexpr std::size_t without_drives_one_in = 6;
constexpr double farm_gap_m = 620;  // between farms on one side of a lane
constexpr double least_gap_m = 11;  // from a drive to a junction or another drive
constexpr double room_m = 6;        // round a drive's end

bool is(const Line& line, const char* key, const char* value) {
  const auto found = line.tags.find(key);
  return found != line.tags.end() && found->second == value;
}

bool in_country(const Line& line) {
  return is(line, "lit", "no") || !line.tags.contains("lit");
}

class Services {
 public:
  Services(Ground& ground, Dice& dice) : ground_(ground), dice_(dice) {}

  void along_all() {
    const std::size_t lines = ground_.county().lines.size();
    for (std::size_t n = 0; n < lines; ++n) {
      if (!joinable(ground_.line(n), 1, true)) continue;
      if (in_country(ground_.line(n))) {
        put_along(n, farm_gap_m, [&](const Start& start) { put_farm(start); });
      } else {
        // Where nothing but front gardens line a street, a kerb stays free to stop at.
        if (dice_.below(without_drives_one_in) == 0) continue;
        const double gap = drive_gap_m * (rank(ground_.line(n)) > 2 ? 1.7 : 1.0);
        put_along(n, gap, [&](const Start& start) { put_in_town(start); });
      }
    }
  }

 private:
  template <typename Put>
  void put_along(std::size_t number, double gap, Put&& put) {
    const std::vector<Spot> points = ground_.line(number).points;
    const double size = length_m(points);
    for (const double side : {1.0, -1.0})
      for (double at_m = 14 + gap * dice_.share(); at_m < size - 14;
           at_m += gap * (0.5 + dice_.share())) {
        const Spot at = along(points, at_m);
        const Foot foot = nearest(points, at);
        const double run = angle_of(points[foot.segment], points[foot.segment + 1]);
        const Start start{number, ground_.would_share(number, at), run + side * pi / 2};
        if (ground_.arms(start.at) != 1 && ground_.arms(start.at) <= 2 &&
            ground_.junction_off(start.at, least_gap_m) >= least_gap_m)
          put(start);
      }
  }

  void put_in_town(const Start& start) {
    const std::size_t kind = dice_.below(100);
    const bool wide = rank(ground_.line(start.line)) > 1;
    if (kind < (wide ? 20U : 11U) && put_parking(ground_, start, dice_)) return;
    if (kind < 55) {
      const double size = 14 + 26 * dice_.share();
      const bool bent = dice_.below(5) == 0;
      put_drive(start, size, bent, driveway());
    } else {
      const double size = 22 + 60 * dice_.share();
      const bool bent = dice_.below(2) == 0;
      put_drive(start, size, bent, yard());
    }
  }

  Tags driveway() {
    Tags tags{{"highway", "service"}, {"service", "driveway"}};
    if (dice_.below(4) == 0) tags["access"] = "private";
    return tags;
  }

  Tags yard() {
    Tags tags{{"highway", "service"}};
    if (dice_.below(8) == 0) tags["service"] = "alley";
    if (dice_.below(6) == 0) tags["surface"] = "concrete";
    return tags;
  }

  /// Straight in, and when it bends, round a corner behind the fronts.
  void put_drive(const Start& start, double size, bool bent, Tags tags) {
    std::vector<Spot> points{start.at};
    const double first = bent ? std::max(14.0, 0.45 * size) : size;
    points.push_back(on_circle(start.at, first, start.heading));
    if (bent) {
      const double side = dice_.below(2) == 0 ? 1 : -1;
      const double turn = side * (1.1 + 0.6 * dice_.share());
      points.push_back(on_circle(points.back(), size - first + 8, start.heading + turn));
    }
    if (!free_way(points)) return;
    ground_.share(start.line, start.at);
    Line line{.kind = LineKind::service};
    line.points = points;
    line.tags = std::move(tags);
    line.ends[1] = End::closed;
    line.grown = true;
    const std::size_t number = ground_.add(std::move(line));
    if (size > 55 && !bent) branch(number, start.heading);
  }

  /// A yard off a long drive.
  void branch(std::size_t number, double heading) {
    const std::vector<Spot> points = ground_.line(number).points;
    const double at_m = length_m(points) * (0.5 + 0.2 * dice_.share());
    const double turn = (dice_.below(2) == 0 ? 1 : -1) * pi / 2;
    put_drive({number, ground_.would_share(number, along(points, at_m)), heading + turn},
              16 + 22 * dice_.share(), false, {{"highway", "service"}});
  }

  bool free_way(const std::vector<Spot>& points) const {
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      const Spot beyond =
          towards(points[i], points[i + 1], apart(points[i], points[i + 1]) + room_m);
      if (ground_.first_hit(points[i], beyond)) return false;
    }
    return ground_.clear(points.back(), room_m) && !ground_.in_area(points.back()) &&
           !ground_.in_area(points[1]);
  }

  void put_farm(const Start& start) {
    const bool track = dice_.below(3) == 0;
    const std::vector<Spot> anywhere = round_about(start.at);
    Manner m{.within = anywhere, .grain = [&](Spot) { return start.heading; }};
    m.along_gap_m = m.across_gap_m = 70;
    m.follow = 0.05;
    m.wobble = 0.14;
    m.longest_m = (track ? 150 : 60) + 260 * dice_.share();
    m.join = 0;
    m.keep_m = 40;
    const auto way = trace(ground_, m, start, dice_);
    if (!way) return;
    for (const Joint& joint : way->joints) ground_.share(joint.line, joint.at);
    Line line{.kind = LineKind::service};
    line.points = way->points;
    line.tags = {{"highway", track ? "track" : "service"}};
    if (track) line.tags["tracktype"] = "grade" + std::to_string(2 + dice_.below(3));
    line.ends[1] = End::closed;
    line.grown = true;
    const std::size_t number = ground_.add(std::move(line));
    if (!track) branch(number, angle_of(*(way->points.end() - 2), way->points.back()));
  }

  static std::vector<Spot> round_about(Spot at) {
    constexpr double far = 1000;
    return {spot(at.x() - far, at.y() - far), spot(at.x() + far, at.y() - far),
            spot(at.x() + far, at.y() + far), spot(at.x() - far, at.y() + far)};
  }

  Ground& ground_;
  Dice& dice_;
};

}  // namespace

void grow_services(Drawing& county, Dice& dice) {
  std::vector<Spot> all;
  for (const Line& line : county.lines)
    all.insert(all.end(), line.points.begin(), line.points.end());
  if (all.empty()) return;
  Ground ground(county, all);
  Services(ground, dice).along_all();
}

}  // namespace loopwright::county
