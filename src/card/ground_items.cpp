// Method:
//   1. Each thing with hours is an item; its facts are the ways along which it was met, with its raw hours.
//   2. Stretches whose limit isn't sure come together by street and limit; their facts are their ways.
//   3. Inferred passes come together by the row that is said at them; a fact is a kind at an object, as one comes from a way.
#include "card/ground_items.hpp"

#include <algorithm>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/subject_of.hpp"
#include "loopwright/base/object_text.hpp"
#include "loopwright/lanes/thing.hpp"
#include "loopwright/say/limit_told.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::card {
namespace {

std::string way_text(const wish::LoopStretch& driven) {
  return "way/" + std::to_string(driven.way);
}

void add_fact(std::vector<wish::MapFact>& facts, wish::MapFact fact) {
  if (std::find(facts.begin(), facts.end(), fact) == facts.end()) facts.push_back(std::move(fact));
}

void add_row(std::vector<std::size_t>& rows, std::size_t row) {
  if (std::find(rows.begin(), rows.end(), row) == rows.end()) rows.push_back(row);
}

/// Step 1.
void add_timed_items(std::vector<GroundItem>& items, const Subject& subject) {
  for (const Timed& timed : subject.timed) {
    GroundItem item{
        subject.words.fill("ground.timed",
                           {{"thing", say::capitalised(write_thing(timed))},
                            {"hours", write_hours(subject.words, timed)},
                            {"sign", std::string(lanes::sign_words(timed.thing.thing))}}),
        {},
        timed.thing.never.empty() ? timed.facts : std::vector<wish::MapFact>(),
        3};
    for (const Visit& visit : timed.visits)
      if (const auto row = row_of_visit(subject, visit)) add_row(item.rows, *row);
    items.push_back(std::move(item));
  }
}

/// Step 2.
void add_limit_items(std::vector<GroundItem>& items, const Subject& subject) {
  const say::Words& words = subject.words;
  const std::size_t first = items.size();
  const wish::RowSpan practice = wish::practice_of(subject.loop);
  for (std::size_t i = practice.first; i <= practice.last; ++i) {
    const wish::LoopStretch& driven = subject.loop.stretches[i];
    if (road::is_sure(driven.limit.confidence) || !say::tells_limit(subject.roads, driven))
      continue;
    const bool inferred = driven.limit.confidence == road::LimitConfidence::inferred;
    const std::string limit = write_limit(words, driven.limit);
    const std::string text =
        words.fill(inferred ? "ground.limit" : "ground.limit_changed",
                   {{"limit", limit},
                    {"street", driven.street.empty() ? std::string(words.at("ground.no_name"))
                                                     : say::spoken_name(driven.street)}});
    auto item = std::find_if(items.begin() + static_cast<std::ptrdiff_t>(first), items.end(),
                             [&](const GroundItem& one) { return one.words == text; });
    if (item == items.end()) item = items.insert(items.end(), {text, {}, {}, inferred ? 1 : 3});
    add_row(item->rows, row_of_stretch(subject, i));
    add_fact(item->facts, {driven.against ? "limit against" : "limit along", way_text(driven),
                           limit + (inferred ? ", inferred" : ", in doubt")});
  }
}

/// The street that a row leads into, else the one it is said on.
std::string street_at(const Subject& subject, std::size_t row) {
  const say::Row& said = subject.rows[row];
  if (!said.where.empty()) return said.where;
  const std::string& street = subject.loop.stretches[said.stretch].street;
  return street.empty() ? std::string(subject.words.at("ground.no_name"))
                        : say::spoken_name(street);
}

bool is_asked_for(const wish::Loop& loop, std::size_t pass) {
  return std::ranges::any_of(loop.met, [&](const wish::Met& met) {
    return wish::counts_for(pass, loop.passes, met.want);
  });
}

/// Step 3.
void add_inferred_items(std::vector<GroundItem>& items, const Subject& subject) {
  for (std::size_t k = 0; k < subject.rows.size(); ++k) {
    std::vector<std::string> said;
    std::vector<wish::MapFact> facts;
    int weight = 1;
    for (const std::size_t index : subject.rows[k].passes) {
      const wish::Pass& pass = subject.loop.passes[index];
      const bool learners = wish::lies_in(pass, wish::practice_of(subject.loop));
      if (!learners || pass.confidence != road::Confidence::inferred) continue;
      const std::string words = write_unsure(subject.words, pass.kind);
      if (std::find(said.begin(), said.end(), words) == said.end()) said.push_back(words);
      if (is_asked_for(subject.loop, index)) weight = 2;
      add_fact(facts, {std::string(road::name(pass.kind)) + " from " +
                           way_text(subject.loop.stretches[pass.first]),
                       text_of(pass.source), pass.tag});
    }
    if (!facts.empty())
      items.push_back({subject.words.fill("ground.place", {{"street", street_at(subject, k)},
                                                           {"what", joined(said, "; ")}}),
                       {k + 1},
                       std::move(facts),
                       weight});
  }
}

/// What has hours may lie on roads that the instructor drives.
std::string rows_of(const say::Words& words, const GroundItem& item) {
  return item.rows.empty() ? std::string(words.at("card.own_road")) : write_rows(words, item.rows);
}

}  // namespace

std::vector<GroundItem> ground_items(const Subject& subject) {
  std::vector<GroundItem> items;
  add_timed_items(items, subject);
  add_limit_items(items, subject);
  add_inferred_items(items, subject);
  return items;
}

Section ground_of(const Subject& subject) {
  const say::Words& words = subject.words;
  Section section{std::string(words.at("ground.title")), {}};
  if (subject.ground == nullptr) return section;
  std::size_t seen = 0, more = 0;
  const std::vector<GroundItem> items = ground_items(subject);
  for (std::size_t k = 0; k < items.size() && k < subject.ground->size(); ++k) {
    const wish::GroundMark& mark = (*subject.ground)[k];
    if (items[k].facts.empty()) continue;
    if (mark.letter.empty() && !mark.seen.empty()) {
      ++seen;
      continue;
    }
    // Only what matters most has a letter, and only on the drive that was planned, not on its variants.
    if (mark.letter.empty()) {
      ++more;
      continue;
    }
    section.lines.push_back({0, words.fill("ground.item", {{"letter", mark.letter},
                                                           {"what", items[k].words},
                                                           {"rows", rows_of(words, items[k])}})});
    if (!mark.seen.empty()) section.lines.push_back({1, mark.seen});
  }
  if (!section.lines.empty()) section.lines.push_back({0, std::string(words.at("ground.say"))});
  if (more > 0) section.lines.push_back({0, words.count("ground.more", more)});
  if (seen > 0) section.lines.push_back({0, words.count("ground.seen", seen)});
  return section;
}

std::vector<GroundItem> to_check(const Lesson& lesson) {
  const SubjectOf subject(lesson);
  return ground_items(subject.get());
}

}  // namespace loopwright::card
