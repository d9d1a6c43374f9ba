#include "county/heights_tile.hpp"

#include <cmath>
#include <cstdint>

#include "county/files.hpp"
#include "county/ground.hpp"
#include "county/projection.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::county {
namespace {

constexpr int samples = 1201;  // a side, both edges included

std::string padded(int number, std::size_t digits) {
  const std::string text = std::to_string(number);
  return std::string(digits - std::min(digits, text.size()), '0') + text;
}

}  // namespace

std::string tile_name(double lat, double lon) {
  const int south = static_cast<int>(std::floor(lat));
  const int west = static_cast<int>(std::floor(lon));
  return (south < 0 ? "S" : "N") + padded(std::abs(south), 2) + (west < 0 ? "W" : "E") +
         padded(std::abs(west), 3) + ".hgt";
}

std::filesystem::path write_heights(const Drawing& county, const std::filesystem::path& folder) {
  const double north = std::floor(county.origin_lat) + 1;
  const double west = std::floor(county.origin_lon);
  const Projection flat(county.origin_lat, county.origin_lon);
  std::string bytes;
  bytes.reserve(std::size_t{2} * samples * samples);
  for (int row = 0; row < samples; ++row)
    for (int column = 0; column < samples; ++column) {
      const double lat = north - row / double(samples - 1);
      const double lon = west + column / double(samples - 1);
      const auto metres = static_cast<std::uint16_t>(
          std::lround(height_m(county.hills, spot(flat.x_m(lon), flat.y_m(lat)))));
      bytes += static_cast<char>(metres >> 8U);
      bytes += static_cast<char>(metres & 0xffU);
    }
  std::error_code failed;
  std::filesystem::create_directories(folder, failed);
  if (failed) throw InputError(folder.string() + ": the folder can't be made; name another");
  std::filesystem::path file = folder / tile_name(county.origin_lat, county.origin_lon);
  write_file(file, bytes);
  return file;
}

}  // namespace loopwright::county
