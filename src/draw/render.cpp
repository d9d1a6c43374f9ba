// Method: a surface of Cairo's writes into a string; it is scaled so that one unit is a millimetre.
#include "loopwright/draw/render.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include <cassert>
#include <cmath>
#include <memory>

#include "draw/ink.hpp"
#include "draw/type.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/memory.hpp"

namespace loopwright::draw {
namespace {

struct SurfaceCloser {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
using Surface = std::unique_ptr<cairo_surface_t, SurfaceCloser>;
struct ContextCloser {
  void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
};
using Context = std::unique_ptr<cairo_t, ContextCloser>;

cairo_status_t append(void* text, const unsigned char* bytes, unsigned count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw InputError(std::string("the drawing can't be written: ") +
                     cairo_status_to_string(status));
}

double points(double mm) {
  return mm / mm_per_point;
}

/// White, to the edges. On a file of lines too: Cairo adds up which part of a page is drawn on, and after this
/// nothing adds to it, which is a seventh of the time of a lesson.
void blank(cairo_surface_t* surface) {
  const Context cairo(cairo_create(surface));
  cairo_set_source_rgb(cairo.get(), 1, 1, 1);
  cairo_paint(cairo.get());
}

/// Draws a picture at `units` of the surface in a millimetre.
void draw_on(cairo_surface_t* surface, const Picture& picture, double units) {
  constexpr std::size_t page_bytes = 32 << 20;  // a page of a long lesson takes under a tenth of it
  need_memory(page_bytes);
  const Context cairo(cairo_create(surface));
  cairo_scale(cairo.get(), units, units);
  draw_marks(cairo.get(), picture);
  cairo_show_page(cairo.get());
  check(cairo_status(cairo.get()));
}

void finish(cairo_surface_t* surface) {
  cairo_surface_finish(surface);
  check(cairo_surface_status(surface));
}

}  // namespace

std::string to_pdf(std::span<const Picture> pages, const About& about) {
  assert(!pages.empty());
  std::string bytes;
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &bytes, points(pages[0].width),
                                                            points(pages[0].height)));
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, about.title.c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, about.made.c_str());
  for (const Picture& page : pages) {
    cairo_pdf_surface_set_size(surface.get(), points(page.width), points(page.height));
    blank(surface.get());
    draw_on(surface.get(), page, points(1));
  }
  finish(surface.get());
  return bytes;
}

std::string to_svg(const Picture& picture) {
  std::string bytes;
  const Surface surface(cairo_svg_surface_create_for_stream(append, &bytes, points(picture.width),
                                                            points(picture.height)));
  draw_on(surface.get(), picture, points(1));
  finish(surface.get());
  return bytes;
}

std::string to_png(const Picture& picture, double dots) {
  const double units = dots / mm_per_inch;
  const Surface surface(cairo_image_surface_create(
      CAIRO_FORMAT_RGB24, static_cast<int>(std::ceil(picture.width * units)),
      static_cast<int>(std::ceil(picture.height * units))));
  blank(surface.get());
  draw_on(surface.get(), picture, units);
  std::string bytes;
  check(cairo_surface_write_to_png_stream(surface.get(), append, &bytes));
  return bytes;
}

}  // namespace loopwright::draw
