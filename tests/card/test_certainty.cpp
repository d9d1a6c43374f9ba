// Nothing inferred is ever printed as certain. Each pass and each limit of a drive is taken twice,
// once as certain and once as inferred: where the two texts are alike the thing isn't spoken of at
// all, and where they differ the inferred one must say so in words.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <sstream>

#include "card/card_town.hpp"
#include "loopwright/card/card.hpp"

namespace loopwright::test {
namespace {

using Writer = std::string (*)(const road::Roads&, const wish::Answer&);

std::string card_text(const road::Roads& roads, const wish::Answer& answer) {
  return card::write_text({roads, answer, answer.loops[0], {}});
}
std::string gpx(const road::Roads& roads, const wish::Answer& answer) {
  return card::write_gpx({roads, answer, answer.loops[0], {}});
}
std::string geojson(const road::Roads& roads, const wish::Answer& answer) {
  return card::write_geojson({roads, answer, answer.loops[0], {}});
}
std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// The lines of the first text that the second one hasn't.
std::string lines_only_in(const std::string& text, const std::string& other) {
  const auto others = lines_of(other);
  std::string only;
  for (const std::string& line : lines_of(text)) {
    if (std::ranges::find(others, line) == others.end()) only += line + "\n";
  }
  return only;
}

bool hedges(const std::string& lines) {
  constexpr std::array<std::string_view, 6> words{
      "perhaps", "inferred", "see who gives way", "see for yourself", "look for the sign", "check"};
  return std::ranges::any_of(
      words, [&](std::string_view word) { return lines.find(word) != std::string::npos; });
}

struct Form {
  std::string_view name;
  Writer write;
};
constexpr std::array forms{Form{"card", card_text}, Form{"gpx", gpx}, Form{"geojson", geojson}};

/// A drive of the card town with one pass of every kind, whether it is there or not.
wish::Answer answer_with_every_kind(const BuiltTown& town) {
  wish::Answer answer = card_answer(town);
  std::vector<wish::Pass>& passes = answer.loops[0].passes;
  for (const road::Kind kind : road::all_kinds()) {
    if (std::ranges::find(passes, kind, &wish::Pass::kind) != passes.end()) continue;
    wish::Pass pass;
    pass.kind = kind, pass.first = 3, pass.last = road::is_stretch_like(kind) ? 3 : 4;
    if (!road::movements_of(kind).empty()) pass.movement = road::movements_of(kind).front();
    passes.push_back(pass);
  }
  for (wish::Pass& pass : passes) pass.confidence = road::Confidence::certain;
  return answer;
}

}  // namespace

TEST_CASE("a pass that is inferred is never written as one that is certain", "[card]") {
  const BuiltTown town = built_card_town();
  wish::Answer answer = answer_with_every_kind(town);
  for (const Form& form : forms) {
    for (std::size_t i = 0; i < answer.loops[0].passes.size(); ++i) {
      wish::Pass& pass = answer.loops[0].passes[i];
      const std::string certain = form.write(town.roads(), answer);
      pass.confidence = road::Confidence::inferred;
      const std::string inferred = form.write(town.roads(), answer);
      pass.confidence = road::Confidence::certain;
      CAPTURE(form.name, road::name(pass.kind), i, lines_only_in(inferred, certain));
      CHECK(hedges(lines_only_in(inferred, certain)));
    }
  }
}

TEST_CASE("a limit that is inferred or in doubt is never written as a mapped one", "[card]") {
  const BuiltTown town = built_card_town();
  wish::Answer answer = card_answer(town);
  for (wish::LoopStretch& stretch : answer.loops[0].stretches) {
    stretch.limit.confidence = road::LimitConfidence::certain;
  }
  for (const auto doubt : {road::LimitConfidence::inferred, road::LimitConfidence::check}) {
    std::size_t differ = 0;
    for (std::size_t i = 0; i < answer.loops[0].stretches.size(); ++i) {
      road::LimitOnDay& limit = answer.loops[0].stretches[i].limit;
      const std::string certain = card_text(town.roads(), answer);
      limit.confidence = doubt;
      const std::string inferred = card_text(town.roads(), answer);
      limit.confidence = road::LimitConfidence::certain;
      CAPTURE(i, lines_only_in(inferred, certain));
      differ += certain != inferred;
      CHECK((certain == inferred || hedges(lines_only_in(inferred, certain)) ||
             lines_only_in(inferred, certain).find("may have changed") != std::string::npos));
    }
    CHECK(differ == answer.loops[0].stretches.size());
  }
}

TEST_CASE("what the instructor noted is neither called certain by the map nor inferred", "[card]") {
  const BuiltTown town = built_card_town();
  wish::Answer answer = card_answer(town);
  for (wish::Pass& pass : answer.loops[0].passes) pass.confidence = road::Confidence::noted;
  CHECK(geojson(town.roads(), answer).find("\"confidence\": \"certain\"") == std::string::npos);
  CHECK(gpx(town.roads(), answer).find("inferred") == std::string::npos);
  CHECK(card_text(town.roads(), answer).find(", as you noted") != std::string::npos);
}

}  // namespace loopwright::test
