// Method: each paragraph is measured as one block; what doesn't fit below the last goes to the next column.
#include "card/flow.hpp"

#include <utility>

namespace loopwright::card {
namespace {

constexpr double column_gap = 7;

double heading_gap(Spacing spacing) {
  return spacing == Spacing::usual ? 4 : 2;
}

double paragraph_gap(Spacing spacing) {
  return spacing == Spacing::usual ? 0.6 : 0.2;
}

}  // namespace

double Flow::column_width() {
  if (pages_.empty()) next_page();
  return (box_.width - column_gap * (style_.columns - 1)) / style_.columns;
}

void Flow::heading(const std::string& text) {
  draw::Type type = bold(style_);
  type.points += 1.5;
  draw::Label label{{0, 0}, text, type, column_width()};
  draw::Picture picture{label.width, draw::extent_of(label).height + 0.6};
  picture.add(std::move(label));
  waiting_.push_back({std::move(picture), heading_gap(spacing_)});
}

void Flow::paragraph(const std::string& text, const draw::Type& type, double indent) {
  draw::Label label{{indent, 0}, text, type, column_width() - indent};
  draw::Picture picture{column_width(), draw::extent_of(label).height};
  picture.add(std::move(label));
  add({std::move(picture), paragraph_gap(spacing_)});
}

void Flow::picture(const draw::Picture& picture) {
  add({picture, paragraph_gap(spacing_)});
}

void Flow::add(Block block) {
  if (pages_.empty()) next_page();
  waiting_.push_back(std::move(block));
  double height = 0;
  for (const Block& one : waiting_) height += one.gap + one.picture.height;
  if (y_ > box_.y && y_ + height > box_.y + box_.height) next_column();
  for (const Block& one : std::exchange(waiting_, {})) {
    if (y_ > box_.y) y_ += one.gap;
    const double x = box_.x + column_ * (column_width() + column_gap);
    draw::place(pages_.back(), one.picture, {x, y_});
    y_ += one.picture.height;
  }
}

void Flow::next_column() {
  if (++column_ >= style_.columns) {
    next_page();
  } else {
    y_ = box_.y;
  }
}

void Flow::next_page() {
  Room room = new_page_();
  pages_.push_back(std::move(room.page));
  box_ = room.box;
  column_ = 0;
  y_ = box_.y;
}

}  // namespace loopwright::card
