// Method: an instruction is a byte; what it needs is taken from the bytes behind it. Ids are small, so
// that what is made by chance meets what was made before.
#include "broken_map.hpp"

#include <cstdio>
#include <span>

#include "map_tags.hpp"

namespace loopwright::fuzz {
namespace {

constexpr unsigned ids = 48, grid_columns = 7;
constexpr int most_instructions = 120;

/// Letters with a meaning in OPL, and all that isn't plain, as %code%.
std::string escaped(std::string_view text) {
  std::string result;
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    const bool plain = code > 0x20 && code < 0x7f && c != ',' && c != '=' && c != '@' && c != '%';
    char escape[8];
    std::snprintf(escape, sizeof escape, "%%%x%%", code == 0 ? 1U : code);
    result += plain ? std::string(1, c) : escape;
  }
  return result;
}

class Maker {
 public:
  explicit Maker(Bytes& bytes) : bytes_(bytes) {}
  void obey(unsigned instruction);
  [[nodiscard]] std::string text() const { return nodes_ + ways_ + relations_; }

 private:
  [[nodiscard]] unsigned id() { return 1 + bytes_.one() % ids; }
  [[nodiscard]] std::string tags(std::span<const Tag> sorts, std::span<const Tag> others);
  void add_grid();
  void add_node();
  void add_way(std::span<const Tag> sorts);
  void add_line_without_length();
  void add_great_ring();
  void add_relation(std::string_view type, unsigned rounds);
  void add_nested_restrictions();
  void add_much_tagged_way();

