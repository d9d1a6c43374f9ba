// Method:
// 1. Findings are counted by kind, sure and inferred apart; kinds without any are named in one line.
// 2. Of each kind some of which is inferred: how it is inferred, and up to three places to look at,
//    spread over the list.
// 3. Coverage: the share of each sort of street that carries no word of a fact, rounded so that
//    "some" never reads as all or none.
// 4. Oddities by settlement: the nearest named place within 5 km of the object's road; objects that
//    left no road behind have no place.
#include "loopwright/card/area_report.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>

#include "card/document.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/road/findings.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::card {
namespace {

using road::Confidence;
using road::Finding;
using road::Kind;

constexpr double metres_per_mile = 1609.344, metres_per_km = 1000;

std::string in_units(double metres, SpeedUnit unit) {
  const bool miles = unit == SpeedUnit::mph;
  const double value = metres / (miles ? metres_per_mile : metres_per_km);
  const auto tenths = std::llround(value * 10);
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) +
         (miles ? " miles" : " km");
}

/// Whole per cent; 0 and 100 only when it is none or all.
int per_cent(double part, double whole) {
  if (part <= 0) return 0;
  if (part >= whole) return 100;
  return std::clamp(static_cast<int>(std::lround(100 * part / whole)), 1, 99);
}

/// Metres of road by how its limit is known.
struct LimitLengths {
  double certain = 0, inferred = 0, check = 0, all = 0;
};

class AreaReport {
 public:
  AreaReport(const road::Roads& roads, const road::Report& report)
      : roads_(roads), report_(report), findings_(road::findings(roads)) {}
  std::string write(DocumentForm form);

 private:
  using Found = std::map<Kind, std::vector<const Finding*>>;
  void add_head(Document& page) const;
  void add_found(Document& page) const;
  void add_inferred(Document& page) const;
  void add_limits(Document& page) const;
  void add_unknown(Document& page) const;
  void add_mending(Document& page) const;
  [[nodiscard]] Found by_kind() const;
  [[nodiscard]] std::vector<std::string> found_row(Kind kind,
                                                   const std::vector<const Finding*>& all) const;
  [[nodiscard]] std::string examples(const std::vector<const Finding*>& inferred) const;
  [[nodiscard]] std::string where(const OsmObject& object, std::optional<Point> at) const;
  [[nodiscard]] const road::Piece* road_of(const OsmObject& object) const;
  [[nodiscard]] std::string settlement_near(Point at) const;
  [[nodiscard]] std::string mending(const road::Oddity& oddity) const;
  [[nodiscard]] std::string kind_words(Kind kind) const {
    return write_kind(words_, kind, road::Movement::none);
  }
  [[nodiscard]] SpeedUnit unit() const { return roads_.info().region.unit; }

  const road::Roads& roads_;
  const road::Report& report_;
  std::vector<Finding> findings_;
  say::Words words_;
};

bool is_inferred(const Finding* finding) {
  return finding->confidence == Confidence::inferred;
}

std::string degrees(Point at) {
  std::array<char, 48> text{};
  const int size = std::snprintf(text.data(), text.size(), "%.5f,%.5f", at.lat(), at.lon());
  return {text.data(), static_cast<std::size_t>(size)};
}

std::string object_words(const OsmObject& object) {
  constexpr std::array<std::string_view, 3> types{"node", "way", "relation"};
  return std::string(types.at(static_cast<std::size_t>(object.type))) + " " +
         std::to_string(object.id);
}

AreaReport::Found AreaReport::by_kind() const {
  Found found;
  for (const Finding& finding : findings_) found[finding.kind].push_back(&finding);
  return found;
}

void AreaReport::add_head(Document& page) const {
  const road::AreaInfo& info = roads_.info();
  const auto date = read_time(info.map_timestamp);
  const std::string side(name(info.region.side));
  page.paragraph(
      date ? words_.fill("report.region", {{"region", info.region.code},
                                           {"side", side},
                                           {"date", info.map_timestamp.substr(0, 10)}})
           : words_.fill("report.region_undated", {{"region", info.region.code}, {"side", side}}));
  double metres = 0;
  for (std::size_t p = 0; p < roads_.pieces.size(); ++p) {
    const StretchId along{PieceId{p}, false};
    if (roads_.drivable(along) || roads_.drivable(along.back()))
      metres += roads_.pieces[p].length_m;
  }
  page.paragraph(words_.fill("report.length", {{"length", in_units(metres, unit())}}));
  page.paragraph(std::string(words_.at("report.caution")));
}

