// Method, after the OSM wiki pages Key:access and Conditional restrictions:
// 1. Walk up motorcar, motor_vehicle, vehicle, access: the first key there decides (the most
//    special one). 2. The same walk over the keys of the direction (vehicle:backward …). It
//    decides unless the plain key was of a more special mode: then the stricter of both holds,
//    since the wiki leaves that open and a lesson must not be wrong on the wrong side.
// 3. Conditions on top (…:conditional), from the least special mode to the most, so that the last
//    that holds is the one that counts. A clause of a less special mode than the plain key counts
//    only when it is stricter. One that always holds for our car ("yes @ (weight<3.5)") acts as a
//    plain tag and undoes those before it; one that never does is nothing. A text without any '@'
//    doesn't say what holds then: it may shut the road whenever asked.
//    Without any plain key, hours given to some ("delivery @ (06:00-10:00)") are a favour, as in
//    pedestrian streets: at other hours nobody is let in. Ours: the wiki's default would be yes.
// 4. A value may list users ("agricultural;destination"): the most open one counts, unless "no" is
//    among them, since a list that contradicts itself says nothing sure. By the hour
//    there is only "may be driven through" and "may not": "destination" is "may not".
// 5. Where cars are shut out, at all times or some, it matters who is let in: buses make it a bus
//    gate or bus-only street.
#include "access_tree.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "loopwright/base/text.hpp"
#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr std::array<std::string_view, 4> modes{"motorcar", "motor_vehicle", "vehicle", "access"};

/// What one key or clause says, and how special its mode is (0 the most; 4: nothing said).
struct Word {
  Access access = Access::yes;
  std::size_t level = modes.size();
  std::string tag;
};

Access access_of_one(std::string_view value) {
  constexpr std::array<std::string_view, 5> open{"yes", "designated", "permissive", "official",
                                                 "public"};
  if (one_of(value, open)) return Access::yes;
  return value == "destination" ? Access::destination : Access::no;
}

Access access_of(std::string_view value) {
  Access most_open = Access::no;
  for (const std::string_view one : split(value, ';')) {
    if (one == "no") return Access::no;
    most_open = std::min(most_open, access_of_one(one));
  }
  return most_open;
}

Word first_word(const Tags& tags, std::string_view suffix) {
  std::string key;
  key.reserve(modes[1].size() + suffix.size());
  for (std::size_t level = 0; level < modes.size(); ++level) {
    key.assign(modes[level]).append(suffix);
    if (const auto value = tags.get(key); !value.empty()) {
      return {access_of(value), level, tag_text(key, value)};
    }
  }
  return {};
}

/// `later` laid over `earlier`.
Word over(const Word& earlier, const Word& later) {
  if (later.level == modes.size()) return earlier;
  if (later.level <= earlier.level) return later;
  return later.access > earlier.access ? later : earlier;
}

/// A value that lets some in on their errand.
bool is_favour(std::string_view value) {
  constexpr std::array<std::string_view, 8> errands{"delivery",  "disabled",     "loading",
                                                    "customers", "agricultural", "forestry",
                                                    "emergency", "staff"};
  return one_of(value, errands);
}

/// True when `later` has its way over `earlier`.
bool counts(const Word& earlier, const Word& later) {
  return later.level <= earlier.level || later.access > earlier.access;
}

/// The clauses of a key; of a text that has none one that nobody can read.
std::vector<hours::Clause> clauses_of(std::string_view text) {
  auto clauses = hours::split_conditional(text);
  if (clauses.empty()) clauses.push_back({"no", "? " + std::string(text)});
  return clauses;
}

/// The keys of one direction, while conditions are laid over the plain word.
class InDirection {
 public:
  InDirection(const Tags& tags, std::string_view direction)
      : tags_(tags),
        direction_(direction),
        word_(over(first_word(tags, ""), first_word(tags, direction))) {}
  KeyAccess read();

 private:
  void lay(const std::string& key, std::size_t level);
  void add(const Word& clause, std::string condition);
  [[nodiscard]] bool lets(std::string_view mode) const;
  [[nodiscard]] std::string lets_in() const;

  const Tags& tags_;
  std::string_view direction_;
  Word word_;
  KeyAccess result_;
};

void InDirection::add(const Word& clause, std::string condition) {
  const bool may = clause.access == Access::yes;
  if (result_.clauses.empty() && may == (word_.access == Access::yes)) return;
  result_.clauses.push_back({may, std::move(condition)});
  if (result_.clause_tags.find(clause.tag) != std::string::npos) return;
  if (!result_.clause_tags.empty()) result_.clause_tags += "; ";
  result_.clause_tags += clause.tag;
}

void InDirection::lay(const std::string& key, std::size_t level) {
  const std::string_view text = tags_.get(key);
  if (text.empty()) return;
  for (const hours::Clause& clause : clauses_of(text)) {
    Binding binding = binding_on_car(clause.condition);
    if (binding.when == Binding::When::never) continue;
    const Word word{access_of(clause.value), level, tag_text(key, text)};
    if (!counts(word_, word)) continue;
    if (word_.level == modes.size() && is_favour(clause.value)) {
      word_ = {Access::no, modes.size() - 1, word.tag};
      result_.clauses.clear(), result_.clause_tags.clear();
    }
    result_.mapped = true;
    if (binding.when == Binding::When::always) {
      word_ = word, result_.clauses.clear(), result_.clause_tags.clear();
    } else {
      add(word, std::move(binding.condition));
    }
  }
}

bool InDirection::lets(std::string_view mode) const {
  for (const std::string_view suffix : {std::string_view(), direction_}) {
    const std::string key = std::string(mode).append(suffix);
    if (!tags_.get(key).empty() && access_of(tags_.get(key)) == Access::yes) return true;
    const auto clauses = hours::split_conditional(tags_.get(key + ":conditional"));
    const auto open = [](const hours::Clause& c) { return access_of(c.value) == Access::yes; };
    if (std::ranges::any_of(clauses, open)) return true;
  }
  return false;
}

std::string InDirection::lets_in() const {
  constexpr std::array<std::string_view, 3> buses{"bus", "psv", "taxi"};
  constexpr std::array<std::string_view, 5> others{"bicycle", "motorcycle", "moped", "emergency",
                                                   "hgv"};
  std::string who;
  for (const std::string_view mode : buses)
    if (lets(mode)) who.append(who.empty() ? "" : ";").append(mode);
  if (who.empty()) return who;
  for (const std::string_view mode : others)
    if (lets(mode)) who.append(";").append(mode);
  return who;
}

KeyAccess InDirection::read() {
  for (std::size_t level = modes.size(); tags_.has_conditions() && level-- > 0;) {
    for (const std::string_view suffix : {std::string_view(), direction_})
      lay(std::string(modes[level]).append(suffix).append(":conditional"), level);
  }
  result_.access = word_.access, result_.tag = word_.tag;
  result_.mapped = result_.mapped || word_.level < modes.size();
  if (result_.timed() || word_.access != Access::yes) result_.lets_in = lets_in();
  return std::move(result_);
}

}  // namespace

BothAccess access_keys(const Tags& tags) {
  return {InDirection(tags, ":forward").read(), InDirection(tags, ":backward").read()};
}

}  // namespace loopwright::mark
