// What parking tags forbid at the near kerb of every stretch one may drive, also where no place to
// pull up is kept: a drive ends at its door, whatever kerb that is.
// Source: OSM wiki, page Street parking; Highway Code rules 238 and 240 (kerb.cpp reads the tags).
#include "kerb.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

void mark_kerb_bans(Draft& draft) {
  std::vector<road::KerbBan> found;
  for (std::size_t row = 0; row < draft.tables.stretches.size(); ++row) {
    const StretchId stretch{row};
    if ((draft.tables.stretches[row].flags & road::stretch_flag::drivable) == 0) continue;
    const Kerb kerb = kerb_of(draft.way_tags(stretch.piece()), near_side(draft.side(), stretch));
    if (!kerb.ban) continue;
    found.push_back({stretch,
                     draft.text(kerb.ban->hours),
                     draft.text(kerb.ban->source),
                     static_cast<std::uint8_t>(kerb.ban->no_stopping ? 1 : 0),
                     {}});
  }
  if (!found.empty())
    draft.report.count("kerbs where waiting is forbidden, or is at some hours",
                       static_cast<std::int64_t>(found.size()));
  draft.tables.kerb_bans = std::move(found);
}

}  // namespace loopwright::mark
