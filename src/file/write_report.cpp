// Counts as one object in the order first counted; findings in the order of the catalogue, then of
// objects; oddities as a list in the order found.
#include <cmath>
#include <nlohmann/json.hpp>

#include "file/words.hpp"
#include "loopwright/base/object_text.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/road/findings.hpp"

namespace loopwright::file {

using Json = nlohmann::ordered_json;

namespace {

Json found_in(const road::Roads& roads) {
  Json found = Json::array();
  for (const road::Finding& f : road::findings(roads)) {
    found.push_back({{"kind", road::name(f.kind)},
                     {"confidence", road::name(f.confidence)},
                     {"object", text_of(f.object)},
                     {"tag", roads.text(f.tag)},
                     {"at", {f.at.lat(), f.at.lon()}}});
  }
  return found;
}

Json coverage_in(const road::Report& report) {
  Json rows = Json::array();
  for (const road::Coverage& c : report.coverage()) {
    rows.push_back({{"streets", c.streets},
                    {"fact", c.fact},
                    {"metres", std::llround(c.all_m)},
                    {"metres_told", std::llround(c.told_m)}});
  }
  return rows;
}

}  // namespace

std::string write_report(const road::Roads& roads, const road::Report& report) {
  Json counts = Json::object();
  for (const auto& [what, count] : report.counts()) counts[what] = count;
  Json oddities = Json::array();
  for (const road::Oddity& oddity : report.oddities()) {
    oddities.push_back({{"type", name(oddity.object.type)},
                        {"id", oddity.object.id},
                        {"what", oddity.what},
                        {"detail", oddity.detail}});
  }
  const Json file = {{"format", "loopwright-report"},   {"version", 1},
                     {"counts", std::move(counts)},     {"found", found_in(roads)},
                     {"coverage", coverage_in(report)}, {"oddities", std::move(oddities)}};
  return file.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace loopwright::file
