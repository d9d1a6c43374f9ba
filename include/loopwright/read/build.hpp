// From a map extract to the columns of an area.
//
//   Built b = build_area("town.osm.pbf", {.region = *find_region("GB-WLS")}, report, {});
//
// Rules: .osm.pbf, .osm, .osm.bz2, .osm.gz and .opl, sorted or not; throws InputError for a file
// that is missing, cut short, empty or no map. Nothing is dropped silently: see the report.
#pragma once

#include <filesystem>
#include <memory>

#include "loopwright/base/progress.hpp"
#include "loopwright/mark/heights.hpp"
#include "loopwright/mark/raw_map.hpp"
#include "loopwright/read/outline.hpp"
#include "loopwright/road/report.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::read {

struct BuildOptions {
  Region region;
  bool motorways = false;      ///< loops may use motorways
  bool fords = false;          ///< loops may use fords
  mark::HeightSource heights;  ///< of the ground (read/heights.hpp); empty: by tags alone
  std::shared_ptr<const Outline> outline = {};  ///< what of the extract is read; none: all of it
};

struct Built {
  road::Tables tables;
  road::AreaInfo info;  ///< id not yet known
};

Built build_area(const std::filesystem::path& extract, const BuildOptions& options,
                 road::Report& report, const Progress& progress);

/// Only the reading: everything of the extract that the rules need. outline: only what it sees; none: all. A way of
/// which any point is seen is read whole.
mark::RawMap scan_map(const std::filesystem::path& extract, const Progress& progress,
                      const Outline* outline = nullptr);

/// Only the assembly: graph, turn rules, then all marking rules. Pure.
Built assemble(const mark::RawMap& raw, const BuildOptions& options, road::Report& report,
               const Progress& progress);

}  // namespace loopwright::read
