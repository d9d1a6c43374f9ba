// Method:
// 1. Each paragraph is measured as one block. Blocks that stay together are a group.
// 2. A group that doesn't fit below the last goes to the next column; one that is higher than a column is broken
//    where a column ends.
// 3. Where all is on one page, columns are made shorter while it stays so.
#include "card/flow.hpp"

namespace loopwright::card {
namespace {

constexpr double column_gap = 7;

}  // namespace

double Flow::column_width() const {
  return (box_.width - column_gap * (style_.columns - 1)) / style_.columns;
}

void Flow::heading(const std::string& text) {
  draw::Type type = bold(style_);
  type.points += 1.5;
  draw::Label label{{0, 0}, text, type, column_width()};
  draw::Picture picture{label.width, draw::extent_of(label).height + 0.6};
  picture.add(std::move(label));
  blocks_.push_back({std::move(picture), Kind::heading});
}

void Flow::paragraph(const std::string& text, const draw::Type& type, double indent) {
  draw::Label label{{indent, 0}, text, type, column_width() - indent};
  draw::Picture picture{column_width(), draw::extent_of(label).height};
  picture.add(std::move(label));
  blocks_.push_back({std::move(picture), indent > 0 ? Kind::indented : Kind::paragraph});
}

void Flow::picture(const draw::Picture& picture) {
  blocks_.push_back({picture, Kind::paragraph});
}

bool Flow::stays_with_previous(std::size_t block) const {
  if (block == 0 || blocks_[block].kind == Kind::heading) return false;
  const auto is_heading = [&](std::size_t b) { return blocks_[b].kind == Kind::heading; };
  return blocks_[block].kind == Kind::indented || is_heading(block - 1) ||
         (block > 1 && is_heading(block - 2));
}

std::size_t Flow::group_end(std::size_t begin) const {
  std::size_t end = begin + 1;
  while (end < blocks_.size() && stays_with_previous(end)) ++end;
  return end;
}

/// With the gap above each; a block that begins a column has none.
double Flow::height_of(std::size_t begin, std::size_t end, Spacing spacing) const {
  const bool usual = spacing == Spacing::usual;
  double height = 0;
  for (std::size_t b = begin; b < end; ++b) {
    const double gap = blocks_[b].kind == Kind::heading ? (usual ? 4.0 : 2.0) : (usual ? 0.6 : 0.2);
    height += gap + blocks_[b].picture.height;
  }
  return height;
}

std::vector<Flow::Stand> Flow::stands(Spacing spacing, double height) const {
  std::vector<Stand> stands;
  Stand next;
  const auto make_room = [&](double needed) {
    if (next.y > 0 && next.y + needed > height) next = {next.column + 1, 0};
  };
  for (std::size_t begin = 0; begin < blocks_.size();) {
    const std::size_t end = group_end(begin);
    make_room(height_of(begin, end, spacing));
    for (; begin < end; ++begin) {
      const double needed = height_of(begin, begin + 1, spacing);
      make_room(needed);
      const double own = blocks_[begin].picture.height;
      stands.push_back({next.column, next.y > 0 ? next.y + needed - own : 0});
      next.y = stands.back().y + own;
    }
  }
  return stands;
}

std::size_t Flow::pages_of(const std::vector<Stand>& stands) const {
  const auto columns = static_cast<std::size_t>(style_.columns);
  return stands.empty() ? 0 : stands.back().column / columns + 1;
}

/// Closer only so that a last page isn't there for a few lines.
Flow::Spacing Flow::spacing() const {
  const std::size_t usual = pages_of(stands(Spacing::usual, box_.height));
  const bool saves = usual > 1 && pages_of(stands(Spacing::close, box_.height)) < usual;
  return saves ? Spacing::close : Spacing::usual;
}

/// The least height of columns in which all still is on one page; the whole box where it isn't.
double Flow::level_height(Spacing spacing) const {
  constexpr double near_mm = 2;
  double low = 0, high = box_.height;
  if (style_.columns < 2 || pages_of(stands(spacing, high)) != 1) return high;
  while (high - low > near_mm) {
    const double middle = (low + high) / 2;
    (pages_of(stands(spacing, middle)) == 1 ? high : low) = middle;
  }
  return high;
}

std::size_t Flow::page_count() const {
  return pages_of(stands(spacing(), box_.height));
}

std::vector<draw::Picture> Flow::pages() const {
  const Spacing gaps = spacing();
  const std::vector<Stand> all = stands(gaps, level_height(gaps));
  const auto columns = static_cast<std::size_t>(style_.columns);
  std::vector<draw::Picture> pages;
  for (std::size_t b = 0; b < blocks_.size(); ++b) {
    while (pages.size() <= all[b].column / columns) pages.push_back(new_page_().page);
    const auto column = static_cast<double>(all[b].column % columns);
    const double x = box_.x + column * (column_width() + column_gap);
    draw::place(pages.back(), blocks_[b].picture, {x, box_.y + all[b].y});
  }
  return pages;
}

}  // namespace loopwright::card
