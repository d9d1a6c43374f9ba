// A drive that was found before, at another start: whether it still does all that its wish asks for.
//
//   const KeptDrive now = kept_drive(roads, wish, loop, setting);   if (now.loop) use(*now.loop); else tell(now.why_not);
//
// Rules: the wish is that of the drive, but for its start and what streets were driven meanwhile; the loop is resolved on
// these roads. Only a drive that does all of it counts: in its minutes, its wants met, its stops placed, nothing kept off, shut
// or worn out on it. Lessons in parts and own drives are laid out by their times, and so never kept. No bound is claimed.
// Why: who has learned a sheet by heart wants the same drive half an hour later, not the best one.
#pragma once

#include <optional>
#include <string>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct KeptDrive {
  std::optional<wish::Loop>
      loop;             ///< the same road, with the times, passes and verdicts of its start
  std::string why_not;  ///< a part of a sentence: "Fore Street is shut …"; empty with a loop
};

/// Throws UsageError when home or end is off the roads.
KeptDrive kept_drive(const road::Roads& roads, const wish::Wish& wish, const wish::Loop& loop,
                     const hours::Setting& setting);

}  // namespace loopwright::find
