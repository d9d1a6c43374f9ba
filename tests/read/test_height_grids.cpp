#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <fstream>

#include "loopwright/base/error.hpp"
#include "loopwright/read/heights.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright::read {
namespace {

namespace fs = std::filesystem;
using Catch::Matchers::Equals;

const fs::path module_file = LOOPWRIGHT_HEIGHTS_MODULE;

std::string complaint(const std::vector<fs::path>& grids, const fs::path& module) {
  try {
    open_heights(grids, module);
  } catch (const InputError& error) {
    return error.what();
  }
  return "none";
}

/// A tile of 3 seconds as SRTM has them: 1201 rows from the north, heights of two bytes, the higher
/// first; the outermost rows and columns are the whole degrees themselves.
template <class Height>
void write_hgt(const fs::path& file, Height height) {
  constexpr int cells = 1201;
  std::ofstream out(file, std::ios::binary);
  for (int row = 0; row < cells; ++row) {
    for (int column = 0; column < cells; ++column) {
      const int metres = height(row, column);
      out.put(static_cast<char>((metres >> 8) & 0xff)).put(static_cast<char>(metres & 0xff));
    }
  }
}

/// 10 m a row to the south and 1 m a column to the east, from 100 m.
int slope(int row, int column) {
  return 100 + row * 10 + column;
}

double height_at(const mark::HeightSource& heights, double lat, double lon) {
  return heights(point_from_degrees(lat, lon)).value_or(-9999);
}

/// Within what a point's own rounding to 1e-7 degree does on these slopes.
Approx metres(double expected) {
  return Approx(expected).margin(0.01);
}

/// What GDAL's own program says of the nearest cell.
std::string location_info(const fs::path& file, const std::string& lon_lat) {
  const std::string command = "gdallocationinfo -valonly -wgs84 " + file.string() + " " + lon_lat;
  FILE* pipe = popen(command.c_str(), "r");
  std::array<char, 100> line{};
  if (pipe != nullptr && std::fgets(line.data(), line.size(), pipe) == nullptr) line[0] = 0;
  if (pipe != nullptr) pclose(pipe);
  std::string text(line.data());
  std::erase(text, '\n');
  return text;
}

TEST_CASE("heights lie on the seconds of an SRTM tile, and between them by proportion", "[read]") {
  const test::ScratchFolder folder;
  const fs::path tile = folder.path() / "N51W003.hgt";
  write_hgt(tile, slope);
  const mark::HeightSource heights = open_heights(std::array{tile}, module_file);
  CHECK(height_at(heights, 52, -3) == metres(100));                   // the north-western corner
  CHECK(height_at(heights, 51, -2) == metres(100 + 12000 + 1200));    // the south-eastern
  CHECK(height_at(heights, 51.5, -2.5) == metres(100 + 6000 + 600));  // a cell in the middle
  const double third = 1.0 / 1200;
  CHECK(height_at(heights, 51.5, -2.5 + third / 2) == Approx(6700.5).margin(0.01));
  CHECK(height_at(heights, 51.5 - third / 4, -2.5) == Approx(6702.5).margin(0.01));
}

TEST_CASE("GDAL's own program finds the same heights", "[read]") {
  const test::ScratchFolder folder;
  const fs::path tile = folder.path() / "N51W003.hgt";
  write_hgt(tile, [](int row, int column) { return (row * 7 + column * 13) % 900; });
  const mark::HeightSource heights = open_heights(std::array{tile}, module_file);
  for (const auto& [column, row] : {std::pair{0, 0}, {1200, 1200}, {37, 911}, {600, 1}}) {
    const double lat = 52 - row / 1200.0, lon = -3 + column / 1200.0;
    const std::string theirs = location_info(tile, std::to_string(lon) + " " + std::to_string(lat));
    REQUIRE_FALSE(theirs.empty());
    CHECK(height_at(heights, lat, lon) == Approx(std::stod(theirs)).margin(0.01));
  }
  CHECK(location_info(tile, "-2.5 51.5") == std::to_string((600 * 7 + 600 * 13) % 900));
}

TEST_CASE("a hole in a grid and the world beside it are unknown", "[read]") {
  const test::ScratchFolder folder;
  write_hgt(folder.path() / "N51W003.hgt",
            [](int row, int column) { return row == 600 && column == 600 ? -32768 : 50; });
  const mark::HeightSource heights = open_heights(std::array{folder.path()}, module_file);
  CHECK(height_at(heights, 51.4, -2.4) == metres(50));
  CHECK_FALSE(heights(point_from_degrees(51.5, -2.5)));
  CHECK_FALSE(heights(point_from_degrees(51.50001, -2.50001)));  // a quarter of it is the hole
  CHECK_FALSE(heights(point_from_degrees(52.5, -2.5)));
  CHECK_FALSE(heights(point_from_degrees(51.5, -1.5)));
}

TEST_CASE("the tiles of a folder are joined, and one fills another's holes", "[read]") {
  const test::ScratchFolder folder;
  fs::create_directory(folder.path() / "more");
  write_hgt(folder.path() / "N51W003.hgt", [](int, int) { return 10; });
  write_hgt(folder.path() / "more" / "N51W004.hgt", [](int, int) { return 20; });
  std::ofstream(folder.path() / "readme.txt") << "not a grid";
  const mark::HeightSource heights = open_heights(std::array{folder.path()}, module_file);
  CHECK(height_at(heights, 51.5, -2.5) == metres(10));
  CHECK(height_at(heights, 51.5, -3.5) == metres(20));
  CHECK(height_at(heights, 51.5, -3) == metres(10));  // on both: the first by name
}

TEST_CASE("a GeoTIFF is read too, up to its edge", "[read]") {
  const test::ScratchFolder folder;
  const fs::path tile = folder.path() / "N51W003.hgt", tiff = folder.path() / "part.tif";
  write_hgt(tile, slope);
  const std::string command =
      "gdal_translate -q -srcwin 100 200 50 40 " + tile.string() + " " + tiff.string();
  REQUIRE(std::system(command.c_str()) == 0);
  const mark::HeightSource heights = open_heights(std::array{tiff}, module_file);
  const double lat = 52 - 200 / 1200.0, lon = -3 + 100 / 1200.0;
  CHECK(height_at(heights, lat, lon) == metres(100 + 2000 + 100));
  CHECK(height_at(heights, lat + 0.4 / 1200, lon) == metres(2200));  // within the outermost cell
  CHECK_FALSE(heights(point_from_degrees(lat + 0.6 / 1200, lon)));
}

TEST_CASE("a grid in a national system is brought to degrees", "[read]") {
  const test::ScratchFolder folder;
  const fs::path tile = folder / "N51W003.hgt", national = folder / "national.tif";
  write_hgt(tile, [](int row, int column) { return row / 4 + column / 8; });
  const std::string command = "gdalwarp -q -t_srs EPSG:27700 -te 330000 180000 340000 190000 " +
                              tile.string() + " " + national.string();
  REQUIRE(std::system(command.c_str()) == 0);
  const mark::HeightSource degrees = open_heights(std::array{tile}, module_file);
  const mark::HeightSource warped = open_heights(std::array{national}, module_file);
  for (const auto& [lat, lon] : {std::pair{51.55, -2.95}, {51.58, -2.92}, {51.53, -2.9}}) {
    CHECK(height_at(warped, lat, lon) == Approx(height_at(degrees, lat, lon)).margin(1));
  }
  CHECK_FALSE(warped(point_from_degrees(51.9, -2.95)));
}

TEST_CASE("what is no elevation grid is refused in one line", "[read]") {
  const test::ScratchFolder folder;
  CHECK_THAT(complaint({folder.path() / "dem"}, module_file),
             Equals((folder.path() / "dem").string() +
                    ": no such file or folder; give an elevation grid or a folder of them"));
  CHECK_THAT(
      complaint({folder.path()}, module_file),
      Equals(folder.path().string() + ": holds no elevation grid (.hgt, .tif, .asc, .vrt, .zip)"));
  const fs::path text = folder.path() / "notes.asc";
  std::ofstream(text) << "Lantern Row is steep\n";
  CHECK_THAT(
      complaint({text}, module_file),
      Catch::Matchers::StartsWith(text.string() + ": can't be read as an elevation grid (") &&
          Catch::Matchers::EndsWith("; give .hgt or GeoTIFF files"));
}

TEST_CASE("a grid that doesn't say where it lies is refused", "[read]") {
  const test::ScratchFolder folder;
  const fs::path grid = folder.path() / "local.asc";
  std::ofstream(grid) << "ncols 2\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 50\n1 2\n3 4\n";
  CHECK_THAT(complaint({grid}, module_file),
             Equals(grid.string() + ": can't be read as an elevation grid (it doesn't say where on "
                                    "the earth it lies); give .hgt or GeoTIFF files"));
}

}  // namespace
}  // namespace loopwright::read
