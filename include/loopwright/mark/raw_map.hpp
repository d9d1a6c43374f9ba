// Roads as the map file has them: tags and shape, before any rule is applied. Filled by room read
// from an extract, and by tests from a town drawn as text.
//
// Rules: ways with fewer than two known nodes are kept here and reported by the assembly.
// `ways` holds every way with a highway tag of the motor classes (see road_class_of) and ferry-free;
// `rails` every way that may cross a road on the level. Both are ordered by id, ids once.
#pragma once

#include <cstdint>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "loopwright/base/ids.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::mark {

/// Tags of one object, packed. Few per object, so looking one up scans them; most keys that are asked
/// for aren't there, and most of these have no bit in the mask: nothing is scanned then.
class Tags {
 public:
  Tags() = default;
  Tags(std::initializer_list<std::pair<std::string_view, std::string_view>> pairs);
  void add(std::string_view key, std::string_view value);
  /// Value of a key, trimmed of nothing; empty when there is none.
  [[nodiscard]] std::string_view get(std::string_view key) const {
    return (mask_ & bit_of(key)) == 0 ? std::string_view() : find(key);
  }
  [[nodiscard]] bool has(std::string_view key) const { return !get(key).empty(); }
  [[nodiscard]] bool is(std::string_view key, std::string_view value) const {
    return get(key) == value;
  }
  [[nodiscard]] bool empty() const { return packed_.empty(); }
  /// True when a key ends in ":conditional". Few objects have one: then none need be spelled and asked for.
  [[nodiscard]] bool has_conditions() const { return (mask_ & conditions_bit) != 0; }
  /// Calls f(key, value) for each, in the order added.
  template <class F>
  void each(F&& f) const {
    for (std::size_t at = 0; at < packed_.size();) {
      const Pair pair = pair_at(at);
      f(pair.key, pair.value);
      at = pair.end;
    }
  }

 private:
  static constexpr std::uint64_t conditions_bit = std::uint64_t{1} << 63U;
  /// One of 63 bits, by length and some letters: keys that begin or end alike should differ.
  static constexpr std::uint64_t bit_of(std::string_view key) {
    if (key.empty()) return 1;
    const auto letter = [&](std::size_t at) {
      return std::size_t{static_cast<unsigned char>(key[at])};
    };
    const std::size_t mixed =
        key.size() * 11 + letter(0) * 7 + letter(key.size() / 2) * 3 + letter(key.size() - 1) * 5;
    return std::uint64_t{1} << (mixed % 63);
  }
  [[nodiscard]] std::string_view find(std::string_view key) const;

  using Length = std::uint16_t;  // the map database takes keys and values of 255 characters
  struct Pair {
    std::string_view key, value;
    std::size_t end = 0;  ///< where the next one begins
  };
  [[nodiscard]] Pair pair_at(std::size_t at) const {
    Length lengths[2];
    std::memcpy(lengths, packed_.data() + at, sizeof lengths);
    const char* key = packed_.data() + at + sizeof lengths;
    const std::size_t end = at + sizeof lengths + lengths[0] + lengths[1];
    return {{key, lengths[0]}, {key + lengths[0], lengths[1]}, end};
  }

  std::uint64_t mask_ = 0;  // the bits of all keys, and conditions_bit
  std::string packed_;      // for each tag: length of key, length of value, key, value
};

struct RawNode {
  std::int64_t id = 0;
  Point at;
};

struct RawWay {
  std::int64_t id = 0;
  std::vector<std::int64_t> nodes;
  Tags tags;
};

/// Something beside the roads that a lesson has to do with: a bus stop, a school, a car park, an
/// address, anything with a name (is_feature in rules.hpp).
struct RawFeature {
  OsmObject object;
  Point at;  ///< of a node; else the middle of the box round its lines
  /// Of a way its line, of a multipolygon its outer and inner ways, in no order; empty for a node.
  std::vector<std::vector<Point>> lines;
  Tags tags;
};

struct RawMember {
  char type = 'n';  ///< n, w or r
  std::int64_t ref = 0;
  std::string role;
};

struct RawRelation {
  std::int64_t id = 0;
  Tags tags;
  std::vector<RawMember> members;
};

struct RawMap {
  std::vector<RawWay> ways;
  std::vector<RawWay> rails;
  std::vector<RawWay> trams;                             ///< railway=tram, by id
  std::vector<RawNode> nodes;                            ///< of ways, rails and trams, by id
  std::vector<std::pair<std::int64_t, Tags>> node_tags;  ///< tagged nodes of them, by id
  std::vector<RawRelation> restrictions;                 ///< type=restriction…, by id
  std::vector<RawFeature> features;          ///< by object; those with no known point are left out
  std::vector<std::int64_t> bus_route_ways;  ///< members of route=bus, ascending
  std::string timestamp;                     ///< newest data, ISO 8601 UTC; empty when unknown
  std::int64_t repeated_ids = 0;             ///< objects dropped because their id came before

  [[nodiscard]] const RawNode* find_node(std::int64_t id) const;
  [[nodiscard]] const Tags& tags_of_node(std::int64_t id) const;  ///< empty tags when none
};

}  // namespace loopwright::mark
