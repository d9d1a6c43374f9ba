// 1. New rows of nodes, pieces and places, and with the pieces those of stretches and states (copies keep theirs).
// 2. Each column that has such rows is put in their order; then each row number in any column is told the new one.
// 3. Columns that follow others (adjacency, paths of chances, the grid, the rows by id) are laid out anew.
// A list that ascended ascends again: whoever reads it may search it by halving. Lists in driving order stay so.
#include "along_curve.hpp"

#include <algorithm>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "adjacency.hpp"
#include "loopwright/base/at_once.hpp"
#include "loopwright/base/curve.hpp"
#include "loopwright/mark/row_order.hpp"
#include "loopwright/road/by_id.hpp"

namespace loopwright::read {
namespace {

/// Rows before and after, each by the other.
struct Moved {
  std::vector<std::uint32_t> old_of, new_of;
};

using Key = std::pair<std::uint64_t, std::uint32_t>;  ///< where a row belongs, and the row

Moved by_key(std::vector<Key> keys) {
  std::ranges::sort(keys);
  Moved moved;
  moved.old_of.reserve(keys.size());
  moved.new_of.resize(keys.size());
  for (const auto& [key, row] : keys) {
    moved.new_of[row] = static_cast<std::uint32_t>(moved.old_of.size());
    moved.old_of.push_back(row);
  }
  return moved;
}

template <class Row, class KeyOf>
Moved order_of_rows(const std::vector<Row>& rows, KeyOf key_of) {
  std::vector<Key> keys;
  keys.reserve(rows.size());
  for (std::size_t row = 0; row < rows.size(); ++row)
    keys.emplace_back(key_of(rows[row]), static_cast<std::uint32_t>(row));
  return by_key(std::move(keys));
}

Moved order_of_pieces(const road::Tables& tables) {
  std::vector<Key> keys;
  keys.reserve(tables.pieces.size());
  for (std::size_t row = 0; row < tables.pieces.size(); ++row) {
    const road::Piece& piece = tables.pieces[row];
    const bool goes_on = row > 0 && tables.pieces[row - 1].way == piece.way;
    keys.emplace_back(
        goes_on ? keys.back().first : place_on_curve(tables.nodes[piece.a.index()].at),
        static_cast<std::uint32_t>(row));
  }
  return by_key(std::move(keys));
}

template <class Row>
void put_in_order(std::vector<Row>& rows, const std::vector<std::uint32_t>& old_of) {
  std::vector<Row> ordered;
  ordered.reserve(rows.size());
  for (const std::uint32_t old : old_of) ordered.push_back(rows[old]);
  rows = std::move(ordered);
}

/// Lists of each owner, `first` holding where they begin and end, in the owners' new order.
template <class Item>
void put_lists_in_order(std::vector<std::uint32_t>& first, std::vector<Item>& items,
                        const std::vector<std::uint32_t>& old_of) {
  std::vector<std::uint32_t> new_first{0};
  std::vector<Item> ordered;
  new_first.reserve(first.size());
  ordered.reserve(items.size());
  for (const std::uint32_t old : old_of) {
    ordered.insert(ordered.end(), items.begin() + first[old], items.begin() + first[old + 1]);
    new_first.push_back(static_cast<std::uint32_t>(ordered.size()));
  }
  first = std::move(new_first), items = std::move(ordered);
}

class Layout {
 public:
  explicit Layout(road::Tables& tables)
      : tables_(tables),
        nodes_(order_of_rows(tables.nodes,
                             [](const road::Node& node) { return place_on_curve(node.at); })),
        pieces_(order_of_pieces(tables)),
        places_(order_of_rows(
            tables.places, [](const road::Place& place) { return road::grid_cell(place.at); })) {}
  void lay_roads();
  void lay_turns();
  void lay_places();
  void lay_practice();
  void lay_facts();

 private:
  void tell(NodeId& id) const { tell_row(id, nodes_); }
  void tell(PieceId& id) const { tell_row(id, pieces_); }
  void tell(PlaceId& id) const { tell_row(id, places_); }
  void tell(StretchId& id) const {
    if (id.known()) id = {PieceId{std::size_t{pieces_.new_of[id.piece().index()]}}, id.against()};
  }
  void tell(StateId& id) const {
    if (id.index() >= tables_.stretches.size()) return;  // a copy
    StretchId stretch{id.index()};
    tell(stretch);
    id = StateId{stretch.index()};
  }
  template <class Id>
  static void tell_row(Id& id, const Moved& moved) {
    if (id.known()) id = Id{std::size_t{moved.new_of[id.index()]}};
  }
  void tell_all(auto& ids) const {
    for (auto& id : ids) tell(id);
  }
  /// Rows with a stretch, in the order of some of their values.
  void lay_by(auto& rows, auto order) const {
    for (auto& row : rows) tell(row.stretch);
    std::ranges::stable_sort(rows, {}, order);
  }
  /// Lists of row numbers, each in its own order or ascending as before.
  void tell_lists(const std::vector<std::uint32_t>& first, auto& ids) const {
    for (std::size_t owner = 0; owner + 1 < first.size(); ++owner) {
      const auto list = std::span(ids).subspan(first[owner], first[owner + 1] - first[owner]);
      const bool ascends = std::ranges::is_sorted(list);
      for (auto& id : list) tell(id);
      if (ascends) std::ranges::sort(list);
    }
  }
  /// Rows of states in their new order, by their old rows.
  [[nodiscard]] std::vector<std::uint32_t> old_states() const;

