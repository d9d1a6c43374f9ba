// What the program and the module that reads elevation grids say to each other.
//
// Rules: private to read. The functions have C names, so that they are found in the module once it
// is loaded; nothing but plain values crosses, and nothing is thrown.
#pragma once

#include <cstddef>

namespace loopwright::read {

/// Where a grid lies: degrees of WGS 84, rows from north to south.
struct GridShape {
  double west = 0, north = 0;         ///< outer corner of the first cell
  double step_lon = 0, step_lat = 0;  ///< size of a cell, positive
  int columns = 0, rows = 0;
};

/// A buffer for one line of text.
struct ErrorText {
  char* text = nullptr;
  std::size_t size = 0;
};

/// Opens a file and fills the shape; null when that fails, with the reason.
using OpenGrid = void* (*)(const char* file, GridShape* shape, ErrorText error);
/// Heights of 2 columns and 2 rows from a cell on, NaN where there is none.
using ReadFour = void (*)(void* grid, int column, int row, float* four);
using CloseGrid = void (*)(void* grid);

inline constexpr const char* open_grid_name = "loopwright_open_grid";
inline constexpr const char* read_four_name = "loopwright_read_four";
inline constexpr const char* close_grid_name = "loopwright_close_grid";

}  // namespace loopwright::read
