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
  [[nodiscard]] Widths of(PieceId piece) const;

 private:
  const Draft* draft_;
  MarkedNodes passing_places_;
};

}  // namespace loopwright::mark