std::vector<std::string> AreaReport::found_row(Kind kind,
                                               const std::vector<const Finding*>& all) const {
  const auto inferred = std::ranges::count_if(all, is_inferred);
  double metres = 0;
  for (const Finding* finding : all) metres += finding->length_m;
  return {kind_words(kind), std::to_string(static_cast<std::int64_t>(all.size()) - inferred),
          std::to_string(inferred), metres > 0 ? in_units(metres, unit()) : ""};
}

void AreaReport::add_found(Document& page) const {
  page.heading(std::string(words_.at("report.found")));
  TableCells cells(1);
  constexpr std::size_t columns_of_table = 4;
  for (std::size_t i = 1; i <= columns_of_table; ++i) {
    cells.front().emplace_back(words_.item("report.found_head", i));
  }
  std::vector<std::string> missing;
  const Found found = by_kind();
  for (const Kind kind : road::all_kinds()) {
    const auto at = found.find(kind);
    if (at == found.end()) {
      missing.push_back(kind_words(kind));
    } else {
      cells.push_back(found_row(kind, at->second));
    }
  }
  page.table(std::move(cells));
  if (missing.empty()) return;
  page.paragraph(words_.fill("report.not_found", {{"kinds", joined(missing, ", ")}}));
}

/// Of the map object when it is a road of the area, else of the road nearest by.
const road::Piece* AreaReport::road_of(const OsmObject& object) const {
  if (object.type == ObjectType::way) {
    const auto pieces = roads_.pieces_of_way(object.id);
    return pieces.empty() ? nullptr : &pieces.front();
  }
  if (object.type != ObjectType::node) return nullptr;
  const NodeId node = roads_.find_node(object.id);
  if (!node.known()) return nullptr;
  const road::Piece* best = nullptr;
  for (const StretchId away : roads_.leaving(node)) {
    const road::Piece& piece = roads_.piece(away);
    const bool better = best == nullptr || (best->name.value == 0 && piece.name.value != 0);
    if (better) best = &piece;
  }
  return best;
}

std::string AreaReport::where(const OsmObject& object, std::optional<Point> at) const {
  const road::Piece* piece = road_of(object);
  if (piece == nullptr && !at) return std::string(words_.at("report.unplaced"));
  std::string street;
  if (piece != nullptr) {
    street = roads_.text(piece->name);
    if (street.empty()) street = roads_.text(piece->ref);
    if (!at) at = point_along(roads_.shape_of(roads_.id_of(*piece)), piece->length_m / 2);
  }
  if (street.empty()) street = words_.at("report.no_name");
  return words_.fill("report.at", {{"street", street}, {"at", degrees(*at)}});
}

std::string AreaReport::examples(const std::vector<const Finding*>& inferred) const {
  constexpr std::size_t most = 3;
  const std::size_t count = std::min(most, inferred.size());
  std::vector<std::string> texts;
  for (std::size_t i = 0; i < count; ++i) {
    const Finding& finding = *inferred[i * inferred.size() / count];
    texts.push_back(where(finding.object, finding.at));
  }
  return joined(texts, "; ");
}

void AreaReport::add_inferred(Document& page) const {
  page.heading(std::string(words_.at("report.inferred")));
  std::vector<std::string> items;
  for (const auto& [kind, all] : by_kind()) {
    std::vector<const Finding*> inferred = all;
    std::erase_if(inferred, [](const Finding* f) { return !is_inferred(f); });
    if (inferred.empty()) continue;
    items.push_back(
        words_.fill("report.inferred_kind", {{"kind", say::capitalised(kind_words(kind))},
                                             {"n", std::to_string(inferred.size())},
                                             {"all", std::to_string(all.size())},
                                             {"how", std::string(road::kind_row(kind).told_by)},
                                             {"where", examples(inferred)}}));
  }
  page.list(std::move(items));
  add_limits(page);
}

