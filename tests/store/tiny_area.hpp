// The smallest area that is worth the name: two nodes, one piece of road between them.
#pragma once

#include "loopwright/road/by_id.hpp"

namespace loopwright::test {

inline road::AreaInfo tiny_info() {
  road::AreaInfo info;
  info.region = {.code = "GB-WLS", .side = Side::left, .unit = SpeedUnit::mph, .own_rules = true};
  info.map_timestamp = "2026-11-01T00:00:00Z";
  info.source_file = "tiny.opl";
  info.zone = "Europe/London";
  return info;
}

inline road::Tables tiny_tables() {
  road::Tables tables;
  tables.nodes.resize(2);
  tables.nodes[0].osm_id = 11;
  tables.nodes[1].osm_id = 12;
  tables.pieces.resize(1);
  tables.pieces[0].way = 7;
  tables.pieces[0].a = NodeId{0};
  tables.pieces[0].b = NodeId{1};
  tables.pieces[0].to_index = 1;
  tables.pieces[0].shape_count = 2;
  tables.pieces[0].name = TextId{1};
  tables.stretches.resize(2);
  tables.shape = {{515877000, -29984000}, {515878000, -29984000}};
  tables.node_first = {0, 1, 2};
  tables.node_out = {StretchId{0}, StretchId{1}};
  tables.turn_first = {0, 1, 2};
  tables.turns.resize(2);
  tables.turns[0].to = StateId{1};
  tables.turns[1].to = StateId{0};
  tables.place_node_first = {0};
  tables.place_piece_first = {0};
  tables.text_first = {0, 0, 11};
  tables.text_bytes = {'M', 'i', 'l', 'l', ' ', 'S', 't', 'r', 'e', 'e', 't'};
  road::list_by_id(tables);
  return tables;
}

}  // namespace loopwright::test
