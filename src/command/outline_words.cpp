#include "command/outline_words.hpp"

#include "command/places.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/file/outline_file.hpp"

namespace loopwright::command {
namespace {

Point corner_in(std::string_view text) {
  const WrittenPlace place = read_place("--bounds", text);
  if (!place.at)
    throw UsageError("--bounds: a corner is LAT,LON in degrees, not '" + place.text + "'");
  return *place.at;
}

std::vector<Ring> rings_between(const std::string& bounds) {
  const std::vector<std::string_view> corners = split(bounds, ';');
  if (corners.size() != 2) throw UsageError("--bounds takes two corners, LAT,LON;LAT,LON");
  const Point a = corner_in(corners[0]), b = corner_in(corners[1]);
  if (a.lat_e7 == b.lat_e7 || a.lon_e7 == b.lon_e7)
    throw UsageError("--bounds: nothing lies between these corners; give two opposite each other");
  return {Ring{{a, {a.lat_e7, b.lon_e7}, b, {b.lat_e7, a.lon_e7}}}};
}

}  // namespace

void add_outline(Options& app, OutlineTexts& texts) {
  Option* bounds = app.add_option(
      "--bounds", texts.bounds,
      "only what lies between two corners, LAT,LON;LAT,LON; roads that lead out are seen near by, "
      "but not driven");
  app.add_option("--outline", texts.file,
                 "the same inside the polygons of a file, .geojson or .poly")
      ->excludes(bounds);
}

std::shared_ptr<const read::Outline> outline_of(const OutlineTexts& texts) {
  if (texts.bounds != not_given)
    return std::make_shared<read::Outline>(rings_between(texts.bounds));
  if (texts.file == not_given) return nullptr;
  if (texts.file.empty()) throw UsageError("--outline takes a file, .geojson or .poly");
  const std::string text = file::load_text(texts.file, {"file of an outline", {}});
  return std::make_shared<read::Outline>(file::read_outline(text, texts.file));
}

}  // namespace loopwright::command
