// One sheet of the overview map while it is made: the whole, or a part of it shown larger.
//
// Rules: what goes to other sheets is settled (lead_out, leave_to, frame_part) before finished().
#pragma once

#include <set>
#include <string>
#include <vector>

#include "draw/map_parts.hpp"
#include "draw/numbers.hpp"
#include "draw/taken.hpp"
#include "draw/town_roads.hpp"
#include "draw/way_ink.hpp"

namespace loopwright::draw {

/// What a sheet of the overview doesn't show itself.
struct Elsewhere {
  std::string no_room;     ///< numbers that stand on no page
  std::string start_part;  ///< the part that shows the start
};

class OverviewSheet {
 public:
  /// Rules: all but the frame outlive the sheet.
  OverviewSheet(const road::Roads& roads, const wish::Loop& loop, const OverviewAsked& asked,
                const say::Words& words, const MapFrame& frame);

  /// Junctions whose numbers found no room, or only before an earlier junction.
  [[nodiscard]] std::vector<Crowded> crowded() const;
  /// Junctions whose numbers found no room, beside the way neither; after lead_out(). One alone isn't worth a
  /// page more.
  [[nodiscard]] std::vector<Crowded> still_crowded() const;
  /// All numbers that stand on this page, after lead_out().
  [[nodiscard]] std::set<std::string> placed() const;
  /// Puts numbers that found no room in the way beside it, where there is some; before finished().
  void lead_out();
  /// Leaves to a part that is shown larger elsewhere, with these numbers, what finds no good place here:
  /// within the part nothing stands apart from its junction on this page; it is right there, or nowhere.
  void leave_to(const MapFrame& part, const std::set<std::string>& there);
  /// Frames a part; after all is left to the parts, before finished().
  void frame_part(const MapFrame& part, const std::string& name);
  /// "2, 3": numbers that found no room.
  [[nodiscard]] std::string left_out() const;
  /// A letter just inside the upper left corner of a box, or as near to it as there is room.
  void write_name(Spot corner, const std::string& name);
  Picture finished(const Elsewhere& elsewhere);
  [[nodiscard]] const MapFrame& frame() const { return frame_; }
  /// The word stands at the start; after finished().
  [[nodiscard]] bool shows_start() const { return shows_start_; }

 private:
  void take_way();
  [[nodiscard]] Spot junction_of(const Numbered& number) const;
  [[nodiscard]] bool stands_apart_in(const Box& box, const SetNumber& one) const;

  const road::Roads& roads_;
  const wish::Loop& loop_;
  const OverviewAsked& asked_;
  const say::Words& words_;
  MapFrame frame_;
  std::vector<Ring> rings_;
  Way way_;
  Taken taken_;
  Picture page_;
  std::vector<TownRoad> town_;
  SetNumbers numbers_;
  std::set<std::string> led_;  ///< numbers beside the way
  std::string start_;          ///< "start", after the numbers of rows that are said at the door
  bool shows_start_ = false;
};

}  // namespace loopwright::draw
