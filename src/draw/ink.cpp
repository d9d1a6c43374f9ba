// Method: strokes of one pen that follow each other become one path, which spares Cairo most of its work on
// a map; each other mark becomes one path of Cairo's, filled or stroked; words are shown as text, so that a
// reader of the file can find them, over a halo that is stroked along their outlines.
//
// A file of lines (PDF, SVG) takes strokes as they are, but Cairo outlines each of them several times only to
// know how far it reaches: coarsely done that is half the time, and the file is the same.
#include "draw/ink.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <span>

#include "draw/lines.hpp"
#include "draw/type.hpp"

namespace loopwright::draw {
namespace {

/// Red, green and blue in one number.
double part_of(unsigned colour, unsigned shift) {
  return static_cast<double>(colour >> shift & 0xffU) / 0xff;
}

void set_ink(cairo_t* cairo, Ink ink) {
  // In the order of Ink. The grey is dark enough for small words: 5.9:1 on white.
  constexpr std::array<unsigned, 4> colours{0x16181b, 0x64676b, 0xe1dfd8, 0xffffff};
  const unsigned colour = colours.at(static_cast<std::size_t>(ink));
  cairo_set_source_rgb(cairo, part_of(colour, 16), part_of(colour, 8), part_of(colour, 0));
}

void trace(cairo_t* cairo, const std::vector<Spot>& way) {
  bool first = true;
  for (const Spot& spot : way) {
    first ? cairo_move_to(cairo, spot.x, spot.y) : cairo_line_to(cairo, spot.x, spot.y);
    first = false;
  }
}

class Pen {
 public:
  explicit Pen(cairo_t* cairo)
      : cairo_(cairo),
        dots_(cairo_surface_get_type(cairo_get_target(cairo)) == CAIRO_SURFACE_TYPE_IMAGE) {}

  void operator()(const Stroke& stroke) const {
    const Stroke* const one = &stroke;
    draw({&one, 1});
  }

  /// Strokes of one pen, which lie over each other as if they were one.
  void draw(std::span<const Stroke* const> strokes) const {
    const Stroke& stroke = *strokes.front();
    set_ink(cairo_, stroke.ink);
    cairo_set_line_width(cairo_, stroke.width);
    cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(cairo_,
                       stroke.cap == Cap::round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    cairo_set_dash(cairo_, stroke.dashes.data(), static_cast<int>(stroke.dashes.size()), 0);
    cairo_new_path(cairo_);
    // What no eye sees would be two thirds of a map's file.
    constexpr double unseen = 0.02;
    for (const Stroke* one : strokes) trace(cairo_, simplified(one->way, unseen));
    stroke_path(stroke.width);
  }

  void operator()(const Fill& fill) const {
    set_ink(cairo_, fill.ink);
    cairo_set_fill_rule(cairo_, CAIRO_FILL_RULE_EVEN_ODD);
    cairo_new_path(cairo_);
    for (const auto& outline : fill.outlines) {
      trace(cairo_, outline);
      cairo_close_path(cairo_);
    }
    cairo_fill(cairo_);
  }

  void operator()(const Disc& disc) const {
    cairo_new_path(cairo_);
    cairo_arc(cairo_, disc.middle.x, disc.middle.y, disc.radius, 0, 2 * std::numbers::pi);
    cairo_close_path(cairo_);
    if (disc.fill) {
      set_ink(cairo_, *disc.fill);
      cairo_fill_preserve(cairo_);
    }
    if (disc.line > 0) {
      set_ink(cairo_, disc.ink);
      cairo_set_dash(cairo_, nullptr, 0, 0);
      cairo_set_line_width(cairo_, disc.line);
      stroke_path(disc.line);
    }
    cairo_new_path(cairo_);
  }

  void operator()(const Label& label) const {
    cairo_save(cairo_);
    cairo_translate(cairo_, label.at.x, label.at.y);
    cairo_rotate(cairo_, label.turned * std::numbers::pi / 180);
    const auto [layout, scale] = layout_of(label);
    const double point = scale * mm_per_point;
    cairo_scale(cairo_, point, point);
    int width = 0, height = 0;
    pango_layout_get_size(layout.get(), &width, &height);
    double left = 0;
    if (label.width <= 0 && label.type.align == Align::middle) left = -width / 2.0 / PANGO_SCALE;
    if (label.width <= 0 && label.type.align == Align::right) left = -width / 1.0 / PANGO_SCALE;
    cairo_move_to(cairo_, left, 0);
    if (label.halo > 0) add_halo(layout.get(), label.halo / point);
    set_ink(cairo_, label.type.ink);
    cairo_move_to(cairo_, left, 0);
    pango_cairo_show_layout(cairo_, layout.get());
    cairo_restore(cairo_);
  }

 private:
  void add_halo(PangoLayout* layout, double points) const {
    set_ink(cairo_, Ink::paper);
    cairo_set_dash(cairo_, nullptr, 0, 0);
    cairo_set_line_width(cairo_, 2 * points);
    cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
    pango_cairo_layout_path(cairo_, layout);
    stroke_path(2 * points);
  }

  /// Of this width; the path is used up.
  void stroke_path(double width) const {
    const double fine = cairo_get_tolerance(cairo_);
    double half = width / 2, none = 0;
    cairo_user_to_device_distance(cairo_, &half, &none);
    // A pen no rounder than four corners; one of fewer would be no pen.
    if (!dots_) cairo_set_tolerance(cairo_, std::max(fine, std::hypot(half, none)));
    cairo_stroke(cairo_);
    cairo_set_tolerance(cairo_, fine);
  }

  cairo_t* cairo_;
  bool dots_;  ///< a picture of dots
};

bool same_pen(const Stroke& a, const Stroke& b) {
  return a.width == b.width && a.ink == b.ink && a.cap == b.cap && a.dashes == b.dashes;
}

/// The strokes at `first` and after it that need no other pen; none when there is no stroke.
std::vector<const Stroke*> strokes_of_one_pen(const std::vector<Mark>& marks, std::size_t first) {
  std::vector<const Stroke*> strokes;
  for (std::size_t i = first; i < marks.size(); ++i) {
    const auto* stroke = std::get_if<Stroke>(&marks[i]);
    if (stroke == nullptr || (!strokes.empty() && !same_pen(*stroke, *strokes.front()))) break;
    strokes.push_back(stroke);
  }
  return strokes;
}

}  // namespace

void draw_marks(cairo_t* cairo, const Picture& picture) {
  const Pen pen(cairo);
  for (std::size_t i = 0; i < picture.marks.size();) {
    const std::vector<const Stroke*> strokes = strokes_of_one_pen(picture.marks, i);
    if (strokes.empty()) {
      std::visit(pen, picture.marks[i++]);
    } else {
      pen.draw(strokes);
      i += strokes.size();
    }
  }
}

}  // namespace loopwright::draw
