// 1. A tail that is a postcode, or the first part of one, keeps what lies near houses of it; one that
//    is a street keeps what lies along it.
// 2. A settlement keeps what has it as the nearest settlement; when nothing has, what lies nearest
//    to it ("High Street, Newport": the town's own name stands in one quarter of it).
// 3. "9490 Vaduz" is a code and a settlement: both narrow.
// 4. Telling apart: the nearest settlement, else the nearest postcode, else a crossing street; the
//    first that no other one of its name shares. Rule 2 makes each of these find its own again.
#include "place/narrow.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <limits>

#include "loopwright/base/text.hpp"
#include "loopwright/place/spelling.hpp"

namespace loopwright::place {
namespace {

// Ours: a postcode is a dozen houses of one street; a settlement is found from its outskirts.
constexpr double of_postcode_m = 300, settlement_within_m = 15'000, not_near_m = 2000;
constexpr std::int32_t near_e7 = 50'000;  // about 500 m to the north, before any length is computed

bool in_box(Point a, Point b) {
  return std::abs(a.lat_e7 - b.lat_e7) < near_e7 && std::abs(a.lon_e7 - b.lon_e7) < 2 * near_e7;
}

bool touches(const Hit& hit, const Hit& other, double within_m) {
  return std::ranges::any_of(hit.extent, [&](Point at) {
    return std::ranges::any_of(other.extent, [&](Point there) {
      return in_box(at, there) && distance_m(at, there) <= within_m;
    });
  });
}

double distance_to(const Hit& hit, Point at) {
  double nearest = std::numeric_limits<double>::infinity();
  for (const Point point : hit.extent) nearest = std::min(nearest, distance_m(point, at));
  return nearest;
}

template <class Fits>
Narrowed keep(Hits& hits, Fits fits) {
  if (std::ranges::none_of(hits, fits)) return Narrowed::none_left;
  std::erase_if(hits, [&](const Hit& hit) { return !fits(hit); });
  return Narrowed::done;
}

/// The nearest point among rows that have a text.
template <class Row, class TextOf>
std::string nearest_text(std::span<const Row> rows, Point at, TextOf text_of) {
  double nearest_m = std::numeric_limits<double>::infinity();
  std::string nearest;
  for (const Row& row : rows) {
    const std::string_view text = text_of(row);
    if (text.empty()) continue;
    const double off_m = distance_m(row.at, at);
    if (off_m < nearest_m) nearest_m = off_m, nearest = text;
  }
  return nearest;
}

}  // namespace

std::string Narrowing::settlement_near(Point at) const {
  return nearest_text(roads_.named_spots, at, [this](const road::NamedSpot& spot) {
    return is_settlement(roads_.text(spot.what)) ? roads_.text(spot.name) : std::string_view();
  });
}

std::string Narrowing::postcode_near(Point at) const {
  return nearest_text(roads_.addresses, at, [&](const road::Address& address) {
    return in_box(address.at, at) ? roads_.text(address.postcode) : std::string_view();
  });
}

std::string Narrowing::street_near(const Hit& hit) const {
  for (const PieceId piece : road::pieces_near(roads_, hit.candidate.at, of_postcode_m)) {
    const std::string_view name = roads_.text(roads_.pieces[piece.index()].name);
    const bool is_other = !name.empty() && hit.candidate.name.find(name) == std::string::npos;
    const double off_m = nearest_on_line(roads_.shape_of(piece), hit.candidate.at).off_m;
    if (is_other && off_m <= of_postcode_m) return std::string(name);
  }
  return "";
}

Narrowed Narrowing::by_settlement(Hits& hits, const Candidate& settlement) const {
  const auto is_its_own = [&](const Hit& hit) {
    return squeezed(key_of(settlement_near(hit.candidate.at))) == squeezed(key_of(settlement.name));
  };
  if (keep(hits, is_its_own) == Narrowed::done) return Narrowed::done;
  double nearest_m = settlement_within_m;
  for (const Hit& hit : hits) nearest_m = std::min(nearest_m, distance_to(hit, settlement.at));
  const Narrowed kept =
      keep(hits, [&](const Hit& hit) { return distance_to(hit, settlement.at) <= nearest_m; });
  return kept == Narrowed::done && nearest_m > not_near_m ? Narrowed::far : kept;
}

Narrowed Narrowing::narrow_by_words(Hits& hits, std::string_view tail) const {
  const Hits settlements = lookup_.settlements(tail, Spelling::exact);
  if (!settlements.empty()) return by_settlement(hits, settlements.front().candidate);
  const Hits known = lookup_.named(tail, Spelling::exact);
  if (!known.empty()) {
    return keep(hits, [&](const Hit& hit) {
      return std::ranges::any_of(
          known, [&](const Hit& beside) { return touches(hit, beside, of_postcode_m); });
    });
  }
  const Hits misspelt = lookup_.settlements(tail, Spelling::near);
  if (misspelt.empty()) return Narrowed::unknown;
  return by_settlement(hits, misspelt.front().candidate);
}

Narrowed Narrowing::narrow(Hits& hits, std::string_view tail) const {
  const Narrowed whole = narrow_by_words(hits, tail);
  const std::size_t space = tail.find(' ');
  if (whole != Narrowed::unknown || space == std::string_view::npos) return whole;
  const Narrowed by_code = narrow_by_words(hits, tail.substr(0, space));
  if (by_code == Narrowed::none_left) return by_code;
  const Narrowed by_rest = narrow_by_words(hits, trim(tail.substr(space)));
  return by_rest == Narrowed::unknown ? by_code : by_rest;
}

void Narrowing::tell_apart(Hits& hits, std::size_t count) const {
  std::vector<std::array<std::string, 3>> ways;
  for (std::size_t i = 0; i < count; ++i) {
    const Point at = hits[i].candidate.at;
    ways.push_back({settlement_near(at), postcode_near(at), street_near(hits[i])});
  }
  const auto is_rival = [&](std::size_t i, std::size_t other) {
    return i != other && hits[i].candidate.name == hits[other].candidate.name;
  };
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t way = 0; way < ways[i].size() && hits[i].candidate.near.empty(); ++way) {
      bool has_rival = false, shared = false;
      for (std::size_t other = 0; other < count; ++other) {
        has_rival |= is_rival(i, other);
        shared |= is_rival(i, other) && ways[i][way] == ways[other][way];
      }
      if (has_rival && !shared) hits[i].candidate.near = ways[i][way];
    }
  }
}

}  // namespace loopwright::place
