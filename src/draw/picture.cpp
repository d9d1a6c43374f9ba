// Method: every mark is moved and scaled by itself; a picture has no frames within.
#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {
namespace {

class Placing {
 public:
  Placing(Spot at, double scale) : at_(at), scale_(scale) {}

  Mark operator()(Stroke stroke) const {
    for (Spot& spot : stroke.way) spot = moved(spot);
    stroke.width *= scale_;
    for (double& length : stroke.dashes) length *= scale_;
    return stroke;
  }

  Mark operator()(Fill fill) const {
    for (auto& outline : fill.outlines)
      for (Spot& spot : outline) spot = moved(spot);
    return fill;
  }

  Mark operator()(Disc disc) const {
    disc.middle = moved(disc.middle);
    disc.radius *= scale_;
    disc.line *= scale_;
    return disc;
  }

  Mark operator()(Label label) const {
    label.at = moved(label.at);
    label.type.points *= scale_;
    label.width *= scale_;
    label.halo *= scale_;
    return label;
  }

 private:
  [[nodiscard]] Spot moved(Spot spot) const {
    return {at_.x + spot.x * scale_, at_.y + spot.y * scale_};
  }

  Spot at_;
  double scale_;
};

}  // namespace

// Not in the header: inlined into its many callers, gcc 12 takes the moved text for one that is read out of bounds.
void Picture::add(Mark mark) {
  marks.push_back(std::move(mark));
}

void place(Picture& outer, const Picture& inner, Spot at, double scale) {
  const Placing placing(at, scale);
  for (const Mark& mark : inner.marks) outer.add(std::visit(placing, mark));
}

}  // namespace loopwright::draw
