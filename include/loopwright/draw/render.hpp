// Pictures as files: PDF for paper, SVG for a page on screen, PNG to look at.
//
//   write(to_pdf(pages, {"Lesson of 28 November 2026", "2026-11-28T15:00:00+00:00"}));
//
// Rules: the same pictures give the same bytes with the same libraries and typeface. Typefaces are
// embedded in a PDF and turned into outlines in SVG, so that both look the same everywhere.
#pragma once

#include <span>
#include <string>

#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {

/// What a document says of itself.
struct About {
  std::string title;
  std::string made;  ///< ISO 8601 with offset; printed nowhere
};

/// One page for each picture, of its size. Rules: at least one page. Throws InputError when the
/// renderer reports an error.
std::string to_pdf(std::span<const Picture> pages, const About& about);

std::string to_svg(const Picture& picture);

/// `dots` in an inch, on white.
std::string to_png(const Picture& picture, double dots);

}  // namespace loopwright::draw
