// Reads, assembles, then lays the rows along a curve; an extract none of whose roads a learner may drive is refused.
#include <algorithm>

#include "along_curve.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/read/build.hpp"

namespace loopwright::read {

Built build_area(const std::filesystem::path& extract, const BuildOptions& options,
                 road::Report& report, const Progress& progress) {
  Built built =
      assemble(scan_map(extract, progress, options.outline.get()), options, report, progress);
  const bool any = std::ranges::any_of(built.tables.stretches, [](const road::Stretch& stretch) {
    return (stretch.flags & road::stretch_flag::drivable) != 0;
  });
  if (!any) {
    throw InputError(
        extract.string() + ": holds no road a learner may drive" +
        (options.outline ? " inside that outline; choose another" : "; choose another extract"));
  }
  lay_along_curve(built.tables);
  built.info.source_file = extract.filename().string();
  return built;
}

}  // namespace loopwright::read
