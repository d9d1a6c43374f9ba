#include "draw/driven.hpp"

#include <cmath>
#include <numbers>

namespace loopwright::test {
namespace {

using draw::Label;

draw::Box box_of(const Label& label) {
  const draw::Extent extent = draw::extent_of(label);
  double left = label.at.x;
  if (label.width <= 0 && label.type.align == draw::Align::middle) left -= extent.width / 2;
  if (label.width <= 0 && label.type.align == draw::Align::right) left -= extent.width;
  return {left, label.at.y, extent.width, extent.height};
}

bool overlap(draw::Box a, draw::Box b) {
  constexpr double fine = 0.05;
  return a.x + fine < b.x + b.width && b.x + fine < a.x + a.width && a.y + fine < b.y + b.height &&
         b.y + fine < a.y + a.height;
}

}  // namespace

BuiltTown right_driving_ring() {
  return built_town(R"(
      N
      B
 W  A   C  E
      D
      S
   w1 ADCBA junction=roundabout highway=tertiary
   w2 WA highway=tertiary
   w3 NB highway=residential
   w4 CE highway=tertiary
   w5 SD highway=residential
)",
                    "DE");
}

wish::Loop driven(const BuiltTown& town, std::string_view letters) {
  wish::Loop loop;
  for (std::size_t i = 0; i + 1 < letters.size(); ++i) {
    wish::LoopStretch row;
    row.stretch = town.stretch(letters.substr(i, 2));
    loop.stretches.push_back(std::move(row));
  }
  return loop;
}

wish::Loop driven(const road::Roads& roads, const road::Chance& chance) {
  wish::Loop loop;
  for (const StretchId stretch : roads.path_of(chance)) {
    wish::LoopStretch row;
    row.stretch = stretch;
    loop.stretches.push_back(std::move(row));
  }
  return loop;
}

std::vector<draw::Spot> way_in(const draw::Picture& picture) {
  const draw::Stroke* bar = nullptr;
  for (auto mark = picture.marks.rbegin(); mark != picture.marks.rend(); ++mark) {
    const auto* stroke = std::get_if<draw::Stroke>(&*mark);
    if (stroke == nullptr || stroke->ink != draw::Ink::black || stroke->width < 1) continue;
    if (bar != nullptr) return stroke->way;
    bar = stroke;
  }
  return {};
}

std::vector<draw::Stroke> pale_in(const draw::Picture& picture) {
  std::vector<draw::Stroke> pale;
  for (const draw::Mark& mark : picture.marks)
    if (const auto* stroke = std::get_if<draw::Stroke>(&mark))
      if (stroke->ink == draw::Ink::pale) pale.push_back(*stroke);
  return pale;
}

std::vector<Label> labels_in(const draw::Picture& picture) {
  std::vector<Label> labels;
  for (const draw::Mark& mark : picture.marks)
    if (const auto* label = std::get_if<Label>(&mark)) labels.push_back(*label);
  return labels;
}

std::vector<std::string> label_faults(const draw::Picture& picture) {
  std::vector<std::string> faults;
  const std::vector<Label> labels = labels_in(picture);
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const draw::Box box = box_of(labels[i]);
    if (box.x < 0 || box.y < 0 || box.x + box.width > picture.width ||
        box.y + box.height > picture.height)
      faults.push_back(labels[i].text + " leaves the picture");
    for (std::size_t k = i + 1; k < labels.size(); ++k)
      if (overlap(box, box_of(labels[k])))
        faults.push_back(labels[i].text + " lies on " + labels[k].text);
  }
  return faults;
}

double seen_deg(const draw::Picture& picture, draw::Spot spot) {
  const double degrees =
      std::atan2(spot.x - picture.width / 2, picture.height / 2 - spot.y) * 180 / std::numbers::pi;
  return degrees < 0 ? degrees + 360 : degrees;
}

}  // namespace loopwright::test
