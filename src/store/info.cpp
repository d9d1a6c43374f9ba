// 1. Writing: one line for each field, always all of them, in a fixed order.
// 2. Reading: the lines into a map, then each field by its key.
#include "store/info.hpp"

#include <algorithm>
#include <map>

#include "loopwright/base/error.hpp"

namespace loopwright::store {
namespace {

/// A file's name may hold a line end; in here it would start a new line.
std::string in_one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r'; }, ' ');
  return text;
}

class Fields {
 public:
  Fields(std::string_view text, const std::filesystem::path& file) : file_(file) {
    while (!text.empty()) {
      const std::string_view line = text.substr(0, text.find('\n'));
      text.remove_prefix(std::min(text.size(), line.size() + 1));
      const std::size_t equals = std::min(line.find('='), line.size());
      fields_[line.substr(0, equals)] = line.substr(std::min(equals + 1, line.size()));
    }
  }
  [[nodiscard]] std::string text(std::string_view key) const {
    const auto found = fields_.find(key);
    if (found == fields_.end()) throw bad(key);
    return std::string(found->second);
  }
  /// True for the second of the two words, false for the first.
  [[nodiscard]] bool second_of(std::string_view key, std::string_view first,
                               std::string_view second) const {
    const std::string word = text(key);
    if (word != first && word != second) throw bad(key);
    return word == second;
  }

 private:
  [[nodiscard]] InputError bad(std::string_view key) const {
    return InputError(file_.string() + ": its info block has no usable '" + std::string(key) +
                      "'; build it again with 'loopwright build'");
  }
  const std::filesystem::path& file_;
  std::map<std::string_view, std::string_view> fields_;
};

}  // namespace

std::string write_info(const road::AreaInfo& info) {
  const auto yes_no = [](bool yes) { return std::string(yes ? "yes" : "no"); };
  return "region=" + in_one_line(info.region.code) +
         "\nside=" + std::string(name(info.region.side)) +
         "\nunit=" + std::string(name(info.region.unit)) +
         "\nown_rules=" + yes_no(info.region.own_rules) +
         "\nmap_timestamp=" + in_one_line(info.map_timestamp) + "\nzone=" + in_one_line(info.zone) +
         "\nmotorways=" + yes_no(info.motorways) + "\nfords=" + yes_no(info.fords) + "\n";
}

std::string write_source(const road::AreaInfo& info) {
  return in_one_line(info.source_file);
}

road::AreaInfo read_info(std::string_view text, const std::filesystem::path& file) {
  const Fields fields(text, file);
  road::AreaInfo info;
  info.region.code = fields.text("region");
  info.region.side = fields.second_of("side", "left", "right") ? Side::right : Side::left;
  info.region.unit = fields.second_of("unit", "mph", "km/h") ? SpeedUnit::kmh : SpeedUnit::mph;
  info.region.own_rules = fields.second_of("own_rules", "no", "yes");
  info.map_timestamp = fields.text("map_timestamp");
  info.zone = fields.text("zone");
  info.motorways = fields.second_of("motorways", "no", "yes");
  info.fords = fields.second_of("fords", "no", "yes");
  return info;
}

}  // namespace loopwright::store
