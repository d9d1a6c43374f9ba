// The index of names inside an area: which rows of the area's columns bear a name.
//
//   Names names(roads.place_index);
//   for (const Name& name : names.like("lantern row")) …   // the nearest spellings first
//
// The database, made by make_index:
//   name(id, key, sort, rows)   one row a key and sort; rows: numbers packed (see make_index.cpp)
//   spelling(key)               FTS5, trigrams of the key between two spaces; its rowid is the id
// Why FTS5 keeps neither text nor positions (content='', detail=none): only "which names have these
// three letters" is asked, and the file stays small.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "place/database.hpp"

namespace loopwright::place {

/// What the rows of a name are: pieces, addresses by street, by postcode and by the part of the
/// postcode before the space, named spots.
enum class NameSort : std::uint8_t { street, houses, postcode, outward, spot };

struct Name {
  std::string key;
  NameSort sort = NameSort::street;
  int edits = 0;                    ///< from the key asked for
  std::vector<std::uint32_t> rows;  ///< ascending; may lie outside the columns in a damaged index
};

class Names {
 public:
  explicit Names(std::span<const char> index);
  /// Names that share three letters with the key: nearest spelling first, then those of which it is
  /// a part. A few dozen at most.
  [[nodiscard]] std::vector<Name> like(std::string_view key) const;

 private:
  [[nodiscard]] std::vector<std::int64_t> ids_like(std::string_view key) const;
  Database database_;
  mutable Statement with_trigram_, name_by_id_;
};

/// Numbers in ascending order as bytes, and back.
std::string packed(std::span<const std::uint32_t> rows);
std::vector<std::uint32_t> unpacked(std::string_view bytes);

}  // namespace loopwright::place
