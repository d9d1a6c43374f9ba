// Elevation grids as a source of heights.
//
//   BuildOptions options{.heights = open_heights(files, "/usr/lib/loopwright/loopwright_heights.so")};
//
// Rules: a grid is a file, or a folder that is searched with its folders (.hgt, .tif, .tiff, .asc,
// .vrt, .zip). Where grids lie over each other the first given that knows a height tells it; files
// of a folder are in order of name. Throws InputError for what is missing or can't be read.
// Why a module of its own: the library that reads grids (GDAL) brings some hundred others with it,
// and every start of a program linked with it takes longer than planning a loop.
#pragma once

#include <filesystem>
#include <span>

#include "loopwright/mark/heights.hpp"

namespace loopwright::read {

/// `module`: the file loopwright_heights.so of this build.
mark::HeightSource open_heights(std::span<const std::filesystem::path> grids,
                                const std::filesystem::path& module);

}  // namespace loopwright::read
