// 1. count_fault: the counts that follow from each other (two stretches for each piece, one entry
//    more than rows in each column of first rows).
// 2. row_fault: first rows start at 0, never fall and end at the length of what they index; then
//    each column of rows with row numbers in them, against the counts of what these point to.
#include "store/structure.hpp"

#include <string_view>

#include "store/rows.hpp"

namespace loopwright::store {
namespace {

Fault wrong_count(std::string_view name, std::size_t has, std::size_t should_have) {
  if (has == should_have) return std::nullopt;
  return "'" + std::string(name) + "' has " + std::to_string(has) + " rows, not " +
         std::to_string(should_have);
}

/// A column of first rows has one entry more than there are owners; none when there are none.
Fault wrong_firsts(std::string_view name, std::size_t has, std::size_t owners) {
  if (owners == 0 && has == 0) return std::nullopt;
  return wrong_count(name, has, owners + 1);
}

Fault bad_firsts(std::string_view name, road::View<std::uint32_t> firsts, std::size_t indexed) {
  if (firsts.empty() && indexed > 0) return "'" + std::string(name) + "' is empty";
  for (std::size_t i = 0; i < firsts.size(); ++i) {
    const std::size_t least = i == 0 ? 0 : firsts[i - 1];
    const bool last = i + 1 == firsts.size();
    if (firsts[i] < least || (i == 0 && firsts[i] != 0) || (last && firsts[i] != indexed)) {
      return "row " + std::to_string(i) + " of '" + std::string(name) + "' is out of order";
    }
  }
  return std::nullopt;
}

/// The first row with a row number in it that leads nowhere.
template <class Row, class Fits>
Fault lost_row(std::string_view name, road::View<Row> rows, Fits fits) {
  return bad_row(name, rows, "points outside another column", fits);
}

bool range_fits(std::uint32_t first, std::uint32_t count, std::size_t rows) {
  return std::uint64_t{first} + count <= rows;
}

/// How many rows each kind of id may point to.
struct Limits {
  explicit Limits(const Columns& c)
      : nodes(c.nodes.size()),
        pieces(c.pieces.size()),
        stretches(c.stretches.size()),
        states(c.stretches.size() + c.copies.size()),
        places(c.places.size()),
        texts(c.text_first.empty() ? 0 : c.text_first.size() - 1) {}
  [[nodiscard]] bool fits(NodeId id) const { return id.value < nodes; }
  [[nodiscard]] bool fits(PieceId id) const { return id.value < pieces; }
  [[nodiscard]] bool fits(StretchId id) const { return id.value < stretches; }
  [[nodiscard]] bool fits(StateId id) const { return id.value < states; }
  [[nodiscard]] bool fits(PlaceId id) const { return id.value < places; }
  [[nodiscard]] bool fits(TextId id) const { return !id.known() || id.value < texts; }
  [[nodiscard]] bool none_or_fits(StretchId id) const { return !id.known() || fits(id); }

