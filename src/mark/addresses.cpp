// Addresses and things with a name, for finding places by what people call them.
//
// 1. An address is a feature with addr:housenumber, or addr:housename when it has no number. Its
//    street is addr:street, or addr:place where houses are counted by village (OSM wiki, page
//    Addresses). A list of numbers ("12;14", "12,14") is one row a number; a range ("12-16") stays
//    as it is, since only the map's makers know which numbers of it there are. A postcode without a
//    number is kept, a number that belongs to nothing isn't.
// 2. A named spot is a feature with a name, and what it is by its first telling key. A house name
//    is a name too. Bus stops are left out: they are named after streets, and would make each of
//    these streets ambiguous (ours).
// 3. Both are put in order, so that the order of the map file doesn't matter.
#include <algorithm>
#include <array>
#include <string>
#include <tuple>
#include <vector>

#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

/// The keys that say what a named thing is, the most telling first.
constexpr std::array<std::string_view, 12> telling_keys{
    "place",  "amenity",          "shop",    "tourism",  "historic", "leisure", "railway",
    "office", "public_transport", "landuse", "man_made", "building"};

std::string_view first_of(const Tags& tags, std::string_view key, std::string_view otherwise) {
  return tags.has(key) ? tags.get(key) : tags.get(otherwise);
}

/// The single numbers of "12;14" or "12, 14"; a text without a list is one part.
std::vector<std::string_view> numbers_in(std::string_view text) {
  std::vector<std::string_view> numbers;
  for (const std::string_view part : split(text, ';')) {
    for (const std::string_view number : split(part, ',')) {
      if (!number.empty() || text.empty()) numbers.push_back(number);
    }
  }
  return numbers;
}

void add_addresses_of(Draft& draft, const RawFeature& feature) {
  const std::string_view street = first_of(feature.tags, "addr:street", "addr:place");
  const std::string_view postcode = feature.tags.get("addr:postcode");
  const std::string_view number = first_of(feature.tags, "addr:housenumber", "addr:housename");
  if (postcode.empty() && (street.empty() || number.empty())) return;
  const bool is_list = feature.tags.has("addr:housenumber");
  for (const std::string_view one : is_list ? numbers_in(number) : std::vector{number}) {
    draft.tables.addresses.push_back(
        {draft.text(street), draft.text(one), draft.text(postcode), feature.at});
  }
}

std::string what_is(const Tags& tags) {
  const auto key = std::ranges::find_if(telling_keys, [&](auto k) { return tags.has(k); });
  return key == telling_keys.end() ? "" : tag_text(tags, *key);
}

void add_named_spots_of(Draft& draft, const RawFeature& feature) {
  const auto add = [&](std::string_view name, const std::string& what) {
    draft.tables.named_spots.push_back(
        {feature.object, feature.at, draft.text(name), draft.text(what)});
  };
  const std::string_view name = feature.tags.get("name"),
                         house = feature.tags.get("addr:housename");
  const std::string what = what_is(feature.tags);
  const bool bus_stop = feature.tags.is("highway", "bus_stop") ||
                        feature.tags.is("public_transport", "platform") ||
                        feature.tags.is("public_transport", "stop_position");
  if (!name.empty() && !what.empty() && !bus_stop) add(name, what);
  if (!house.empty() && house != name) add(house, tag_text(feature.tags, "addr:housename"));
}

/// By text, the place it has among those the addresses use, in alphabetical order; texts are there once each.
std::vector<std::uint32_t> alphabetical(const Draft& draft) {
  std::vector<std::uint32_t> place_of(draft.tables.text_first.size());
  for (const road::Address& row : draft.tables.addresses)
    for (const TextId text : {row.street, row.number, row.postcode}) place_of[text.index()] = 1;
  std::vector<TextId> used;
  for (std::size_t row = 0; row < place_of.size(); ++row)
    if (place_of[row] != 0) used.emplace_back(row);
  std::ranges::sort(used, {}, [&](TextId text) { return draft.text(text); });
  for (std::size_t place = 0; place < used.size(); ++place)
    place_of[used[place].index()] = static_cast<std::uint32_t>(place);
  return place_of;
}

void order_addresses(Draft& draft) {
  auto& rows = draft.tables.addresses;
  const std::vector<std::uint32_t> place_of = alphabetical(draft);
  const auto order = [&](const road::Address& a) {
    return std::tuple(place_of[a.street.index()], place_of[a.number.index()],
                      place_of[a.postcode.index()], a.at);
  };
  std::ranges::sort(rows, {}, order);
  const auto same = [&](const auto& a, const auto& b) { return order(a) == order(b); };
  rows.erase(std::unique(rows.begin(), rows.end(), same), rows.end());
}

}  // namespace

void mark_addresses(Draft& draft) {
  for (const RawFeature& feature : draft.raw.features) {
    add_addresses_of(draft, feature);
    add_named_spots_of(draft, feature);
  }
  order_addresses(draft);
  draft.report.count("addresses", static_cast<std::int64_t>(draft.tables.addresses.size()));
  draft.report.count("named places", static_cast<std::int64_t>(draft.tables.named_spots.size()));
}

}  // namespace loopwright::mark
