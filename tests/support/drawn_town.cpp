// 1. Lines with '=' are set aside; in the others each letter or digit becomes a node, placed by its
//    column and row.
// 2. Each line set aside is cut into words (quotes keep spaces), the first of which says what it
// is.
// 3. Nodes that no way uses are dropped, as a reader of a map does, and all is ordered by id.
#include "support/drawn_town.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <set>
#include <stdexcept>
#include <string>

#include "loopwright/mark/rules.hpp"

namespace loopwright::test {
namespace {

// WGS 84 at 54.3 degrees north.
constexpr double north_deg = 54.30, east_deg = 2.60;
constexpr double metres_per_lat_deg = 111310.6, metres_per_lon_deg = 65103.4;

[[noreturn]] void refuse(std::string_view line, std::string_view why) {
  throw std::invalid_argument("drawn town: " + std::string(why) + ": " + std::string(line));
}

bool is_node_letter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0;
}

std::vector<std::string> words_of(std::string_view line) {
  std::vector<std::string> words;
  std::string word;
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ' ' && !quoted) {
      if (!word.empty()) words.push_back(std::move(word));
      word.clear();
    } else {
      word += c;
    }
  }
  if (quoted) refuse(line, "a quote is not closed");
  if (!word.empty()) words.push_back(std::move(word));
  return words;
}

std::int64_t number_after_letter(std::string_view word, std::string_view line) {
  std::int64_t id = 0;
  const char* end = word.data() + word.size();
  const auto read = std::from_chars(word.data() + 1, end, id);
  if (word.size() < 2 || read.ec != std::errc{} || read.ptr != end) refuse(line, "no number in it");
  return id;
}

struct Pair {
  std::string key, value;
};

Pair pair_of(std::string_view word, std::string_view line) {
  const auto at = word.find('=');
  if (at == std::string_view::npos || at == 0) refuse(line, "a word is not key=value");
  Pair pair{std::string(word.substr(0, at)), std::string(word.substr(at + 1))};
  if (pair.key == "name" || pair.key == "ref" || pair.key == "maxspeed") {
    std::replace(pair.value.begin(), pair.value.end(), '_', ' ');
  }
  return pair;
}

mark::Tags tags_of(const std::vector<std::string>& words, std::size_t first,
                   std::string_view line) {
  mark::Tags tags;
  for (std::size_t i = first; i < words.size(); ++i) {
    const Pair pair = pair_of(words[i], line);
    tags.add(pair.key, pair.value);
  }
  return tags;
}

void add_members(mark::RawRelation& relation, const Pair& pair, std::string_view line) {
  for (std::size_t at = 0; at <= pair.value.size();) {
    const std::size_t comma = std::min(pair.value.find(',', at), pair.value.size());
    const std::string name = pair.value.substr(at, comma - at);
    if (name.size() == 1 && is_node_letter(name[0])) {
      relation.members.push_back({'n', osm_node(name[0]), pair.key});
    } else if (!name.empty() && name[0] == 'w') {
      relation.members.push_back({'w', number_after_letter(name, line), pair.key});
    } else {
      refuse(line, "a member is neither a node nor a way");
    }
    at = comma + 1;
  }
}

class Town {
 public:
  void place(std::string_view row, std::size_t row_number, double scale_m);
  void define(std::string_view line);
  mark::RawMap finish();

 private:
  void define_way(const std::vector<std::string>& words, std::string_view line);
  void define_relation(const std::vector<std::string>& words, std::string_view line);
  void define_feature(const std::vector<std::string>& words, std::string_view line);
  [[nodiscard]] bool drawn(std::int64_t id) const {
    return std::any_of(map_.nodes.begin(), map_.nodes.end(),
                       [id](const mark::RawNode& n) { return n.id == id; });
  }

  mark::RawMap map_;
};

void Town::place(std::string_view row, std::size_t row_number, double scale_m) {
  for (std::size_t column = 0; column < row.size(); ++column) {
    if (!is_node_letter(row[column])) continue;
    const std::int64_t id = osm_node(row[column]);
    if (drawn(id)) refuse(row, "a letter is drawn twice");
    const double lat = north_deg - static_cast<double>(row_number) * scale_m / metres_per_lat_deg;
    const double lon = east_deg + static_cast<double>(column) * scale_m / metres_per_lon_deg;
    map_.nodes.push_back({id, point_from_degrees(lat, lon)});
  }
}

void Town::define_way(const std::vector<std::string>& words, std::string_view line) {
  mark::RawWay way;
  way.id = number_after_letter(words[0], line);
  for (const char letter : words[1]) {
    way.nodes.push_back(osm_node(letter));
    if (!drawn(way.nodes.back())) refuse(line, "a letter is not in the drawing");
  }
  way.tags = tags_of(words, 2, line);
  const bool road = way.tags.has("highway");
  if (road == way.tags.has("railway")) refuse(line, "a way is either a road or a rail");
  const bool tram = way.tags.is("railway", "tram");
  (road ? map_.ways : tram ? map_.trams : map_.rails).push_back(std::move(way));
}