void AreaReport::add_limits(Document& page) const {
  LimitLengths lengths;
  for (std::size_t s = 0; s < roads_.stretches.size(); ++s) {
    const StretchId stretch{s};
    if (!roads_.drivable(stretch)) continue;
    const double metres = roads_.piece(stretch).length_m;
    lengths.all += metres;
    switch (roads_.stretch(stretch).limit.confidence) {
      case road::LimitConfidence::inferred:
        lengths.inferred += metres;
        break;
      case road::LimitConfidence::check:
        lengths.check += metres;
        break;
      default:
        lengths.certain += metres;
    }
  }
  if (lengths.all == 0) return;
  const auto share = [&](double part) { return std::to_string(per_cent(part, lengths.all)); };
  page.paragraph(words_.fill("report.limits", {{"certain", share(lengths.certain)},
                                               {"inferred", share(lengths.inferred)},
                                               {"check", share(lengths.check)}}));
}

void AreaReport::add_unknown(Document& page) const {
  page.heading(std::string(words_.at("report.unknown")));
  std::vector<std::string> items;
  for (const road::Coverage& row : report_.coverage()) {
    const int untold = per_cent(row.all_m - row.told_m, row.all_m);
    if (untold == 0) continue;
    const std::string_view key = untold == 100 ? "report.none_told" : "report.some_told";
    items.push_back(words_.fill(
        key, {{"share", std::to_string(untold)}, {"streets", row.streets}, {"fact", row.fact}}));
  }
  page.list(std::move(items));
}

std::string AreaReport::settlement_near(Point at) const {
  constexpr double within_m = 5000;
  constexpr std::array<std::string_view, 7> settlements{
      "place=city",   "place=town",          "place=village", "place=hamlet",
      "place=suburb", "place=neighbourhood", "place=quarter"};
  double nearest = within_m;
  std::string found;
  for (const road::NamedSpot& spot : roads_.named_spots) {
    if (std::ranges::find(settlements, roads_.text(spot.what)) == settlements.end()) continue;
    const double metres = distance_m(spot.at, at);
    if (metres >= nearest) continue;
    nearest = metres;
    found = roads_.text(spot.name);
  }
  return found.empty() ? std::string(words_.at("report.elsewhere")) : found;
}

std::string AreaReport::mending(const road::Oddity& oddity) const {
  std::string text = where(oddity.object, {}) + ": " + oddity.what;
  if (!oddity.detail.empty()) text += ", " + oddity.detail;
  return text + " [" + object_words(oddity.object) + "]";
}

void AreaReport::add_mending(Document& page) const {
  page.heading(std::string(words_.at("report.mend")));
  if (report_.oddities().empty()) {
    page.paragraph(std::string(words_.at("report.mend_none")));
    return;
  }
  page.paragraph(std::string(words_.at("report.mend_how")));
  std::map<std::string, std::vector<std::string>> by_place;
  for (const road::Oddity& oddity : report_.oddities()) {
    const road::Piece* piece = road_of(oddity.object);
    const std::string place = piece == nullptr
                                  ? std::string(words_.at("report.unplaced"))
                                  : settlement_near(roads_.shape_of(roads_.id_of(*piece)).front());
    by_place[place].push_back(mending(oddity));
  }
  for (auto& [place, items] : by_place) {
    std::ranges::sort(items);
    page.subheading(say::capitalised(place));
    page.list(std::move(items));
  }
}

std::string AreaReport::write(DocumentForm form) {
  Document page(words_.fill("report.title", {{"file", roads_.info().source_file}}));
  add_head(page);
  add_found(page);
  add_inferred(page);
  add_unknown(page);
  add_mending(page);
  page.paragraph(write_credit(words_, roads_));
  page.paragraph(std::string(words_.at("card.licence")));
  return card::write(page, form);
}

}  // namespace

std::string write_area_report(const road::Roads& roads, const road::Report& report,
                              DocumentForm form) {
  return AreaReport(roads, report).write(form);
}

}  // namespace loopwright::card
