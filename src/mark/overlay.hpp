// A road graph over another one, of which it changes rows here and there.
//
//   Overlay over(base);   over.stretches()[7].flags = 0;   Noted noted = over.finish(…);
//
// Rules: private to mark. A column is copied when it is first changed. Chances and run facts that are
// taken away or added only show after finish. The base must outlive it.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "loopwright/mark/noted.hpp"

namespace loopwright::mark {

class Overlay {
 public:
  explicit Overlay(const road::Roads& base) : base_(base), roads_(base) {}

  /// As it was.
  [[nodiscard]] const road::Roads& base() const { return base_; }
  /// As changed so far.
  [[nodiscard]] const road::Roads& roads() const { return roads_; }

  TextId text(std::string_view text);
  road::Stretch& stretch(StretchId s);
  road::Piece& piece(PieceId p);
  std::span<road::BusLane> bus_lanes();
  void add_pull_up(const road::PullUp& row);
  PlaceId add_place(const road::Place& place, std::span<const NodeId> nodes,
                    std::span<const PieceId> pieces);
  void add_chance(road::Chance chance, std::span<const StretchId> path);
  [[nodiscard]] std::span<const road::Chance> new_chances() const { return new_chances_; }
  void take_chance(const road::Chance& of_base);
  [[nodiscard]] bool has(const road::Chance& of_base) const;
  void add_fact(const road::RunFact& fact);
  void take_facts(StretchId stretch, std::uint64_t kinds);
  /// Stretches that may be driven no more lose their turns, and every chance over them goes.
  void drop_shut(std::span<const StretchId> shut);

  /// The graph as changed. Call once, last.
  Noted finish(std::vector<NoteFinding> findings);

 private:
  void finish_chances();
  void finish_facts();

  road::Roads base_;
  road::Roads roads_;
  road::Tables own_;
  std::vector<bool> chance_gone_;  // by row of the base; empty: none is
  std::vector<road::Chance> new_chances_;
  std::vector<StretchId> new_paths_;  // of them; path_first counts from its start
  std::vector<std::pair<StretchId, std::uint64_t>> facts_gone_;
  std::vector<road::RunFact> new_facts_;
};

}  // namespace loopwright::mark
