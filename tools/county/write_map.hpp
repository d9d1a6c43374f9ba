// Counties as one file of map objects, of any number of them: each is written and forgotten.
//
//   MapFile file("out/many.osm.pbf");
//   file.add(county, {});
//   file.finish();
//
// Rules: .osm.pbf or .opl by the name. Objects are sorted by type and id; ids start at
// 9,000,000,000,001 (nodes), 9,100,… (ways), 9,200,… (relations), where no real map object lies, and
// 10,000,000 higher for each county. Nothing of the name stands until finish() has renamed it.
// Why: a file has all nodes before all ways, so each kind goes to a spool beside the file first and
// the spools are joined at the end; what is in memory is one county.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <unordered_map>

#include "county/drawing.hpp"

namespace loopwright::county {

/// The four sides of a county, where it meets others.
enum class Side { west, south, east, north };

/// Which county it is, and which of its points are the neighbours' too.
struct CountyPlace {
  std::int64_t number = 0;                ///< 0 for the first; below 9000
  std::map<Spot, Side> borders{};         ///< points on a side
  std::map<Side, std::int64_t> beyond{};  ///< number of the county on that side, added before
};

/// What was written; for people.
struct Written {
  std::int64_t nodes = 0, ways = 0, relations = 0;
  std::int64_t car_ways = 0;  ///< roads, service roads and rings
  double car_km = 0;
  std::int64_t joined = 0;  ///< points that two counties share
};

class MapFile {
 public:
  /// Throws UsageError when the name tells no format, InputError when a spool can't be written.
  explicit MapFile(const std::filesystem::path& file);
  /// Removes spools and an unfinished file.
  ~MapFile();
  MapFile(const MapFile&) = delete;
  MapFile& operator=(const MapFile&) = delete;

  /// Throws InputError when it can't be written. Rules: numbers ascend.
  void add(const Drawing& county, const CountyPlace& place);
  /// Joins the spools and gives the file its name. Throws InputError.
  Written finish();

 private:
  class Spools;
  std::unique_ptr<Spools> spools_;
};

}  // namespace loopwright::county
