// Draws the marks of a picture with Cairo.
#pragma once

#include <cairo.h>

#include "loopwright/draw/picture.hpp"

namespace loopwright::draw {

/// Rules: one unit of the surface is a millimetre. Throws InputError.
void draw_marks(cairo_t* cairo, const Picture& picture);

}  // namespace loopwright::draw
