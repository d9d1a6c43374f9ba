// Method: what isn't a junction has a drawing of its own: setting off, pulling up.
#include "card/row_shape.hpp"

namespace loopwright::card {

draw::Picture shape_of(const Subject& subject, const Entry& entry, draw::Size size) {
  const Side driving = subject.roads.info().region.side;
  const say::Row& row = subject.rows[entry.row];
  if (entry.kind == EntryKind::stop || row.kind == say::RowKind::pull_up)
    return draw::pull_up_shape(driving, driving, size);
  if (row.kind == say::RowKind::leave) return draw::set_off_shape(driving, size);
  return draw::row_shape(subject.roads, subject.loop, {row.stretch, row.exit}, size);
}

}  // namespace loopwright::card
