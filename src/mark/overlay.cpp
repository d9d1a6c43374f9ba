// 1. changed() copies a column of the base when it is first asked for, and lets the view look at the
//    copy from then on; whoever makes it longer lets the view look again.
// 2. New places and texts are appended, so that row numbers of the base stay good.
// 3. finish merges the chances and facts that stay with the new ones, both in the area's order.
#include "overlay.hpp"

#include <algorithm>
#include <cassert>
#include <iterator>

#include "loopwright/base/equal_rows.hpp"
#include "loopwright/mark/row_order.hpp"

namespace loopwright::mark {
namespace {

/// Step 1.
template <class Row>
std::vector<Row>& changed(std::vector<Row>& own, std::span<const Row>& view) {
  if (own.data() != view.data() || view.empty()) {
    own.assign(view.begin(), view.end());
    view = own;
  }
  return own;
}

template <class Row>
void append(std::vector<Row>& own, std::span<const Row>& view, std::span<const Row> rows) {
  changed(own, view).insert(own.end(), rows.begin(), rows.end());
  view = own;
}

template <class Row>
void append_one(std::vector<Row>& own, std::span<const Row>& view, const Row& row) {
  append(own, view, std::span(&row, 1));
}

bool by_order(const auto& a, const auto& b) {
  return order_of(a) < order_of(b);
}

}  // namespace

TextId Overlay::text(std::string_view text) {
  append(own_.text_bytes, roads_.text_bytes, std::span(text.data(), text.size()));
  append_one(own_.text_first, roads_.text_first,
             static_cast<std::uint32_t>(own_.text_bytes.size()));
  return TextId{own_.text_first.size() - 2};
}

road::Stretch& Overlay::stretch(StretchId s) {
  return changed(own_.stretches, roads_.stretches)[s.index()];
}

road::Piece& Overlay::piece(PieceId p) {
  return changed(own_.pieces, roads_.pieces)[p.index()];
}

std::span<road::BusLane> Overlay::bus_lanes() {
  return changed(own_.bus_lanes, roads_.bus_lanes);
}

void Overlay::add_pull_up(const road::PullUp& row) {
  auto& rows = changed(own_.pull_ups, roads_.pull_ups);
  const auto order = [](const road::PullUp& p) { return std::pair(p.stretch, p.from_m); };
  rows.insert(std::ranges::upper_bound(rows, order(row), {}, order), row);
  roads_.pull_ups = rows;
}

PlaceId Overlay::add_place(const road::Place& place, std::span<const NodeId> nodes,
                           std::span<const PieceId> pieces) {
  append_one(own_.places, roads_.places, place);
  append(own_.place_nodes, roads_.place_nodes, nodes);
  append(own_.place_pieces, roads_.place_pieces, pieces);
  append_one(own_.place_node_first, roads_.place_node_first,
             static_cast<std::uint32_t>(own_.place_nodes.size()));
  append_one(own_.place_piece_first, roads_.place_piece_first,
             static_cast<std::uint32_t>(own_.place_pieces.size()));
  return PlaceId{own_.places.size() - 1};
}

void Overlay::add_chance(road::Chance chance, std::span<const StretchId> path) {
  chance.path_first = static_cast<std::uint32_t>(base_.chance_path.size() + new_paths_.size());
  chance.path_count = static_cast<std::uint32_t>(path.size());
  new_paths_.insert(new_paths_.end(), path.begin(), path.end());
  new_chances_.push_back(chance);
}

void Overlay::take_chance(const road::Chance& of_base) {
  if (chance_gone_.empty()) chance_gone_.resize(base_.chances.size());
  chance_gone_[static_cast<std::size_t>(&of_base - base_.chances.data())] = true;
}

bool Overlay::has(const road::Chance& of_base) const {
  const auto row = static_cast<std::size_t>(&of_base - base_.chances.data());
  assert(row < base_.chances.size());
  return chance_gone_.empty() || !chance_gone_[row];
}

void Overlay::add_fact(const road::RunFact& fact) {
  new_facts_.push_back(fact);
  stretch(fact.stretch).runs |= road::bit(fact.kind);
}

void Overlay::take_facts(StretchId stretch_id, std::uint64_t kinds) {
  facts_gone_.emplace_back(stretch_id, kinds);
  stretch(stretch_id).runs &= ~kinds;
}

void Overlay::drop_shut(std::span<const StretchId> shut) {
  if (shut.empty()) return;
  const auto is_shut = [&](StretchId s) { return std::ranges::binary_search(shut, s); };
  for (const StretchId s : shut) stretch(s).flags &= ~road::stretch_flag::drivable;
  own_.turn_first = {0};
  own_.turns.reserve(base_.turns.size());
  for (std::size_t s = 0; s < base_.state_count(); ++s) {
    for (const road::Turn& turn : base_.turns_from(StateId{s})) {
      if (is_shut(base_.stretch_of(StateId{s})) || is_shut(base_.stretch_of(turn.to))) continue;
      own_.turns.push_back(turn);
    }
    own_.turn_first.push_back(static_cast<std::uint32_t>(own_.turns.size()));
  }
  roads_.turns = own_.turns, roads_.turn_first = own_.turn_first;
  for (const road::Chance& chance : base_.chances) {
    if (std::ranges::any_of(base_.path_of(chance), is_shut)) take_chance(chance);
  }
}

void Overlay::finish_chances() {
  if (chance_gone_.empty() && new_chances_.empty()) return;
  append(own_.chance_path, roads_.chance_path, std::span<const StretchId>(new_paths_));
  std::ranges::stable_sort(new_chances_, by_order<road::Chance, road::Chance>);
  std::vector<road::Chance> stay;
  std::ranges::copy_if(base_.chances, std::back_inserter(stay),
                       [&](const road::Chance& c) { return has(c); });
  own_.chances.clear();
  std::ranges::merge(stay, new_chances_, std::back_inserter(own_.chances),
                     by_order<road::Chance, road::Chance>);
  roads_.chances = own_.chances;
}

void Overlay::finish_facts() {
  if (facts_gone_.empty() && new_facts_.empty()) return;
  std::ranges::sort(facts_gone_);
  const auto stays = [&](const road::RunFact& fact) {
    const auto rows =
        equal_rows(facts_gone_, fact.stretch, [](const auto& gone) { return gone.first; });
    return std::ranges::none_of(
        rows, [&](const auto& gone) { return (gone.second & road::bit(fact.kind)) != 0; });
  };
  std::vector<road::RunFact> stay;
  std::ranges::copy_if(base_.run_facts, std::back_inserter(stay), stays);
  std::ranges::sort(new_facts_, by_order<road::RunFact, road::RunFact>);
  own_.run_facts.clear();
  std::ranges::merge(stay, new_facts_, std::back_inserter(own_.run_facts),
                     by_order<road::RunFact, road::RunFact>);
  roads_.run_facts = own_.run_facts;
}

Noted Overlay::finish(std::vector<NoteFinding> findings) {
  finish_chances();
  finish_facts();
  return {std::move(own_), std::move(roads_), std::move(findings)};
}

}  // namespace loopwright::mark
