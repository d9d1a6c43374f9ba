// Method: the words are the table's; who reads them doesn't know the trade, so nothing is said of levels and hardness.
#include "card/at_home_sections.hpp"

#include <algorithm>

#include "card/head.hpp"
#include "card/light.hpp"
#include "card/practice.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"

namespace loopwright::card {
namespace {

constexpr int lines_of_help = 6;

Section under(const say::Words& words, std::string_view key) {
  return {std::string(words.at(key)), {}};
}

void say_line(Section& section, std::string text, int level = 0) {
  section.lines.push_back({level, std::move(text)});
}

std::string home_place_words(const say::Words& words, const HomeSheet& sheet) {
  return sheet.corner.empty()
             ? words.fill("at_home.place", {{"street", sheet.street}})
             : words.fill("at_home.place_at", {{"street", sheet.street}, {"corner", sheet.corner}});
}

Section what_it_is(const say::Words& words, const HomeSheet& sheet) {
  Section section = under(words, "at_home.what");
  say_line(section, words.fill("at_home.for", {{"code", sheet.code}}));
  say_line(section, std::string(words.at("at_home.none_new")));
  return section;
}

Section where_and_when(const say::Words& words, const HomeSheet& sheet, const Subject& subject) {
  Section section = under(words, "at_home.where");
  say_line(section, home_place_words(words, sheet));
  say_line(section, words.fill("at_home.change_seats", {{"check", sheet.check}}), 1);
  say_line(section,
           words.fill("at_home.planned", {{"when", write_when(words, subject.loop.start)}}));
  say_line(section, words.fill("at_home.quiet", {{"hours", sheet.quiet}}), 1);
  return section;
}

Section what_is_alone(const say::Words& words, const HomeSheet& sheet) {
  Section section{words.fill("at_home.alone", {{"code", sheet.code}}), {}};
  for (auto first = sheet.alone.begin(); first != sheet.alone.end();) {
    const auto end = std::find_if(first, sheet.alone.end(), [&](const HomeSheet::Alone& one) {
      return one.last != first->last;
    });
    std::vector<std::string> kinds;
    for (auto one = first; one != end; ++one)
      kinds.push_back(write_kind(words, one->kind, one->movement));
    say_line(section,
             words.fill("at_home.seen", {{"what", joined(kinds, ", ")}, {"day", first->last}}));
    first = end;
  }
  say_line(section, std::string(words.at("at_home.else")));
  return section;
}

Section law_of(const say::Words& words, const HomeSheet& sheet) {
  Section section = under(words, "at_home.law");
  for (const HomeSheet::Law& law : sheet.laws)
    say_line(section, words.fill(law.words, {{"age", std::to_string(law.age)},
                                             {"years", std::to_string(law.years)}}));
  say_line(section, std::string(words.at("at_home.law_note")));
  return section;
}

Section help_of(const say::Words& words) {
  Section section = under(words, "at_home.help");
  for (int n = 1; n <= lines_of_help; ++n)
    say_line(section, std::string(words.at("at_home.help." + std::to_string(n))));
  return section;
}

/// "emerge left 3 (rows 2, 5)"; all in one paragraph, since nobody ticks them off.
std::string on_the_way(const Subject& subject) {
  std::vector<std::string> all;
  for (const auto& [what, counted] : practice_of(subject))
    all.push_back(write_kind(subject.words, what.kind, what.movement) + " " +
                  std::to_string(counted.passes));
  return joined(all, ", ");
}

}  // namespace

std::vector<Section> home_sections(const HomeSheet& sheet, const Subject& subject) {
  const say::Words& words = subject.words;
  return {what_it_is(words, sheet), where_and_when(words, sheet, subject), law_of(words, sheet),
          help_of(words), what_is_alone(words, sheet)};
}

std::vector<Section> drive_sections(const Subject& subject, std::size_t number) {
  const say::Words& words = subject.words;
  const Head head = head_of(subject);
  Section first{words.fill("at_home.drive", {{"n", std::to_string(number)}}), {}};
  for (const std::string& line : head.first) say_line(first, line);
  say_line(first,
           head.driving + "; " +
               say::say_distance(subject.loop.metres, subject.roads.info().region.unit, words));
  if (const std::string all = on_the_way(subject); !all.empty())
    say_line(first, words.fill("at_home.on_the_way", {{"what", all}}));
  std::vector<Section> sections{std::move(first)};
  for (const auto& make : {bus_lanes_of, hours_of, unsure_of, light_of}) {
    Section section = make(subject);
    if (!section.lines.empty()) sections.push_back(std::move(section));
  }
  return sections;
}

Section home_cautions(const std::vector<const Subject*>& drives, const say::Words& words) {
  Section section = under(words, "card.cautions");
  std::vector<std::string> all;
  for (const Subject* drive : drives)
    for (std::string& caution : cautions_for(words, drive->loop, drive->timed))
      if (std::find(all.begin(), all.end(), caution) == all.end())
        all.push_back(std::move(caution));
  for (std::string& caution : all)
    say_line(section, caution == words.at("caution.decides")
                          ? std::string(words.at("at_home.decides"))
                          : std::move(caution));
  return section;
}

}  // namespace loopwright::card
