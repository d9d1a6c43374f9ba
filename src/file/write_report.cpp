// Counts as one object in the order first counted, oddities as a list in the order found.
#include <nlohmann/json.hpp>

#include "file/words.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::file {

std::string write_report(const road::Report& report) {
  using Json = nlohmann::ordered_json;
  Json counts = Json::object();
  for (const auto& [what, count] : report.counts()) counts[what] = count;
  Json oddities = Json::array();
  for (const road::Oddity& oddity : report.oddities()) {
    oddities.push_back({{"type", name(oddity.object.type)},
                        {"id", oddity.object.id},
                        {"what", oddity.what},
                        {"detail", oddity.detail}});
  }
  const Json file = {{"format", "loopwright-report"},
                     {"version", 1},
                     {"counts", std::move(counts)},
                     {"oddities", std::move(oddities)}};
  return file.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace loopwright::file
