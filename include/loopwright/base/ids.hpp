// Row numbers into the columns of an area, each with a type of its own, so that a road piece
// can't be used where a junction is meant.
//
//   NodeId n{7};  roads.nodes[n.index()];
//
// Rules: a default-made id is "none"; index() of none is the caller's mistake (assert).
// Why: these are positions in one area file and mean nothing in another; what names a thing
// across files is its OSM id (OsmObject).
#pragma once

#include <cassert>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <functional>

namespace loopwright {

template <class Tag>
struct RowId {
  static constexpr std::uint32_t none_value = 0xffffffffU;
  std::uint32_t value = none_value;

  constexpr RowId() = default;
  constexpr explicit RowId(std::size_t row) : value(static_cast<std::uint32_t>(row)) {}
  [[nodiscard]] constexpr bool known() const { return value != none_value; }
  [[nodiscard]] constexpr std::size_t index() const {
    assert(known());
    return value;
  }
  friend constexpr auto operator<=>(const RowId&, const RowId&) = default;
};

using NodeId = RowId<struct NodeTag>;      ///< a junction or other point that matters
using PieceId = RowId<struct PieceTag>;    ///< a part of one OSM way between two such points
using StateId = RowId<struct StateTag>;    ///< a stretch, with the memory turn bans need
using PlaceId = RowId<struct PlaceTag>;    ///< one roundabout, one level crossing, one run …
using ChanceId = RowId<struct ChanceTag>;  ///< one way of passing a place
using TextId = RowId<struct TextTag>;      ///< a name or tag text; row 0 is the empty text

/// A piece of road driven in one direction. Even: along the way's node order; odd: against it.
struct StretchId : RowId<struct StretchTag> {
  using RowId::RowId;
  constexpr StretchId(PieceId piece, bool against)
      : RowId(2 * piece.index() + (against ? 1U : 0U)) {}
  [[nodiscard]] constexpr PieceId piece() const { return PieceId{index() / 2}; }
  [[nodiscard]] constexpr bool against() const { return (value & 1U) != 0; }
  /// The same piece driven the other way.
  [[nodiscard]] constexpr StretchId back() const { return StretchId{index() ^ 1U}; }
};

enum class ObjectType : std::uint8_t { node, way, relation };

/// A map object by its OSM type and id.
struct OsmObject {
  std::int64_t id = 0;
  ObjectType type = ObjectType::node;
  std::uint8_t reserved[7] = {};  ///< so that files hold no undefined bytes
  friend constexpr auto operator<=>(const OsmObject&, const OsmObject&) = default;
};

}  // namespace loopwright

template <class Tag>
struct std::hash<loopwright::RowId<Tag>> {
  std::size_t operator()(const loopwright::RowId<Tag>& id) const noexcept { return id.value; }
};
template <>
struct std::hash<loopwright::StretchId> {
  std::size_t operator()(const loopwright::StretchId& id) const noexcept { return id.value; }
};
