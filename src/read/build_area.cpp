// Reads, then assembles; an extract none of whose roads a learner may drive is refused.
#include <algorithm>

#include "loopwright/base/error.hpp"
#include "loopwright/read/build.hpp"

namespace loopwright::read {

Built build_area(const std::filesystem::path& extract, const BuildOptions& options,
                 road::Report& report, const Progress& progress) {
  const mark::RawMap raw = scan_map(extract, progress, options.outline.get());
  Built built = assemble(raw, options, report, progress);
  const bool any = std::ranges::any_of(built.tables.stretches, [](const road::Stretch& stretch) {
    return (stretch.flags & road::stretch_flag::drivable) != 0;
  });
  if (!any) {
    throw InputError(
        extract.string() + ": holds no road a learner may drive" +
        (options.outline ? " inside that outline; choose another" : "; choose another extract"));
  }
  built.info.source_file = extract.filename().string();
  return built;
}

}  // namespace loopwright::read
