// Method: the words come from the table, numbers from the loop; nothing else is added.
#include "card/speech.hpp"

#include <algorithm>
#include <cmath>

#include "card/sheet.hpp"

namespace loopwright::card {
namespace {

std::string number(std::size_t n) {
  return std::to_string(n);
}

std::string write_date(const say::Words& words, Date date) {
  return words.fill(
      "card.date",
      {{"day", std::to_string(date.day)},
       {"month", std::string(words.item("months", static_cast<std::size_t>(date.month)))},
       {"year", std::to_string(date.year)}});
}

}  // namespace

std::string write_when(const say::Words& words, const Instant& at) {
  const Date date = at.civil().date;
  const auto weekday = static_cast<std::size_t>(weekday_of(date));
  return words.fill("card.when", {{"weekday", std::string(words.item("weekdays", weekday + 1))},
                                  {"date", write_date(words, date)},
                                  {"clock", write_clock(at)}});
}

std::string write_credit(const say::Words& words, const road::Roads& roads) {
  const auto date = read_time(roads.info().map_timestamp);
  if (!date) return std::string(words.at("card.credit_undated"));
  return words.fill("card.credit", {{"date", write_date(words, date->civil.date)}});
}

std::string write_limit(const say::Words& words, const road::LimitOnDay& limit) {
  if (limit.value == 0) return std::string(words.at("limit.none"));
  return words.fill("limit.value", {{"n", std::to_string(limit.value)}});
}

std::string write_kind(const say::Words& words, road::Kind kind, road::Movement movement) {
  const std::string key = "kind." + std::string(road::name(kind));
  // A kind of a later version has no words here yet; its own name is plain enough.
  const std::string text(words.has(key) ? words.at(key) : road::name(kind));
  if (movement == road::Movement::none) return text;
  const std::string how(words.at("movement." + std::string(road::name(movement))));
  return words.fill("card.movement", {{"kind", text}, {"movement", how}});
}

std::string write_asked(const say::Words& words, const wish::Want& want) {
  std::string kind = write_kind(words, want.kind, want.movement);
  if (want.verdict)
    kind =
        words.fill("card.asked_" + std::string(wish::want_word(*want.verdict)), {{"kind", kind}});
  if (want.into)
    kind =
        words.fill("card.asked_into",
                   {{"kind", kind}, {"into", write_kind(words, *want.into, road::Movement::none)}});
  if (!want.count) return words.fill("card.want_most", {{"kind", kind}});
  return words.fill("card.want", {{"kind", kind}, {"n", std::to_string(*want.count)}});
}

std::string write_unsure(const say::Words& words, road::Kind kind) {
  const std::string own = "unsure." + std::string(road::name(kind));
  if (words.has(own)) return std::string(words.at(own));
  return words.fill("unsure.pass", {{"kind", write_kind(words, kind, road::Movement::none)}});
}

std::string write_rows(const say::Words& words, const std::vector<std::size_t>& numbers) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t end = i + 1;
    while (end < numbers.size() && numbers[end] == numbers[end - 1] + 1) ++end;
    // Two in a row are as short by themselves.
    if (end - i > 2) {
      parts.push_back(words.fill("card.row_range",
                                 {{"from", number(numbers[i])}, {"to", number(numbers[end - 1])}}));
    } else {
      for (std::size_t k = i; k < end; ++k) parts.push_back(number(numbers[k]));
    }
    i = end;
  }
  const std::string_view key = numbers.size() == 1 ? "card.in_row" : "card.in_rows";
  return words.fill(key, {{"rows", joined(parts, ", ")}});
}

std::string write_minutes(const say::Words& words, double seconds) {
  const long minutes = std::lround(seconds / 60);
  if (minutes == 0) return std::string(words.at("card.soon"));
  return words.fill("card.minutes", {{"n", std::to_string(minutes)}});
}

std::vector<std::string> cautions_for(const say::Words& words, const wish::Loop& loop,
                                      const std::vector<Timed>& timed) {
  const bool crossing = std::any_of(loop.passes.begin(), loop.passes.end(), [](const auto& pass) {
    return pass.kind == road::Kind::level_crossing;
  });
  std::vector<std::string_view> keys{"parked", "signs", "decides"};
  if (crossing) keys.emplace_back("crossing");
  if (std::ranges::any_of(timed, is_for_buses)) keys.emplace_back("bus_lane");
  for (const std::string_view key : {"stop", "times", "weather", "test", "advice"})
    keys.emplace_back(key);
  std::vector<std::string> cautions;
  for (const std::string_view key : keys)
    cautions.emplace_back(words.at("caution." + std::string(key)));
  return cautions;
}

std::string cautions_in_one(const say::Words& words, const wish::Loop& loop,
                            const std::vector<Timed>& timed) {
  std::vector<std::string> cautions = cautions_for(words, loop, timed);
  const std::string barred = write_barred(words, barred_on(timed));
  if (!barred.empty()) cautions.insert(cautions.begin(), barred);
  return joined(cautions, " ");
}

std::string write_kerb(const say::Words& words, const std::vector<lanes::DoorKerb>& kerbs,
                       std::size_t row, std::size_t rows) {
  std::vector<std::string> told;
  for (const lanes::DoorKerb& kerb : kerbs) {
    const std::size_t its_row = kerb.which == lanes::DoorEnd::begin ? 0 : rows - 1;
    if (its_row != row || kerb.verdict == lanes::MayStop::usable) continue;
    told.push_back(words.fill("card.kerb", {{"kerb", lanes::kerb_words(kerb)}}));
  }
  return joined(told, "; ");
}

std::string hours_in_one(const say::Words& words, const Timed& timed) {
  std::vector<std::string> passes;
  for (const Visit& visit : timed.visits)
    passes.push_back(
        words.fill("card.passed_plain", {{"times", write_times(words, visit.when)},
                                         {"verdict", write_verdict(words, timed, visit)}}));
  return write_thing(timed) + ": " + write_hours(words, timed) + "; " + joined(passes, "; ");
}

}  // namespace loopwright::card
