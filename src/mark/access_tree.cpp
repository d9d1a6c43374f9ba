// Method, after the OSM wiki pages Key:access and Conditional restrictions:
// 1. Walk up motorcar, motor_vehicle, vehicle, access: the first key there decides (the most
//    special one). 2. The same walk over the keys of the direction (vehicle:backward …). It
//    decides unless the plain key was of a more special mode: then the stricter of both holds,
//    since the wiki leaves that open and a lesson must not be wrong on the wrong side.
// 3. Conditions on top (…:conditional). A clause that always holds for our car ("yes @
// (weight<3.5)")
//    acts as a plain tag; one that never does is nothing; one that holds at times may shut the road
//    at times, and then it is shut (until the hours are asked at the time of passing). One that
//    opens it at times changes nothing but is kept too. A text that can't be read may shut.
//    Within one key a later clause beats an earlier one when both hold.
// 4. A value may list users ("agricultural;destination"): the most open one counts.
#include "access_tree.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"
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
    most_open = std::min(most_open, access_of_one(one));
  }
  return most_open;
}

Word first_word(const Tags& tags, std::string_view suffix) {
  for (std::size_t level = 0; level < modes.size(); ++level) {
    const std::string key = std::string(modes[level]) + std::string(suffix);
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

/// What one conditional key may come to for our car.
struct Outcomes {
  std::optional<Access> always;
  std::vector<Access> at_times;
};

Outcomes outcomes_of(std::string_view text) {
  Outcomes out;
  const auto clauses = hours::read_conditional(text);
  if (clauses.empty()) out.at_times.push_back(Access::no);
  for (const hours::Clause& clause : clauses) {
    const Access value = access_of(clause.value);
    switch (binding_on_car(clause.condition).when) {
      case Binding::When::never:
        break;
      case Binding::When::at_times:
        out.at_times.push_back(value);
        break;
      case Binding::When::always:
        out.at_times.clear(), out.always = value;
        break;
    }
  }
  return out;
}

struct TimedWord {
  Access access = Access::yes;
  std::string key, text;
};

/// Lays the conditional keys over the plain word; what holds only at times is gathered apart.
Word with_conditions(const Tags& tags, std::string_view direction, Word word,
                     std::vector<TimedWord>& timed) {
  for (std::size_t level = modes.size(); level-- > 0;) {
    for (const std::string_view suffix : {std::string_view(), direction}) {
      const std::string key = std::string(modes[level]) + std::string(suffix) + ":conditional";
      const std::string_view text = tags.get(key);
      if (text.empty()) continue;
      const Outcomes out = outcomes_of(text);
      if (out.always) word = over(word, {*out.always, level, tag_text(key, text)});
      for (const Access access : out.at_times) timed.push_back({access, key, std::string(text)});
    }
  }
  return word;
}

KeyAccess in_direction(const Tags& tags, std::string_view direction) {
  std::vector<TimedWord> timed;
  const Word plain = over(first_word(tags, ""), first_word(tags, direction));
  const Word word = with_conditions(tags, direction, plain, timed);
  KeyAccess result{word.access, word.level < modes.size() || !timed.empty(), word.tag, {}, {}};
  for (const TimedWord& t : timed) {
    if (t.access == word.access) continue;
    if (result.timed_key.empty() || t.access > result.access) {
      result.timed_key = t.key, result.timed_text = t.text;
    }
    if (t.access > result.access) result.access = t.access, result.tag = tag_text(t.key, t.text);
  }
  return result;
}

}  // namespace

BothAccess access_keys(const Tags& tags) {
  return {in_direction(tags, ":forward"), in_direction(tags, ":backward")};
}

}  // namespace loopwright::mark
