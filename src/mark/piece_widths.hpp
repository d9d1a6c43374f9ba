// Widths of a piece: what its way's tags say, and the passing places drawn on the way.
//
// Rules: private to mark.
#pragma once

#include "loopwright/mark/rules.hpp"
#include "marked_nodes.hpp"

namespace loopwright::mark {

class PieceWidths {
 public:
  explicit PieceWidths(const Draft& draft);
  /// Until it is asked again. Pieces of one way in a row are read once.
  [[nodiscard]] const Widths& of(PieceId piece);

 private:
  [[nodiscard]] Widths read(const RawWay& way, road::RoadClass road_class) const;

  const Draft* draft_;
  MarkedNodes passing_places_;
  const RawWay* way_ = nullptr;  // the last one that was read
  Widths widths_;
};

}  // namespace loopwright::mark