  std::size_t nodes, pieces, stretches, states, places, texts;
};

Fault bad_road_row(const Columns& c, const Limits& in) {
  const auto fits = [&in](auto id) { return in.fits(id); };
  FirstFault first;
  first.note(
      lost_row("nodes", c.nodes, [&](const road::Node& n) { return n.row_by_id < c.nodes.size(); }));
  first.note(lost_row("pieces", c.pieces, [&](const road::Piece& p) {
    const bool leads_on = p.row_by_id == PieceId::none_value || p.row_by_id < c.pieces.size();
    return leads_on && in.fits(p.a) && in.fits(p.b) && p.shape_count >= 2 &&
           range_fits(p.shape_first, p.shape_count, c.shape.size()) && in.fits(p.name) &&
           in.fits(p.ref) && in.fits(p.width_source) && in.fits(p.access_source) &&
           in.fits(p.gradient_source);
  }));
  first.note(lost_row("stretches", c.stretches,
                      [&](const road::Stretch& s) { return in.fits(s.limit.source); }));
  first.note(lost_row("node_out", c.node_out, fits));
  first.note(lost_row("copies", c.copies, fits));
  first.note(lost_row("turns", c.turns, [&](const road::Turn& t) { return in.fits(t.to); }));
  first.note(lost_row("turn_rules", c.turn_rules, [&](const road::TurnRule& r) {
    return range_fits(r.path_first, r.path_count, c.rule_path.size()) && in.fits(r.text) &&
           in.fits(r.condition);
  }));
  first.note(lost_row("rule_path", c.rule_path, fits));
  first.note(lost_row("timed_rules", c.timed_rules, [&](const road::TimedRule& r) {
    return in.fits(r.stretch) && in.fits(r.base) && in.fits(r.text) && in.fits(r.who) &&
           in.fits(r.source);
  }));
  first.note(lost_row("idle_rules", c.idle_rules, [&](const road::IdleRule& r) {
    return in.fits(r.stretch) && in.fits(r.tag);
  }));
  first.note(lost_row("bus_lanes", c.bus_lanes, [&](const road::BusLane& lane) {
    return in.fits(lane.piece) && in.fits(lane.hours) && in.fits(lane.who) && in.fits(lane.doubt) &&
           in.fits(lane.source);
  }));
  first.note(lost_row("signs", c.signs, [&](const road::SignedTo& s) {
    return in.fits(s.stretch) && in.fits(s.destination) && in.fits(s.ref);
  }));
  first.note(lost_row("lane_marks", c.lane_marks, [&](const road::LaneMarks& m) {
    return in.fits(m.stretch) && in.fits(m.arrows) && in.fits(m.source);
  }));
  first.note(lost_row("grid", c.grid, [&](const road::GridEntry& g) { return in.fits(g.piece); }));
  return first.fault();
}

Fault bad_place_row(const Columns& c, const Limits& in) {
  const auto fits = [&in](auto id) { return in.fits(id); };
  FirstFault first;
  first.note(lost_row("places", c.places, [&](const road::Place& p) {
    return p.arm_first <= c.arms.size() && in.fits(p.name);
  }));
  first.note(lost_row("arms", c.arms, [&](const road::Arm& a) {
    return in.fits(a.place) && in.none_or_fits(a.in) && in.none_or_fits(a.out);
  }));
  first.note(lost_row("chances", c.chances, [&](const road::Chance& chance) {
    return in.fits(chance.place) && in.fits(chance.entry) && in.fits(chance.exit) &&
           range_fits(chance.path_first, chance.path_count, c.chance_path.size()) &&
           in.fits(chance.tag);
  }));
  first.note(lost_row("chance_path", c.chance_path, fits));
  first.note(lost_row("run_facts", c.run_facts, [&](const road::RunFact& f) {
    return in.fits(f.stretch) && in.fits(f.place) && in.fits(f.tag);
  }));
  first.note(lost_row("pull_ups", c.pull_ups, [&](const road::PullUp& p) {
    return in.fits(p.stretch) && in.fits(p.why) && in.fits(p.hours);
  }));
  first.note(lost_row("kerb_bans", c.kerb_bans, [&](const road::KerbBan& b) {
    return in.fits(b.stretch) && in.fits(b.hours) && in.fits(b.source);
  }));
  first.note(lost_row("addresses", c.addresses, [&](const road::Address& a) {
    return in.fits(a.street) && in.fits(a.number) && in.fits(a.postcode);
  }));
  first.note(lost_row("landmarks", c.landmarks,
                      [&](const road::Landmark& mark) { return in.fits(mark.name); }));
  first.note(lost_row("named_spots", c.named_spots, [&](const road::NamedSpot& spot) {
    return in.fits(spot.name) && in.fits(spot.what);
  }));
  first.note(lost_row("place_nodes", c.place_nodes, fits));
  first.note(lost_row("place_pieces", c.place_pieces, fits));
  return first.fault();
}

}  // namespace

Fault count_fault(const Columns& c) {
  FirstFault first;
  first.note(wrong_count("stretches", c.stretches.size(), 2 * c.pieces.size()));
  first.note(wrong_firsts("node_first", c.node_first.size(), c.nodes.size()));
  first.note(wrong_firsts("turn_first", c.turn_first.size(), c.stretches.size() + c.copies.size()));
  first.note(wrong_firsts("place_node_first", c.place_node_first.size(), c.places.size()));
  first.note(wrong_firsts("place_piece_first", c.place_piece_first.size(), c.places.size()));
  return first.fault();
}

Fault row_fault(const Columns& c) {
  const Limits in(c);
  FirstFault first;
  first.note(bad_firsts("node_first", c.node_first, c.node_out.size()));
  first.note(bad_firsts("turn_first", c.turn_first, c.turns.size()));
  first.note(bad_firsts("place_node_first", c.place_node_first, c.place_nodes.size()));
  first.note(bad_firsts("place_piece_first", c.place_piece_first, c.place_pieces.size()));
  first.note(bad_firsts("text_first", c.text_first, c.text_bytes.size()));
  first.note(bad_road_row(c, in));
  first.note(bad_place_row(c, in));
  return first.fault();
}

}  // namespace loopwright::store
