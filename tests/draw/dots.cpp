// The PNG is read back by Cairo; a dot is dark when it is darker than the middle of black and white.
#include "draw/dots.hpp"

#include <cairo.h>

#include <algorithm>
#include <cstring>
#include <memory>
#include <stdexcept>

#include "loopwright/draw/render.hpp"

namespace loopwright::test {
namespace {

struct Closer {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};

cairo_status_t read(void* rest, unsigned char* bytes, unsigned count) {
  auto& text = *static_cast<std::string_view*>(rest);
  if (text.size() < count) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(bytes, text.data(), count);
  text.remove_prefix(count);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

double Dots::share() const {
  return static_cast<double>(std::count(dark.begin(), dark.end(), true)) /
         static_cast<double>(dark.size());
}

Dots dark_dots(const draw::Picture& picture, double dots_per_inch) {
  const std::string png = draw::to_png(picture, dots_per_inch);
  std::string_view rest = png;
  const std::unique_ptr<cairo_surface_t, Closer> surface(
      cairo_image_surface_create_from_png_stream(read, &rest));
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error("a PNG that can't be read back");
  cairo_surface_flush(surface.get());
  Dots dots;
  dots.width = static_cast<std::size_t>(cairo_image_surface_get_width(surface.get()));
  dots.height = static_cast<std::size_t>(cairo_image_surface_get_height(surface.get()));
  const unsigned char* row = cairo_image_surface_get_data(surface.get());
  for (std::size_t y = 0; y < dots.height; ++y) {
    // Four bytes a dot; the second is green (Cairo's RGB24 on either byte order).
    for (std::size_t x = 0; x < dots.width; ++x) dots.dark.push_back(row[4 * x + 1] < 128);
    row += cairo_image_surface_get_stride(surface.get());
  }
  return dots;
}

double differing(const Dots& a, const Dots& b) {
  std::size_t either = 0, one = 0;
  for (std::size_t i = 0; i < a.dark.size(); ++i) {
    either += a.dark[i] || b.dark[i] ? 1 : 0;
    one += a.dark[i] != b.dark[i] ? 1 : 0;
  }
  return static_cast<double>(one) / static_cast<double>(std::max<std::size_t>(either, 1));
}

}  // namespace loopwright::test