  Bytes& bytes_;
  std::string nodes_, ways_, relations_;
  bool has_great_ring_ = false;
};

std::string node_line(std::int64_t id, double lat, double lon, const std::string& tags) {
  char place[80];
  std::snprintf(place, sizeof place, "n%lld v1 dV x%.7f y%.7f T", static_cast<long long>(id), lon,
                lat);
  return place + tags + "\n";
}

/// One tag of the first list, when there is one, some of the second, and sometimes one of any letters.
std::string Maker::tags(std::span<const Tag> sorts, std::span<const Tag> others) {
  std::string text;
  const auto add = [&text](std::string_view key, std::string_view value) {
    text.append(text.empty() ? "" : ",").append(escaped(key)).append("=").append(escaped(value));
  };
  if (!sorts.empty()) {
    const Tag& sort = sorts[bytes_.one() % sorts.size()];
    add(sort.key, sort.value);
  }
  const unsigned count = bytes_.one();
  for (unsigned k = 0; k < count % 6; ++k) {
    const Tag& tag = others[bytes_.one() % others.size()];
    if (count >= 0xf0) {
      add(tag.key, bytes_.text());  // a key that is read, with a value that can't be
    } else {
      add(tag.key, tag.value);
    }
  }
  return text;
}

/// All nodes, some 50 m from each other, so that ways have somewhere to go.
void Maker::add_grid() {
  for (unsigned id = 1; id <= ids; ++id)
    nodes_ +=
        node_line(id, 54.3 + 0.0005 * (id / grid_columns), 2.6 + 0.0008 * (id % grid_columns), "");
}

void Maker::add_node() {
  const unsigned node = id(), where = bytes_.one();
  double lat = 54.3 + 0.0005 * (node / grid_columns), lon = 2.6 + 0.0008 * (node % grid_columns);
  if (where % 8 == 1) lat += (bytes_.one() - 128) * 1e-6, lon += (bytes_.one() - 128) * 1e-6;
  if (where % 8 == 2) lat = 54.3, lon = 2.6;  // on top of others
  if (where % 32 == 3) lat = bytes_.one() - 128.0, lon = 2.0 * bytes_.one() - 256.0;
  nodes_ += node_line(where % 64 == 5 ? -static_cast<std::int64_t>(node) : node, lat, lon,
                      tags({}, node_tags));
}

void Maker::add_way(std::span<const Tag> sorts) {
  ways_ += "w" + std::to_string(id()) + " v1 dV T" + tags(sorts, way_tags) + " N";
  const unsigned count = bytes_.one() % 24;
  unsigned node = 0;
  for (unsigned k = 0; k < count; ++k) {
    // Mostly on along the grid, else anywhere.
    const unsigned step = bytes_.one();
    node = step < 64 ? node + 1 : step < 128 ? node + grid_columns : step;
    ways_ += (k == 0 ? "n" : ",n") + std::to_string(1 + node % (ids + 2));
  }
  ways_ += "\n";
}

void Maker::add_line_without_length() {
  const std::string node = "n" + std::to_string(id());
  ways_ += "w" + std::to_string(id()) + " v1 dV T" + tags(way_sorts, way_tags) + " N" + node + "," +
           node;
  for (unsigned more = bytes_.one() % 4; more > 0; --more) ways_ += "," + node;
  ways_ += "\n";
}

void Maker::add_great_ring() {
  constexpr int ring_nodes = 10'000, first_id = 1000;
  if (has_great_ring_) return;
  has_great_ring_ = true;
  std::string line;
  for (int k = 0; k < ring_nodes; ++k) {
    nodes_ += node_line(first_id + k, 54.3 + 1e-6 * (k % 5000), 2.61 + 1e-6 * (k / 5000), "");
    line += "n" + std::to_string(first_id + k) + ",";
  }
  ways_ += "w" + std::to_string(id()) + " v1 dV T" + tags(way_sorts, way_tags) + " N" + line + "n" +
           std::to_string(bytes_.one() % 2 == 0 ? first_id : 1) + "\n";
}

void Maker::add_relation(std::string_view type, unsigned rounds) {
  constexpr std::string_view roles[] = {"from",  "via",   "to",      "",
                                        "outer", "inner", "forward", "stop"};
  const unsigned relation = id();
  relations_ += "r" + std::to_string(relation) + " v1 dV Ttype=" + std::string(type) + "," +
                tags(relation_tags, relation_tags) + " M";
  for (unsigned k = 0; k < rounds; ++k) {
    const unsigned sort = bytes_.one();
    const char letter = sort % 16 == 0 ? 'r' : sort % 3 == 1 ? 'n' : 'w';
    const unsigned member = letter == 'r' ? relation : id();
    relations_ += (k == 0 ? "" : ",") + std::string(1, letter) + std::to_string(member) + "@" +
                  std::string(roles[k < 3 && sort < 200 ? k : sort % 8]);
  }
  relations_ += "\n";
}

/// Bans through the same ways, one within the other: w1 to w2, w1 by w2 to w3, …
void Maker::add_nested_restrictions() {
  const unsigned first = id(), layers = 2 + bytes_.one() % 12;
  for (unsigned depth = 1; depth < layers; ++depth) {
    relations_ += "r" + std::to_string(200 + first * 16 + depth) + " v1 dV Ttype=restriction," +
                  tags(relation_tags, relation_tags) + " Mw" + std::to_string(first) + "@from";
    for (unsigned via = 1; via < depth; ++via)
      relations_ += ",w" + std::to_string(1 + (first + via) % ids) + "@via";
    relations_ += ",w" + std::to_string(1 + (first + depth) % ids) + "@to\n";
  }
}

void Maker::add_much_tagged_way() {
  std::string text = "highway=residential";
  for (unsigned k = bytes_.one() * 4U; k > 0; --k)
    text += ",key:" + std::to_string(k) + "=" + std::string(k % 200, 'x');
  ways_ += "w" + std::to_string(id()) + " v1 dV T" + text + "," + tags(way_sorts, way_tags) +
           " Nn1,n2,n3\n";
}

void Maker::obey(unsigned instruction) {
  switch (instruction % 16) {
    case 0:
    case 1:
      return add_node();
    case 2:
      return add_grid();
    case 3:
      return add_line_without_length();
    case 4:
      return add_relation("restriction", 3 + bytes_.one() % 4);
    case 5:
      return add_relation("restriction", bytes_.one() % 8);
    case 6:
      return add_relation("multipolygon", bytes_.one() % 8);
    case 7:
      return add_relation("route", bytes_.one() % 8);
    case 8:
      return add_nested_restrictions();
    case 9:
      return instruction == 9 ? add_great_ring() : add_way(way_sorts);
    case 10:
      return instruction < 32 ? add_much_tagged_way() : add_way(way_sorts);
    default:
      return add_way(std::span(way_sorts).first(instruction < 128 ? 4 : way_sorts.size()));
  }
}

}  // namespace

std::string broken_map(Bytes& bytes) {
  Maker maker(bytes);
  for (int k = 0; k < most_instructions && !bytes.empty(); ++k) maker.obey(bytes.one());
  return maker.text();
}

}  // namespace loopwright::fuzz