void Town::define_relation(const std::vector<std::string>& words, std::string_view line) {
  mark::RawRelation relation;
  relation.id = number_after_letter(words[0], line);
  if (words[1].starts_with("bus_route=")) {
    add_members(relation, pair_of(words[1], line), line);
    for (const auto& member : relation.members) map_.bus_route_ways.push_back(member.ref);
    return;
  }
  relation.tags.add("type", "restriction");
  if (words[1] != "-") relation.tags.add("restriction", words[1]);
  for (std::size_t i = 2; i < words.size(); ++i) {
    const Pair pair = pair_of(words[i], line);
    const bool member = pair.key == "from" || pair.key == "via" || pair.key == "to";
    member ? add_members(relation, pair, line) : relation.tags.add(pair.key, pair.value);
  }
  map_.restrictions.push_back(std::move(relation));
}

void Town::define_feature(const std::vector<std::string>& words, std::string_view line) {
  mark::RawFeature feature;
  feature.tags = tags_of(words, 2, line);
  if (!mark::is_feature(feature.tags)) refuse(line, "no feature is known by these tags");
  std::vector<Point> points;
  std::int64_t lat = 0, lon = 0;
  for (const char letter : words[1]) {
    const auto at = std::ranges::find(map_.nodes, osm_node(letter), &mark::RawNode::id);
    if (at == map_.nodes.end()) refuse(line, "a letter is not in the drawing");
    points.push_back(at->at);
    lat += at->at.lat_e7, lon += at->at.lon_e7;
  }
  const auto count = static_cast<std::int64_t>(points.size());
  feature.at = {static_cast<std::int32_t>(lat / count), static_cast<std::int32_t>(lon / count)};
  feature.object = {osm_node(words[1][0]), ObjectType::node, {}};
  if (count > 1) {
    feature.object = {number_after_letter(words[0], line), ObjectType::way, {}};
    feature.lines.push_back(std::move(points));
  }
  map_.features.push_back(std::move(feature));
}

void Town::define(std::string_view line) {
  const std::vector<std::string> words = words_of(line);
  if (words.size() < 2) refuse(line, "a line needs at least two words");
  const char what = words[0][0];
  if (what == 'w') return define_way(words, line);
  if (what == 'r') return define_relation(words, line);
  if (what == 'f') return define_feature(words, line);
  if (what != 'n' || words[0].size() != 2) refuse(line, "a line starts with w1, nA, r1 or f1");
  if (!drawn(osm_node(words[0][1]))) refuse(line, "a letter is not in the drawing");
  map_.node_tags.emplace_back(osm_node(words[0][1]), tags_of(words, 1, line));
}

mark::RawMap Town::finish() {
  std::set<std::int64_t> used;
  for (const auto* ways : {&map_.ways, &map_.rails, &map_.trams}) {
    for (const auto& way : *ways) used.insert(way.nodes.begin(), way.nodes.end());
  }
  std::erase_if(map_.nodes, [&](const auto& node) { return !used.contains(node.id); });
  std::erase_if(map_.node_tags, [&](const auto& tagged) { return !used.contains(tagged.first); });
  const auto by_id = [](const auto& a, const auto& b) { return a.id < b.id; };
  std::sort(map_.ways.begin(), map_.ways.end(), by_id);
  std::sort(map_.rails.begin(), map_.rails.end(), by_id);
  std::sort(map_.trams.begin(), map_.trams.end(), by_id);
  std::ranges::sort(map_.features, {}, &mark::RawFeature::object);
  std::sort(map_.nodes.begin(), map_.nodes.end(), by_id);
  std::sort(map_.restrictions.begin(), map_.restrictions.end(), by_id);
  std::sort(map_.node_tags.begin(), map_.node_tags.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  std::sort(map_.bus_route_ways.begin(), map_.bus_route_ways.end());
  return std::move(map_);
}

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

}  // namespace

std::int64_t osm_node(char letter) {
  if (letter >= 'A' && letter <= 'Z') return letter - 'A' + 1;
  if (letter >= 'a' && letter <= 'z') return letter - 'a' + 101;
  if (letter >= '0' && letter <= '9') return letter - '0' + 200;
  throw std::invalid_argument("drawn town: a node is a letter or a digit");
}

mark::RawMap draw_town(std::string_view drawing, double metres_per_character) {
  Town town;
  const auto is_definition = [](std::string_view l) { return l.find('=') != l.npos; };
  const std::vector<std::string_view> lines = lines_of(drawing);
  for (std::size_t row = 0; row < lines.size(); ++row) {
    if (!is_definition(lines[row])) town.place(lines[row], row, metres_per_character);
  }
  for (const std::string_view line : lines) {
    if (is_definition(line)) town.define(line);
  }
  return town.finish();
}

}  // namespace loopwright::test
