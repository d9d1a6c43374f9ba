// The module loopwright_heights: elevation grids through GDAL, which knows their formats.
//
// 1. A grid that lies north up in degrees is read as it is (ETRS 89, NAD 83 … differ from WGS 84 by
//    a metre or two, less than a cell). Any other is warped to WGS 84 by GDAL while it is read.
// 2. A grid that doesn't say where on the earth it lies is refused.
// 3. Heights are asked for four at a time; GDAL keeps the blocks it read last.
// 4. Holes are what the grid calls "no data", and -32768, which SRTM tiles use without saying so.
#include <cpl_conv.h>
#include <cpl_error.h>
#include <gdal.h>
#include <gdalwarper.h>
#include <ogr_srs_api.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <limits>
#include <memory>

#include "heights_module.hpp"

namespace loopwright::read {
namespace {

constexpr float srtm_hole = -32768;
constexpr int least_cells = 2;

class OpenedGrid {
 public:
  OpenedGrid() = default;
  OpenedGrid(const OpenedGrid&) = delete;
  OpenedGrid& operator=(const OpenedGrid&) = delete;
  ~OpenedGrid() {
    if (warped != nullptr) GDALClose(warped);
    if (file != nullptr) GDALClose(file);
  }
  [[nodiscard]] GDALRasterBandH band() const {
    return GDALGetRasterBand(warped != nullptr ? warped : file, 1);
  }

  GDALDatasetH file = nullptr, warped = nullptr;
};

/// The first line of it.
void say(ErrorText error, const char* what) {
  const auto line = static_cast<int>(std::strcspn(what, "\n"));
  std::snprintf(error.text, error.size, "%.*s", line, what);
}

bool is_in_degrees_north_up(GDALDatasetH file, const std::array<double, 6>& place) {
  OGRSpatialReferenceH system = GDALGetSpatialRef(file);
  return OSRIsGeographic(system) != 0 && place[2] == 0 && place[4] == 0 && place[1] > 0 &&
         place[5] < 0;
}

/// WGS 84 in the text form that warping takes; freed by the caller.
char* wgs84_text() {
  OGRSpatialReferenceH system = OSRNewSpatialReference(nullptr);
  OSRImportFromEPSG(system, 4326);
  char* text = nullptr;
  OSRExportToWkt(system, &text);
  OSRDestroySpatialReference(system);
  return text;
}

GDALDatasetH warped_to_degrees(GDALDatasetH file) {
  char* target = wgs84_text();
  GDALDatasetH warped = GDALAutoCreateWarpedVRT(file, nullptr, target, GRA_Bilinear, 0, nullptr);
  CPLFree(target);
  return warped;
}

const char* last_reason() {
  const char* reason = CPLGetLastErrorMsg();
  return *reason != '\0' ? reason : "its format is unknown";
}

/// Opens and places the file; what is wrong with it, or null.
const char* open_placed(const char* name, OpenedGrid& grid, GridShape& shape) {
  grid.file = GDALOpen(name, GA_ReadOnly);
  if (grid.file == nullptr) return last_reason();
  if (GDALGetRasterCount(grid.file) < 1) return "it holds no grid";
  std::array<double, 6> place{};
  const bool placed = GDALGetGeoTransform(grid.file, place.data()) == CE_None;
  if (!placed || GDALGetSpatialRef(grid.file) == nullptr) {
    return "it doesn't say where on the earth it lies";
  }
  if (!is_in_degrees_north_up(grid.file, place)) {
    grid.warped = warped_to_degrees(grid.file);
    if (grid.warped == nullptr) return last_reason();
    GDALGetGeoTransform(grid.warped, place.data());
  }
  shape = {place[0],
           place[3],
           place[1],
           -place[5],
           GDALGetRasterBandXSize(grid.band()),
           GDALGetRasterBandYSize(grid.band())};
  return shape.columns < least_cells || shape.rows < least_cells ? "it is too small" : nullptr;
}

}  // namespace
}  // namespace loopwright::read

extern "C" {

void* loopwright_open_grid(const char* file, loopwright::read::GridShape* shape,
                           loopwright::read::ErrorText error) {
  GDALAllRegister();
  CPLPushErrorHandler(CPLQuietErrorHandler);
  CPLErrorReset();
  auto grid = std::make_unique<loopwright::read::OpenedGrid>();
  const char* wrong = loopwright::read::open_placed(file, *grid, *shape);
  if (wrong != nullptr) loopwright::read::say(error, wrong);
  CPLPopErrorHandler();
  return wrong == nullptr ? grid.release() : nullptr;
}

void loopwright_read_four(void* opened, int column, int row, float* four) {
  const auto* grid = static_cast<loopwright::read::OpenedGrid*>(opened);
  GDALRasterBandH band = grid->band();
  int has_hole = 0;
  const auto hole = static_cast<float>(GDALGetRasterNoDataValue(band, &has_hole));
  const double scale = GDALGetRasterScale(band, nullptr),
               offset = GDALGetRasterOffset(band, nullptr);
  const bool read =
      GDALRasterIO(band, GF_Read, column, row, 2, 2, four, 2, 2, GDT_Float32, 0, 0) == CE_None;
  for (float* height = four; height != four + 4; ++height) {
    const bool missing =
        !read || *height == loopwright::read::srtm_hole || (has_hole != 0 && *height == hole);
    *height = missing ? std::numeric_limits<float>::quiet_NaN()
                      : static_cast<float>(static_cast<double>(*height) * scale + offset);
  }
}

void loopwright_close_grid(void* opened) {
  delete static_cast<loopwright::read::OpenedGrid*>(opened);
}

}  // extern "C"
