#include "county/ground.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <string>

#include "county/heights_tile.hpp"
#include "support/scratch_folder.hpp"

using namespace loopwright;
using namespace loopwright::county;

namespace {

const std::array<Hill, 1> hill{{{.summit = spot(0, 0), .height_m = 50, .reach_m = 400}}};

/// What a program prints; empty when it fails.
std::string printed(const std::string& command) {
  std::string text;
  FILE* pipe = ::popen((command + " 2>/dev/null").c_str(), "r");
  if (pipe == nullptr) return text;
  std::array<char, 256> part{};
  while (std::fgets(part.data(), part.size(), pipe) != nullptr) text += part.data();
  return ::pclose(pipe) == 0 ? text : std::string();
}

}  // namespace

TEST_CASE("a plain lies twenty metres up, a hill stands on it", "[county]") {
  CHECK(height_m({}, spot(5, 5)) == 20);
  CHECK(height_m(hill, spot(0, 0)) == 70);
  CHECK(height_m(hill, spot(400, 0)) == Approx(20 + 50 / std::exp(1)));
}

TEST_CASE("a gradient is the road's own, up or down, and none when level", "[county]") {
  const std::array<Spot, 2> down{spot(0, 0), spot(400, 0)};
  const std::array<Spot, 2> up{spot(400, 0), spot(0, 0)};
  const std::array<Spot, 2> over{spot(-400, 0), spot(400, 0)};
  CHECK(incline_of(hill, down) == "-8%");
  CHECK(incline_of(hill, up) == "8%");
  CHECK_FALSE(incline_of(hill, over));
}

TEST_CASE("incline=auto becomes the gradient, or goes", "[county]") {
  Drawing county;
  county.hills.assign(hill.begin(), hill.end());
  county.lines.push_back({.points = {spot(0, 0), spot(400, 0)}, .tags = {{"incline", "auto"}}});
  county.lines.push_back({.points = {spot(5000, 0), spot(5400, 0)}, .tags = {{"incline", "auto"}}});
  county.lines.push_back({.points = {spot(0, 0), spot(400, 0)}, .tags = {{"incline", "up"}}});
  put_inclines(county);
  CHECK(county.lines[0].tags.at("incline") == "-8%");
  CHECK(county.lines[1].tags.empty());
  CHECK(county.lines[2].tags.at("incline") == "up");
}

TEST_CASE("a tile is named by its south-west corner", "[county]") {
  CHECK(tile_name(54.3, 2.6) == "N54E002.hgt");
  CHECK(tile_name(-0.5, -3.2) == "S01W004.hgt");
}

TEST_CASE("an outside reader finds the summit and the plain in the tile", "[county]") {
  const test::ScratchFolder folder;
  Drawing county{.origin_lat = 54.3, .origin_lon = 2.6};
  county.hills.assign(hill.begin(), hill.end());
  const auto file = write_heights(county, folder / "heights");
  CHECK(std::filesystem::file_size(file) == 2U * 1201 * 1201);
  if (printed("gdalinfo --version").empty()) return;  // GDAL's programs are checked where they are
  CHECK(printed("gdallocationinfo -valonly -wgs84 " + file.string() + " 2.6 54.3") == "70\n");
  CHECK(printed("gdallocationinfo -valonly -wgs84 " + file.string() + " 2.9 54.9") == "20\n");
  CHECK(printed("gdalinfo " + file.string()).find("Size is 1201, 1201") != std::string::npos);
}
