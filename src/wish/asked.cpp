// Method: the words are cut at '='; kinds nest as everywhere (a spacing of roundabouts holds for
// signalled ones).
#include "loopwright/wish/asked.hpp"

#include <algorithm>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "wish/quoted.hpp"

namespace loopwright::wish {
namespace {

constexpr int most_spacing_minutes = 60;

}  // namespace

road::Kind read_welcome(std::string_view text) {
  if (text.find_first_of(":=+") != std::string_view::npos) {
    throw UsageError(quoted(text) +
                     " can't be welcomed: a kind alone can, without ':', '=' or '+'");
  }
  const road::Kind kind = read_want(text).kind;
  // That one is no stop: it lets the drive turn round where a street ends (turn_round.hpp).
  if (road::form_of(kind) == road::KindForm::manoeuvre && kind != road::Kind::turn_in_road) {
    throw UsageError(quoted(text) +
                     " can't be welcomed: a manoeuvre is only done when asked for; use --want");
  }
  return kind;
}

Spacing read_spacing(std::string_view text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos) {
    throw UsageError(quoted(text) + " is no spacing; write a kind and minutes, such as signals=4");
  }
  const std::string_view what = trim(text.substr(0, equals));
  if (what.find_first_of(":+") != std::string_view::npos) {
    throw UsageError(quoted(what) + " can't be spaced: a kind alone can, without ':' or '+'");
  }
  const std::optional<int> minutes = read_int(trim(text.substr(equals + 1)));
  if (!minutes || *minutes < 1 || *minutes > most_spacing_minutes) {
    throw UsageError("the minutes in " + quoted(text) + " are not 1 to " +
                     std::to_string(most_spacing_minutes));
  }
  return {read_want(what).kind, 60 * *minutes};
}

std::string write_spacing(const Spacing& spacing) {
  return std::string(road::name(spacing.kind)) + "=" + std::to_string(spacing.seconds / 60);
}

std::optional<int> spacing_s(const Wish& wish, const Want& want) {
  std::optional<int> most;
  for (const Spacing& spacing : wish.spacings)
    if (road::meets(want.kind, spacing.kind)) most = std::max(most.value_or(0), spacing.seconds);
  return most;
}

bool leads_into(const Pass& first, const Pass& second) {
  return second.first <= first.last && first.last <= second.last;
}

bool counts_for(std::size_t number, std::span<const Pass> passes, const Want& want) {
  const Pass& pass = passes[number];
  if (!counts_for(pass, want)) return false;
  if (!want.into) return true;
  for (std::size_t other = 0; other < passes.size(); ++other)
    if (other != number && road::meets(passes[other].kind, *want.into) &&
        leads_into(pass, passes[other]))
      return true;
  return false;
}

}  // namespace loopwright::wish
