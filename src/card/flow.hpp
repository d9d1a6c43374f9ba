// Text that runs through the columns of as many pages as it needs.
//
//   Flow flow(style, framed);  flow.heading("Bus lanes");  flow.paragraph("…", plain(style));
//   for (draw::Picture& page : flow.pages()) …
//
// Rules: a paragraph is never cut, and moves on as a whole; a heading stays with what follows it. One that is
// higher than a column stands alone on a page of its own.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "card/page_style.hpp"

namespace loopwright::card {

/// Between paragraphs and above headings.
enum class Spacing : std::uint8_t { usual, close };

class Flow {
 public:
  /// A new page and the box on it that text may fill.
  struct Room {
    draw::Picture page;
    draw::Box box;
  };
  Flow(const PageStyle& style, std::function<Room()> new_page, Spacing spacing)
      : style_(style), new_page_(std::move(new_page)), spacing_(spacing) {}

  void heading(const std::string& text);
  void paragraph(const std::string& text, const draw::Type& type, double indent = 0);
  /// A picture across the column, `height` of it taken.
  void picture(const draw::Picture& picture);
  /// Width of a column, in millimetres.
  [[nodiscard]] double column_width();
  [[nodiscard]] std::vector<draw::Picture> pages() { return std::move(pages_); }

 private:
  struct Block {
    draw::Picture picture;
    double gap = 0;  ///< above it, unless it begins a column
  };
  void add(Block block);
  void next_column();
  void next_page();

  PageStyle style_;
  std::function<Room()> new_page_;
  Spacing spacing_;
  std::vector<draw::Picture> pages_;
  draw::Box box_;
  int column_ = 0;
  double y_ = 0;
  std::vector<Block> waiting_;  ///< a heading that waits for what follows it
};

}  // namespace loopwright::card