  road::Tables& tables_;
  Moved nodes_, pieces_, places_;
};

std::vector<std::uint32_t> Layout::old_states() const {
  std::vector<std::uint32_t> old_of;
  old_of.reserve(tables_.stretches.size() + tables_.copies.size());
  for (const std::uint32_t piece : pieces_.old_of)
    old_of.insert(old_of.end(), {2 * piece, 2 * piece + 1});
  for (std::size_t copy = 0; copy < tables_.copies.size(); ++copy)
    old_of.push_back(static_cast<std::uint32_t>(tables_.stretches.size() + copy));
  return old_of;
}

void Layout::lay_turns() {
  const std::vector<std::uint32_t> old_of = old_states();
  put_lists_in_order(tables_.turn_first, tables_.turns, old_of);
  for (road::Turn& turn : tables_.turns) tell(turn.to);
  tell_all(tables_.copies);
  tell_all(tables_.rule_path);
  put_in_order(
      tables_.stretches,
      {old_of.begin(), old_of.begin() + static_cast<std::ptrdiff_t>(tables_.stretches.size())});
}

void Layout::lay_roads() {
  put_in_order(tables_.nodes, nodes_.old_of);
  put_in_order(tables_.pieces, pieces_.old_of);
  std::vector<Point> shape;
  shape.reserve(tables_.shape.size());
  for (road::Piece& piece : tables_.pieces) {
    const auto line = std::span(tables_.shape).subspan(piece.shape_first, piece.shape_count);
    piece.shape_first = static_cast<std::uint32_t>(shape.size());
    shape.insert(shape.end(), line.begin(), line.end());
    tell(piece.a), tell(piece.b);
  }
  tables_.shape = std::move(shape);
  list_leaving(tables_);
  road::list_by_id(tables_);
  for (road::GridEntry& entry : tables_.grid) tell(entry.piece);
  std::ranges::sort(tables_.grid, {}, [](const road::GridEntry& entry) {
    return std::pair(entry.cell, entry.piece);
  });
}

void Layout::lay_places() {
  put_in_order(tables_.places, places_.old_of);
  put_lists_in_order(tables_.place_node_first, tables_.place_nodes, places_.old_of);
  put_lists_in_order(tables_.place_piece_first, tables_.place_pieces, places_.old_of);
  tell_lists(tables_.place_node_first, tables_.place_nodes);
  tell_lists(tables_.place_piece_first, tables_.place_pieces);
  for (road::Arm& arm : tables_.arms) tell(arm.place), tell(arm.in), tell(arm.out);
}

void Layout::lay_practice() {
  for (road::Chance& chance : tables_.chances)
    tell(chance.place), tell(chance.entry), tell(chance.exit);
  std::ranges::sort(tables_.chances, mark::comes_before);
  std::vector<StretchId> paths;
  paths.reserve(tables_.chance_path.size());
  for (road::Chance& chance : tables_.chances) {
    const auto path = std::span(tables_.chance_path).subspan(chance.path_first, chance.path_count);
    chance.path_first = static_cast<std::uint32_t>(paths.size());
    paths.insert(paths.end(), path.begin(), path.end());
  }
  tables_.chance_path = std::move(paths);
  tell_all(tables_.chance_path);
  for (road::RunFact& fact : tables_.run_facts) tell(fact.stretch), tell(fact.place);
  std::ranges::sort(tables_.run_facts, {},
                    [](const road::RunFact& fact) { return mark::order_of(fact); });
}

void Layout::lay_facts() {
  const auto by_stretch = [](const auto& row) { return row.stretch; };
  lay_by(tables_.timed_rules,
         [](const road::TimedRule& rule) { return std::pair(rule.stretch, rule.about); });
  lay_by(tables_.idle_rules,
         [](const road::IdleRule& rule) { return std::pair(rule.stretch, rule.source); });
  lay_by(tables_.pull_ups, by_stretch);
  lay_by(tables_.kerb_bans, by_stretch);
  lay_by(tables_.signs, by_stretch);
  lay_by(tables_.lane_marks, by_stretch);
  for (road::BusLane& lane : tables_.bus_lanes) tell(lane.piece);
  std::ranges::stable_sort(tables_.bus_lanes, {}, &road::BusLane::piece);
}

}  // namespace

void lay_along_curve(road::Tables& tables) {
  Layout layout(tables);
  // No column is of both.
  at_once(
      [&] {
        layout.lay_roads();
        layout.lay_turns();
      },
      [&] {
        layout.lay_places();
        layout.lay_practice();
        layout.lay_facts();
      });
}

}  // namespace loopwright::read
