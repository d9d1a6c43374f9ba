// 1. What is typed is cut into a head and the tails that narrow it (typed.cpp).
// 2. The head is read in one way after the other until one finds something, spelled as typed first:
//    the whole text as a name, a house name and the street after the comma, the head as a name, two
//    streets that cross, a number and a street. Then the same with typos. A street that is known but lacks
//    the house, or doesn't meet the other, ends the search: anything else would be a guess.
// 3. What is left after narrowing is put in order; the best of one grade are meant.
#include <algorithm>
#include <tuple>
#include <utility>

#include "loopwright/base/text.hpp"
#include "loopwright/place/place.hpp"
#include "place/lookup.hpp"
#include "place/narrow.hpp"

namespace loopwright::place {
namespace {

/// Bytes. No map has so long a name, and each word more would be looked for among all of them; ours.
constexpr std::size_t longest_typed = 500;

/// Readings of one text, up to the first that finds something or knows why not.
class Reading {
 public:
  Reading(const Lookup& lookup, std::string_view text, Typed typed)
      : lookup_(lookup), text_(text), typed_(std::move(typed)) {}

  /// Tails are taken off `typed` where a reading uses them up.
  Hits hits() {
    for (const Spelling spelling : {Spelling::exact, Spelling::near}) {
      if (spelling == Spelling::exact && whole()) return std::move(hits_);
      if (house_name(spelling)) return std::move(hits_);
      if (spelling == Spelling::exact && name(spelling)) return std::move(hits_);
      if (crossing(spelling) || house(spelling)) return std::move(hits_);
      if (spelling == Spelling::near && name(spelling)) return std::move(hits_);
    }
    return {};
  }
  [[nodiscard]] const std::optional<Miss>& miss() const { return miss_; }
  [[nodiscard]] const std::vector<std::string>& tails() const { return typed_.tails; }

 private:
  /// A name may have a comma in it.
  bool whole() {
    if (typed_.tails.empty()) return false;
    hits_ = lookup_.named(text_, Spelling::exact);
    if (!hits_.empty()) typed_.tails.clear();
    return !hits_.empty();
  }
  bool name(Spelling spelling) {
    hits_ = lookup_.named(typed_.head, spelling);
    return !hits_.empty();
  }
  bool crossing(Spelling spelling) {
    return std::ranges::any_of(two_streets(typed_.head), [&](const auto& streets) {
      hits_ = lookup_.crossings(streets, spelling, miss_);
      return !hits_.empty() || miss_;
    });
  }
  bool house(Spelling spelling) {
    const auto typed = number_and_street(typed_.head);
    if (!typed) return false;
    hits_ = lookup_.houses(*typed, spelling, miss_);
    return !hits_.empty() || miss_;
  }
  bool house_name(Spelling spelling) {
    if (typed_.tails.empty()) return false;
    std::optional<Miss> only_a_street;  // the head may be something else beside that street
    hits_ = lookup_.houses({typed_.head, typed_.tails.front()}, spelling, only_a_street);
    std::erase_if(hits_, [](const Hit& hit) { return hit.candidate.sort != Sort::house; });
    if (!hits_.empty()) typed_.tails.erase(typed_.tails.begin());
    return !hits_.empty();
  }

  const Lookup& lookup_;
  std::string_view text_;
  Typed typed_;
  Hits hits_;
  std::optional<Miss> miss_;
};

std::string joined(const std::vector<std::string>& tails) {
  std::string text;
  for (const std::string& tail : tails) text += (text.empty() ? "" : ", ") + tail;
  return text;
}

}  // namespace

struct Finder::Inside {
  explicit Inside(road::Roads all)
      : roads(std::move(all)),
        names(roads.place_index),
        lookup(roads, names),
        narrowing(roads, names) {}

  [[nodiscard]] Finding find(std::string_view text, const Typed& typed) const;
  [[nodiscard]] Finding nothing(const Reading& reading, const Typed& typed) const;
  void narrow(Hits& hits, const std::vector<std::string>& tails, Finding& finding) const;
  void put_in_order(Hits hits, Finding& finding) const;

  road::Roads roads;  // a view of its own, cheap to copy; the others refer to it
  Names names;
  Lookup lookup;
  Narrowing narrowing;
};

Finding Finder::Inside::nothing(const Reading& reading, const Typed& typed) const {
  Finding finding;
  if (reading.miss()) {
    finding.why = reading.miss()->why;
    finding.instead = reading.miss()->instead;
    return finding;
  }
  finding.why = "nothing in this area is called '" + typed.head + "'";
  finding.instead = lookup.spelled_like(typed.head);
  const auto house = number_and_street(typed.head);
  if (finding.instead.empty() && house) finding.instead = lookup.spelled_like(house->street);
  return finding;
}

void Finder::Inside::narrow(Hits& hits, const std::vector<std::string>& tails,
                            Finding& finding) const {
  for (const std::string& tail : tails) {
    const Narrowed narrowed = narrowing.narrow(hits, tail);
    if (narrowed == Narrowed::unknown) {
      finding.note += (finding.note.empty() ? "" : ", ") + ("'" + tail + "' isn't known here");
    } else if (narrowed == Narrowed::far) {
      finding.note += (finding.note.empty() ? "" : ", ") + ("none is nearer to " + tail);
    } else if (narrowed == Narrowed::none_left) {
      finding.why = hits.front().candidate.name + " isn't near " + tail;
      if (hits.size() > most_hints) hits.resize(most_hints);
      narrowing.tell_apart(hits, hits.size());
      for (const Hit& hit : hits) {
        const Candidate& found = hit.candidate;
        finding.instead.push_back(found.name + (found.near.empty() ? "" : ", " + found.near));
      }
      hits.clear();
      return;
    }
  }
}

void Finder::Inside::put_in_order(Hits hits, Finding& finding) const {
  if (hits.empty()) return;
  std::ranges::stable_sort(hits, {}, [](const Hit& hit) {
    const Candidate& c = hit.candidate;
    return std::tuple(c.score, c.sort, c.name, c.at);
  });
  const int best = hits.front().candidate.score;
  finding.meant = static_cast<std::size_t>(
      std::ranges::count(hits, best, [](const Hit& hit) { return hit.candidate.score; }));
  if (finding.meant > 1) narrowing.tell_apart(hits, finding.meant);
  for (Hit& hit : hits) finding.candidates.push_back(std::move(hit.candidate));
}

Finding Finder::Inside::find(std::string_view text, const Typed& typed) const {
  Reading reading(lookup, text, typed);
  Hits hits = reading.hits();
  if (hits.empty() && !reading.miss() && is_part_of_house(typed.head) && !typed.tails.empty()) {
    Finding finding = find(text, read_typed(joined(typed.tails)));
    if (!finding.candidates.empty()) finding.note = "'" + typed.head + "' isn't looked for";
    return finding;
  }
  if (hits.empty()) return nothing(reading, typed);
  Finding finding;
  narrow(hits, reading.tails(), finding);
  put_in_order(std::move(hits), finding);
  return finding;
}

Finder::Finder(const road::Roads& roads) : inside_(std::make_unique<Inside>(roads)) {}
Finder::~Finder() = default;

Finding Finder::find(std::string_view text) const {
  const std::string_view words = trim(text);
  if (words.size() > longest_typed) {
    Finding finding;
    finding.why = "no place has a name of more than " + std::to_string(longest_typed) + " letters";
    return finding;
  }
  return inside_->find(words, read_typed(words));
}

}  // namespace loopwright::place
