// 1. Each kind of object goes to a spool of its own.
// 2. Spools are uncompressed PBF; the file is the one kind after the other, copied buffer by buffer.
#include "county/write_map.hpp"

#include <array>
#include <optional>
#include <osmium/io/any_output.hpp>
#include <osmium/io/opl_output.hpp>
#include <osmium/io/pbf_input.hpp>
#include <osmium/io/pbf_output.hpp>
#include <set>

#include "county/draft.hpp"
#include "county/map_numbers.hpp"
#include "county/map_spool.hpp"
#include "county/projection.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::county {
namespace {

/// How libosmium calls the format of a file, by its name.
std::string format_of(const std::filesystem::path& file) {
  const std::string name = file.filename().string();
  if (name.ends_with(".osm.pbf")) return "osm.pbf";
  if (name.ends_with(".opl")) return "opl";
  throw UsageError("a map is called FILE.osm.pbf or FILE.opl, not '" + name + "'");
}

std::filesystem::path beside(const std::filesystem::path& file, const char* ending) {
  return file.string() + ending;
}

std::vector<std::pair<std::string, std::string>> pairs(const Tags& tags) {
  return {tags.begin(), tags.end()};
}

}  // namespace

class MapFile::Spools {
 public:
  explicit Spools(const std::filesystem::path& file)
      : file_(file),
        format_(format_of(file)),
        nodes_(beside(file, ".nodes")),
        ways_(beside(file, ".ways")),
        relations_(beside(file, ".relations")) {}
  ~Spools() {
    for (const char* ending : {".nodes", ".ways", ".relations", ".part"}) {
      std::error_code ignored;
      std::filesystem::remove(beside(file_, ending), ignored);
    }
  }
  Spools(const Spools&) = delete;
  Spools& operator=(const Spools&) = delete;

  void add(const Drawing& county, const CountyPlace& place) {
    const Numbering numbers(county, place, borders_);
    written_.joined += numbers.shared();
    add_nodes(county, numbers);
    add_ways(county, place, numbers);
    add_relations(county, place, numbers);
  }
  Written finish();

 private:
  void add_nodes(const Drawing& county, const Numbering& numbers);
  void add_ways(const Drawing& county, const CountyPlace& place, const Numbering& numbers);
  void add_relations(const Drawing& county, const CountyPlace& place, const Numbering& numbers);
  void add_way(std::int64_t id, std::span<const Spot> points, const Tags& tags,
               const Numbering& numbers);

  std::filesystem::path file_;
  std::string format_;
  Spool nodes_, ways_, relations_;
  std::set<std::int64_t> borders_;  // points on sides that are written: two a county at most
  Written written_;
};

void MapFile::Spools::add_nodes(const Drawing& county, const Numbering& numbers) {
  std::unordered_map<Spot, Tags, SpotHash> lone;
  for (const Lone& one : county.lone)
    for (const auto& [key, value] : one.tags) lone[one.at][key] = value;
  const Projection flat(county.origin_lat, county.origin_lon);
  for (const auto& [id, place] : numbers.own()) {
    Tags tags;
    if (const auto found = lone.find(place); found != lone.end()) tags = found->second;
    if (const auto found = county.node_tags.find(place); found != county.node_tags.end())
      tags.insert(found->second.begin(), found->second.end());
    nodes_.node(attr::_id(id), attr::_location(flat.lon(place.x()), flat.lat(place.y())),
                attr::_tags(pairs(tags)));
    ++written_.nodes;
  }
}

void MapFile::Spools::add_way(std::int64_t id, std::span<const Spot> points, const Tags& tags,
                              const Numbering& numbers) {
  std::vector<std::int64_t> refs;
  for (const Spot point : points)
    if (const std::int64_t ref = numbers.of(point); refs.empty() || refs.back() != ref)
      refs.push_back(ref);
  ways_.way(attr::_id(id), attr::_nodes(refs), attr::_tags(pairs(tags)));
  ++written_.ways;
}

void MapFile::Spools::add_ways(const Drawing& county, const CountyPlace& place,
                               const Numbering& numbers) {
  std::int64_t id = map_ids::first_way + place.number * map_ids::apart;
  for (const Line& line : county.lines) {
    add_way(id++, line.points, line.tags, numbers);
    if (!for_cars(line.kind)) continue;
    ++written_.car_ways;
    written_.car_km += length_m(line.points) / 1000;
  }
  for (const Area& area : county.areas) {
    std::vector<Spot> outline = area.corners;
    outline.push_back(outline.front());
    add_way(id++, outline, area.tags, numbers);
  }
}

void MapFile::Spools::add_relations(const Drawing& county, const CountyPlace& place,
                                    const Numbering& numbers) {
  std::int64_t id = map_ids::first_relation + place.number * map_ids::apart;
  for (const Relation& relation : county.relations) {
    std::vector<attr::member_type_string> members;
    for (const Member& member : relation.members) {
      const auto* line = std::get_if<std::size_t>(&member.what);
      const auto way = map_ids::first_way + place.number * map_ids::apart;
      members.push_back(line != nullptr
                            ? attr::member_type_string(osmium::item_type::way,
                                                       way + static_cast<std::int64_t>(*line),
                                                       std::string(member.role))
                            : attr::member_type_string(osmium::item_type::node,
                                                       numbers.of(std::get<Spot>(member.what)),
                                                       std::string(member.role)));
    }
    relations_.relation(attr::_id(id++), attr::_members(members),
                        attr::_tags(pairs(relation.tags)));
    ++written_.relations;
  }
}

Written MapFile::Spools::finish() {
  for (Spool* spool : {&nodes_, &ways_, &relations_}) spool->close();
  osmium::io::Header header;
  header.set("generator", "draw-county");
  header.set("sorting", "Type_then_ID");
  header.set("osmosis_replication_timestamp", map_stamp);
  const std::filesystem::path part = beside(file_, ".part");
  osmium::io::Writer writer(
      osmium::io::File(part.string(), format_ + ",add_metadata=version+timestamp"), header,
      osmium::io::overwrite::allow);
  for (const Spool* spool : {&nodes_, &ways_, &relations_}) {
    osmium::io::Reader reader(osmium::io::File(spool->path().string(), "osm.pbf"));
    while (osmium::memory::Buffer buffer = reader.read()) writer(std::move(buffer));
    reader.close();
  }
  writer.close();
  std::filesystem::rename(part, file_);
  return written_;
}

namespace {

/// Runs some work on files; what libosmium and the system throw becomes one line about the file.
template <typename Work>
auto on_file(const Work& work) {
  try {
    return work();
  } catch (const Error&) {
    throw;
  } catch (const std::exception& error) {
    throw InputError(std::string("the map can't be written: ") + error.what());
  }
}

}  // namespace

MapFile::MapFile(const std::filesystem::path& file)
    : spools_(on_file([&] { return std::make_unique<Spools>(file); })) {}
MapFile::~MapFile() = default;

void MapFile::add(const Drawing& county, const CountyPlace& place) {
  on_file([&] { spools_->add(county, place); });
}

Written MapFile::finish() {
  return on_file([&] { return spools_->finish(); });
}

}  // namespace loopwright::county
