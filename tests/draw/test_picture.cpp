// Pictures put into one another, words measured, and the files they become.
#include <catch2/catch.hpp>

#include "loopwright/draw/picture.hpp"
#include "loopwright/draw/render.hpp"

namespace loopwright::test {
namespace {

using draw::Label;
using draw::Picture;

Picture sign() {
  Picture picture{20, 10};
  picture.add(draw::Stroke{{{1, 2}, {3, 4}}, 0.5, draw::Ink::grey, draw::Cap::round, {1, 2}});
  picture.add(draw::Fill{{{{0, 0}, {2, 0}, {2, 2}}}});
  picture.add(draw::Disc{{5, 5}, 2, draw::Ink::pale, 0.25});
  picture.add(Label{{1, 1}, "Orlham", {9, true}, 12, 0, 0.5});
  return picture;
}

double height_at(double width) {
  return draw::extent_of(Label{{0, 0}, "Take the second road on the left", {12}, width}).height;
}

}  // namespace

TEST_CASE("a picture put into another is moved and scaled with all it holds", "[draw]") {
  Picture page{100, 100};
  draw::place(page, sign(), {10, 20}, 2);
  REQUIRE(page.marks.size() == 4);
  const auto& stroke = std::get<draw::Stroke>(page.marks[0]);
  CHECK(stroke.way == std::vector<draw::Spot>{{12, 24}, {16, 28}});
  CHECK(stroke.width == 1);
  CHECK(stroke.dashes == std::vector<double>{2, 4});
  CHECK(std::get<draw::Fill>(page.marks[1]).outlines[0][2] == draw::Spot{14, 24});
  const auto& disc = std::get<draw::Disc>(page.marks[2]);
  CHECK(disc.middle == draw::Spot{20, 30});
  CHECK(disc.radius == 4);
  CHECK(disc.line == 0.5);
  const auto& label = std::get<Label>(page.marks[3]);
  CHECK(label.at == draw::Spot{12, 22});
  CHECK(label.type.points == 18);
  CHECK(label.width == 24);
  CHECK(label.halo == 1);
}

TEST_CASE("words in a column are broken into lines, and a longer line is a wider one", "[draw]") {
  const double line = height_at(0);
  // Set solid, lines are the size of the letters apart: 12 pt are 4.23 mm. Other typefaces need more.
  CHECK(line >= Approx(12 * 25.4 / 72));
  CHECK(line < 1.5 * 12 * 25.4 / 72);
  CHECK(height_at(200) == Approx(line));
  CHECK(height_at(40) == Approx(2 * line));
  const double whole = draw::extent_of(Label{{0, 0}, "Orlham Road"}).width;
  CHECK(whole > draw::extent_of(Label{{0, 0}, "Orlham"}).width);
  CHECK(draw::extent_of(Label{{0, 0}, "Orlham Road", {18}}).width ==
        Approx(2 * whole).epsilon(1e-3));
}

TEST_CASE("the same pictures make the same files", "[draw]") {
  const std::vector<Picture> pages{sign(), Picture{210, 297}};
  const draw::About about{"Lesson", "2026-11-28T15:00:00+00:00"};
  const std::string pdf = draw::to_pdf(pages, about);
  CHECK(pdf.starts_with("%PDF-1."));
  CHECK(pdf == draw::to_pdf(pages, about));
  // ISO 32000: a page's size in points, 72 an inch of 25.4 mm; A4 is 210 by 297 mm.
  CHECK(pdf.find("/MediaBox [ 0 0 595.275591 841.889764 ]") != std::string::npos);
  CHECK(draw::to_svg(sign()).find("viewBox=\"0 0 56.692913 28.346457\"") != std::string::npos);
  // PNG, RFC 2083: width and height follow the first chunk's name.
  const std::string png = draw::to_png(sign(), 254);
  CHECK(png.substr(12, 4) == "IHDR");
  CHECK(png.substr(16, 8) == std::string("\0\0\0\xC8\0\0\0\x64", 8));
}

}  // namespace loopwright::test
