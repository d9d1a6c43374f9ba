// Text that runs through the columns of as many pages as it needs.
//
//   Flow flow(style, framed);  flow.heading("Bus lanes");  flow.paragraph("…", plain(style));
//   for (draw::Picture& page : flow.pages()) …
//
// Rules: a paragraph is never cut, and moves on as a whole; a heading stays with the two that follow it, what is
// indented with what stands above it. One paragraph that is higher than a column stands alone in it.
// Where closer lines save a page they are closer; the columns of a single page end about level.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "card/page_style.hpp"

namespace loopwright::card {

class Flow {
 public:
  /// A new page and the box on it that text may fill, as large on every page.
  struct Room {
    draw::Picture page;
    draw::Box box;
  };
  Flow(const PageStyle& style, std::function<Room()> new_page)
      : style_(style), new_page_(std::move(new_page)), box_(new_page_().box) {}

  void heading(const std::string& text);
  void paragraph(const std::string& text, const draw::Type& type, double indent = 0);
  /// A picture across the column, `height` of it taken.
  void picture(const draw::Picture& picture);
  /// Width of a column, in millimetres.
  [[nodiscard]] double column_width() const;
  /// How many pages there will be.
  [[nodiscard]] std::size_t page_count() const;
  [[nodiscard]] std::vector<draw::Picture> pages() const;

 private:
  /// Between paragraphs and above headings.
  enum class Spacing : std::uint8_t { usual, close };
  enum class Kind : std::uint8_t { heading, paragraph, indented };
  struct Block {
    draw::Picture picture;
    Kind kind = Kind::paragraph;
  };
  /// Where a block stands: columns are counted through all pages, y from the top of the box.
  struct Stand {
    std::size_t column = 0;
    double y = 0;
  };
  [[nodiscard]] bool stays_with_previous(std::size_t block) const;
  [[nodiscard]] std::size_t group_end(std::size_t begin) const;
  [[nodiscard]] double height_of(std::size_t begin, std::size_t end, Spacing spacing) const;
  [[nodiscard]] std::vector<Stand> stands(Spacing spacing, double height) const;
  [[nodiscard]] std::size_t pages_of(const std::vector<Stand>& stands) const;
  [[nodiscard]] Spacing spacing() const;
  [[nodiscard]] double level_height(Spacing spacing) const;

  PageStyle style_;
  std::function<Room()> new_page_;
  draw::Box box_;
  std::vector<Block> blocks_;
};

}  // namespace loopwright::card
