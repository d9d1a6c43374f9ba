// A county's roads as the truth sees them: each line for cars, and what meets at each point.
//
//   const Net net(county);
//   for (const Arm& arm : net.arms(place)) use(net.road(arm), net.heading(arm));
//
// Rules: a road is a line of the drawing, one way of the map; angles are radians from east.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "county/drawing.hpp"
#include "county/projection.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::county {

/// Value of a tag, empty when it isn't there.
const std::string& value(const Tags& tags, const std::string& key);
bool says(const Tags& tags, const std::string& key, std::initializer_list<const char*> values);

struct Road {
  const Line* line = nullptr;
  std::int64_t way = 0;
  std::string road_class;  ///< value of highway, a link as its road
  bool link = false, ring = false;
  bool minor = false;                 ///< driveway, parking aisle …: never driven
  bool along = true, against = true;  ///< directions of traffic
  bool learner = false;               ///< a lesson may drive it, at some hours; motorways as well
  double length = 0;
  [[nodiscard]] bool service() const { return road_class == "service"; }
  [[nodiscard]] bool two_way() const { return along && against; }
  [[nodiscard]] const std::string& tag(const std::string& key) const {
    return value(line->tags, key);
  }
};

/// A road that leaves a point, from its point `at` on in steps of `step`.
struct Arm {
  std::size_t road = 0;
  std::size_t at = 0;
  int step = 1;
};

class Net {
 public:
  explicit Net(const Drawing& county);
  [[nodiscard]] const Drawing& county() const { return county_; }
  [[nodiscard]] const std::vector<Road>& roads() const { return roads_; }
  [[nodiscard]] const Road& road(const Arm& arm) const { return roads_[arm.road]; }
  [[nodiscard]] const std::vector<Arm>& arms(Spot place) const;
  /// Points at which roads end or meet, in the order of drawing.
  [[nodiscard]] const std::vector<Spot>& points() const { return points_; }
  /// Where the arm leads, judged at about 15 m.
  [[nodiscard]] double heading(const Arm& arm) const;
  /// The point so far along an arm, or its far end.
  [[nodiscard]] Spot ahead(const Arm& arm, double metres) const;
  [[nodiscard]] const Tags& tags(Spot place) const;
  [[nodiscard]] Point point(Spot place) const;
  /// A turn restriction has this point or a road that ends here as its via.
  [[nodiscard]] bool banned_at(Spot place) const { return bans_.contains(place); }
  /// Points of roads with a tag of this key.
  [[nodiscard]] std::vector<Spot> tagged(const std::string& key) const;

 private:
  void add_arms(std::size_t road);

  const Drawing& county_;
  Projection flat_;
  std::vector<Road> roads_;
  std::unordered_map<Spot, std::vector<Arm>, SpotHash> arms_;
  std::vector<Spot> points_;
  std::unordered_set<Spot, SpotHash> bans_;
};

// --- what tags say; MAP-TAGS names the pages ----------------------------------------------------

/// 0 motorway to 7 service.
int rank_of(const Road& road);
/// "4.5", "12'6\"", "4 m" in metres.
std::optional<double> metres_of(const std::string& text);
/// What parked cars leave of a mapped width.
struct Room {
  std::optional<double> width, usable;
  bool parked = false;  ///< cars stand on the carriageway
};
Room room_of(const Road& road);
enum class Answer { no, maybe, yes };
/// Under 4.8 m to drive in, both ways; one-way under 2.75 m, single file and tight.
Answer is_narrow(const Road& road);
/// One lane for both ways, or under 4.1 m from kerb to kerb: parked cars make none (trap 22).
Answer is_single_track(const Road& road);
/// A mapped limit in mph in the direction of the points; 0 when none is.
int limit_mph(const Road& road, bool along);
/// Lanes mapped for one direction; 0 when they aren't.
int lanes_of(const Road& road, bool along);
/// Per cent, up along the points; 0 when it isn't a number.
double incline_of(const Road& road);
/// Cars may pass this point: no bollard, locked gate, ford.
bool passable(const Tags& tags);

}  // namespace loopwright::county
