// Method: kind[:movement][+kind][=count|max]; the text is cut at '=', then at '+' and ':', and each part
// is read with road's words. Of bus lanes a verdict stands in the movement's place. Every refusal names
// what could have been written instead.
#include <algorithm>
#include <array>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/wish/wish.hpp"
#include "wish/quoted.hpp"

namespace loopwright::wish {
namespace {

constexpr int most_passes = 99;

template <class Words>
std::string listed(const Words& words) {
  std::string text;
  for (const auto word : words) text.append(text.empty() ? "" : ", ").append(road::name(word));
  return text;
}

road::Kind read_kind(std::string_view text) {
  const std::optional<road::Kind> kind = road::parse_kind(text);
  if (!kind) {
    throw UsageError("there is no practice kind " + quoted(text) + "; did you mean " +
                     quoted(road::name(road::nearest_kind(lower(text)))) + "?");
  }
  return *kind;
}

road::Movement read_movement(std::string_view text, road::Kind kind) {
  const auto known = road::movements_of(kind);
  const std::optional<road::Movement> movement = road::parse_movement(text);
  if (movement && std::find(known.begin(), known.end(), *movement) != known.end()) return *movement;
  if (known.empty()) {
    throw UsageError(quoted(road::name(kind)) + " has no movements; leave out " +
                     quoted(":" + std::string(text)));
  }
  throw UsageError(quoted(road::name(kind)) + " has no movement " + quoted(text) +
                   "; choose one of " + listed(known));
}

Verdict read_verdict(std::string_view text, road::Kind kind) {
  std::string words;
  for (const Verdict verdict : verdicts_of(kind)) {
    if (text == want_word(verdict)) return verdict;
    words.append(words.empty() ? "" : ", ").append(want_word(verdict));
  }
  throw UsageError(quoted(road::name(kind)) + " can't be asked for as " + quoted(text) +
                   "; choose one of " + words + ", or leave out " +
                   quoted(":" + std::string(text)));
}

/// What follows the colon.
void read_form(std::string_view text, Want& want) {
  if (verdicts_of(want.kind).empty())
    want.movement = read_movement(text, want.kind);
  else
    want.verdict = read_verdict(text, want.kind);
}

/// What follows the plus.
road::Kind read_joined(std::string_view text, const Want& want) {
  if (text.find('+') != std::string_view::npos) {
    throw UsageError("more than two kinds joined with '+': " +
                     quoted(std::string(road::name(want.kind)) + "+" + std::string(text)) +
                     "; join two, and ask for the third by itself");
  }
  if (text.find(':') != std::string_view::npos) {
    throw UsageError("nothing may follow the second kind of a join: leave out " +
                     quoted(text.substr(text.find(':'))));
  }
  const road::Kind into = read_kind(text);
  const auto is_stop = [](road::Kind kind) {
    return road::form_of(kind) == road::KindForm::manoeuvre;
  };
  if (is_stop(want.kind) || is_stop(into)) {
    throw UsageError(quoted(road::name(is_stop(into) ? into : want.kind)) +
                     " can't be joined with '+': a manoeuvre is a stop; ask for it by itself");
  }
  if (want.verdict) {
    throw UsageError(quoted("bus-lane:" + std::string(want_word(*want.verdict))) +
                     " can't be joined with '+'; ask for it by itself");
  }
  return into;
}

std::optional<int> read_count(std::string_view text, std::string_view want) {
  if (text == "max") return std::nullopt;
  const std::optional<int> count = read_int(text);
  if (!count || *count < 1 || *count > most_passes) {
    throw UsageError("the count in " + quoted(want) + " is not 1 to " +
                     std::to_string(most_passes) + " or 'max'");
  }
  return count;
}

}  // namespace

std::string write_want(const Want& want) {
  std::string text(road::name(want.kind));
  if (want.movement != road::Movement::none) text.append(":").append(road::name(want.movement));
  if (want.verdict) text.append(":").append(want_word(*want.verdict));
  if (want.into) text.append("+").append(road::name(*want.into));
  return text + "=" + (want.count ? std::to_string(*want.count) : "max");
}

Want read_want(std::string_view text) {
  Want want;
  const std::size_t equals = text.find('=');
  const std::string_view what = text.substr(0, equals);
  if (equals != std::string_view::npos) want.count = read_count(text.substr(equals + 1), text);
  const std::size_t plus = what.find('+');
  const std::string_view first = what.substr(0, plus);
  const std::size_t colon = first.find(':');
  want.kind = read_kind(first.substr(0, colon));
  if (colon != std::string_view::npos) read_form(first.substr(colon + 1), want);
  if (plus != std::string_view::npos) want.into = read_joined(what.substr(plus + 1), want);
  return want;
}

Avoid read_avoid(std::string_view text) {
  const std::size_t colon = text.find(':');
  Avoid avoid{read_kind(text.substr(0, colon))};
  if (road::form_of(avoid.kind) == road::KindForm::manoeuvre) {
    throw UsageError(quoted(text) + " needn't be avoided: a manoeuvre is only done when asked for");
  }
  if (colon != std::string_view::npos)
    avoid.movement = read_movement(text.substr(colon + 1), avoid.kind);
  return avoid;
}

std::string write_avoid(const Avoid& avoid) {
  std::string text(road::name(avoid.kind));
  if (avoid.movement != road::Movement::none) text.append(":").append(road::name(avoid.movement));
  return text;
}

bool is_avoided(const Avoid& avoid, road::Kind kind, road::Movement movement) {
  return road::meets(kind, avoid.kind) &&
         (avoid.movement == road::Movement::none || avoid.movement == movement);
}

std::string_view name(Verdict verdict) {
  switch (verdict) {
    case Verdict::usable:
      return "usable";
    case Verdict::in_force:
      return "in force";
    case Verdict::check_the_plate:
      break;
  }
  return "check the plate";
}

std::optional<Verdict> parse_verdict(std::string_view text) {
  for (const auto verdict : {Verdict::usable, Verdict::in_force, Verdict::check_the_plate}) {
    if (text == name(verdict)) return verdict;
  }
  return std::nullopt;
}

std::span<const Verdict> verdicts_of(road::Kind kind) {
  static constexpr std::array of_bus_lanes{Verdict::usable, Verdict::in_force};
  return kind == road::Kind::bus_lane ? std::span<const Verdict>(of_bus_lanes)
                                      : std::span<const Verdict>{};
}

std::string_view want_word(Verdict verdict) {
  return verdict == Verdict::in_force ? "in-force" : name(verdict);
}

bool asks_for_verdicts(const Wish& wish) {
  return std::any_of(wish.wants.begin(), wish.wants.end(),
                     [](const Want& want) { return want.verdict.has_value(); });
}

bool counts_for(const Pass& pass, const Want& want) {
  return counts_for(pass.kind, pass.movement, want) &&
         (!want.verdict || pass.verdict == want.verdict);
}

bool counts_for(road::Kind kind, road::Movement movement, const Want& want) {
  if (!road::meets(kind, want.kind)) return false;
  if (want.movement != road::Movement::none) return movement == want.movement;
  // Going all the way round counts only when asked by name (DEVELOPERS.md: value of a loop).
  return movement != road::Movement::round;
}

}  // namespace loopwright::wish
