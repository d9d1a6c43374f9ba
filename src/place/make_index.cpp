// 1. Every name's key with the rows that bear it: pieces, addresses by street and by postcode (whole,
//    and the part before the space), named spots. A map keeps them in order, so that the same area
//    gives the same bytes.
// 2. Into a database in memory, ids in that order; the trigram table beside it, in one segment.
// 3. Serialised as one file image (sqlite.org/c3ref/serialize.html).
#include <map>
#include <unordered_map>
#include <utility>

#include "loopwright/place/place.hpp"
#include "loopwright/place/spelling.hpp"
#include "place/index.hpp"

namespace loopwright::place {
namespace {

using Rows = std::vector<std::uint32_t>;
using AllNames = std::map<std::pair<std::string, NameSort>, Rows>;

constexpr const char* tables =
    "PRAGMA page_size=1024;"
    "PRAGMA auto_vacuum=NONE;"
    "CREATE TABLE name(id INTEGER PRIMARY KEY, key TEXT, sort INTEGER, rows BLOB);"
    "CREATE VIRTUAL TABLE spelling USING fts5("
    "key, content='', columnsize=0, detail=none, tokenize='trigram');"
    // Leaves of the trigram table that fit a page of the database (FTS5, "pgsz").
    "INSERT INTO spelling(spelling, rank) VALUES('pgsz', 1000);"
    "BEGIN";
constexpr const char* finish =
    "INSERT INTO spelling(spelling) VALUES('optimize');"
    "COMMIT;"
    "VACUUM";

class Collector {
 public:
  explicit Collector(const road::Roads& roads) : roads_(roads) {}

  AllNames all() {
    for (std::size_t i = 0; i < roads_.pieces.size(); ++i) {
      add(roads_.pieces[i].name, NameSort::street, i);
    }
    for (std::size_t i = 0; i < roads_.addresses.size(); ++i) {
      const road::Address& address = roads_.addresses[i];
      if (!roads_.text(address.number).empty()) add(address.street, NameSort::houses, i);
      add(address.postcode, NameSort::postcode, i);
      add(before_space(roads_.text(address.postcode)), NameSort::outward, i);
    }
    for (std::size_t i = 0; i < roads_.named_spots.size(); ++i) {
      add(roads_.named_spots[i].name, NameSort::spot, i);
    }
    return std::move(names_);
  }

 private:
  static std::string_view before_space(std::string_view postcode) {
    const std::size_t space = postcode.find(' ');
    return space == std::string_view::npos ? std::string_view() : postcode.substr(0, space);
  }
  /// The rows that bear a name; none when nothing of it can be asked for.
  Rows* rows_of(std::string_view text, NameSort sort) {
    std::string key = text.empty() ? std::string() : key_of(text);
    return key.empty() ? nullptr : &names_[{std::move(key), sort}];
  }
  static void add(Rows* rows, std::size_t row) {
    if (rows != nullptr) rows->push_back(static_cast<std::uint32_t>(row));
  }
  void add(std::string_view text, NameSort sort, std::size_t row) { add(rows_of(text, sort), row); }
  /// Many rows bear one text, whose key is dear.
  void add(TextId text, NameSort sort, std::size_t row) {
    const auto [known, is_new] = by_text_.try_emplace({text, sort}, nullptr);
    if (is_new) known->second = rows_of(roads_.text(text), sort);
    add(known->second, row);
  }

  struct HashOfText {
    std::size_t operator()(const std::pair<TextId, NameSort>& name) const {
      return name.first.value * std::size_t{8} + static_cast<std::size_t>(name.second);
    }
  };
  const road::Roads& roads_;
  AllNames names_;  // a map, whose rows stay where they are
  std::unordered_map<std::pair<TextId, NameSort>, Rows*, HashOfText> by_text_;
};

}  // namespace

std::string make_index(const road::Roads& roads) {
  Database database;
  database.run(tables);
  {
    Statement add_name(database, "INSERT INTO name VALUES(?, ?, ?, ?)");
    Statement add_spelling(database, "INSERT INTO spelling(rowid, key) VALUES(?, ?)");
    std::int64_t id = 0;
    for (const auto& [name, rows] : Collector(roads).all()) {
      add_name.bind(1, ++id);
      add_name.bind(2, name.first);
      add_name.bind(3, static_cast<std::int64_t>(name.second));
      add_name.bind_blob(4, packed(rows));
      add_name.next();
      add_spelling.bind(1, id);
      add_spelling.bind(2, " " + name.first + " ");
      add_spelling.next();
    }
  }
  database.run(finish);
  return database.bytes();
}

}  // namespace loopwright::place
