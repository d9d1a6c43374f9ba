// Roads are kept as dots along their middle, half a millimetre apart. A place for words costs the dots
// it covers and how late it stands in the list of spots; the cheapest free one is taken.
#include "draw/room_for.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "draw/map_lines.hpp"

namespace loopwright::draw {
namespace {

constexpr double dot_step = 0.5, margin = 0.6;

bool overlap(Box a, Box b) {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

Box grown(Box box, double by) {
  return {box.x - by, box.y - by, box.width + 2 * by, box.height + 2 * by};
}

}  // namespace

void RoomFor::keep_off(const Line& line, double width) {
  for (const Step& step : steps_along(line, dot_step)) dots_.push_back({step.at, width / 2});
}

Box RoomFor::inside(Box box) const {
  box.x = std::max(std::min(box.x, frame_.x + frame_.width - box.width), frame_.x);
  box.y = std::max(std::min(box.y, frame_.y + frame_.height - box.height), frame_.y);
  return box;
}

bool RoomFor::is_free(Box box) const {
  const bool inside = box.x >= frame_.x && box.y >= frame_.y &&
                      box.x + box.width <= frame_.x + frame_.width &&
                      box.y + box.height <= frame_.y + frame_.height;
  return inside &&
         std::none_of(taken_.begin(), taken_.end(), [&](Box other) { return overlap(box, other); });
}

double RoomFor::covered(Box box) const {
  double dots = 0;
  for (const Dot& dot : dots_) {
    const double x = std::clamp(dot.at.x, box.x, box.x + box.width);
    const double y = std::clamp(dot.at.y, box.y, box.y + box.height);
    if (near(dot.at, {x, y}, dot.radius)) ++dots;
  }
  return dots;
}

bool RoomFor::put(Picture& picture, Label label, std::span<const Spot> middles) {
  const Extent extent = extent_of(label);
  double least = std::numeric_limits<double>::infinity();
  Box best;
  double late = 0;
  for (const Spot middle : middles) {
    const Box box = inside({middle.x - extent.width / 2 - margin, middle.y - extent.height / 2,
                            extent.width + 2 * margin, extent.height});
    const double cost = covered(box) + late;
    late += 0.3;
    if (cost < least && is_free(box)) best = box, least = cost;
  }
  if (std::isinf(least)) return false;
  // On bare paper a halo shows nothing, and takes more of a file than all the rest.
  label.at = {best.x + margin, best.y};
  const Box letters{label.at.x, label.at.y, extent.width, extent.height};
  if (covered(grown(letters, label.halo / 2)) == 0) label.halo = 0;
  keep_free(best);
  label.type.align = Align::left;
  picture.add(std::move(label));
  return true;
}

}  // namespace loopwright::draw
