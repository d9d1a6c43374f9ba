// The wish as JSON, member by member; what a wish may lack is written only when it has it.
#include "file/words.hpp"
#include "file/write_lesson.hpp"
#include "file/write_values.hpp"
#include "loopwright/road/kind.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::file {
namespace values {

Json text_or_null(std::string_view text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

/// One division by 1e7 gives the double nearest to the decimal; a product would not.
Json point(const Point& at) {
  return {{"lat", at.lat_e7 / 1e7}, {"lon", at.lon_e7 / 1e7}};
}

Json want(const wish::Want& want, const char* count_key) {
  Json result = {{"kind", road::name(want.kind)},
                 {"movement", text_or_null(road::name(want.movement))}};
  if (want.verdict) result["verdict"] = wish::name(*want.verdict);
  if (want.into) result["into"] = road::name(*want.into);
  result[count_key] = want.count ? Json(*want.count) : Json("max");
  return result;
}

}  // namespace values

namespace {

using namespace values;

Json terms(const hours::SchoolTerms& terms) {
  return list(terms.parts(), [](const hours::TermPart& part) {
    return Json{{"first", road::day_text(part.first)}, {"last", road::day_text(part.last)}};
  });
}

Json avoid(const wish::Avoid& avoid) {
  Json result = {{"kind", road::name(avoid.kind)}};
  if (avoid.movement != road::Movement::none) result["movement"] = road::name(avoid.movement);
  return result;
}

Json keep_off(const wish::KeepOff& keep_off) {
  Json result = {{"name", keep_off.name}, {"outline", list(keep_off.outline, point)}};
  if (!keep_off.hours.empty()) result["hours"] = keep_off.hours;
  return result;
}

/// What the wish keeps off, welcomes and caps.
void write_limits(const wish::Wish& wish, Json& result) {
  if (!wish.keep_offs.empty()) result["keep_offs"] = list(wish.keep_offs, keep_off);
  if (!wish.takes.empty())
    result["takes"] = list(wish.takes, [](const wish::Take& take) {
      return Json{{"name", take.name}, {"at", point(take.at)}};
    });
  if (!wish.welcome.empty())
    result["welcome"] = list(wish.welcome, [](road::Kind kind) { return road::name(kind); });
  if (!wish.spacings.empty())
    result["spacings"] = list(wish.spacings, [](const wish::Spacing& spacing) {
      return Json{{"kind", road::name(spacing.kind)}, {"seconds", spacing.seconds}};
    });
  if (wish.place_passes) result["place_passes"] = *wish.place_passes;
  if (wish.street_passes) result["street_passes"] = *wish.street_passes;
  if (!wish.street_use.empty())
    result["street_use"] = list(wish.street_use, [](const wish::StreetUse& use) {
      return Json{{"way", use.way}, {"today", use.today}, {"month", use.month}};
    });
  if (wish.hardest) result["hardest"] = *wish.hardest;
}

Json planned_stops(const wish::PlannedStops& stops) {
  return {{"brief_minutes", stops.brief_minutes},
          {"talk_minutes", stops.talk_minutes},
          {"new_kinds", list(stops.new_kinds, [](road::Kind kind) { return road::name(kind); })}};
}

}  // namespace

values::Json write_wish(const wish::Wish& wish) {
  Json result = {{"home", point(wish.home)},
                 {"end", or_null(wish.end, point)},
                 {"through", list(wish.through, point)},
                 {"start", write_time(wish.start)},
                 {"minutes", or_null(wish.minutes, [](int value) { return value; })},
                 {"reserve_minutes", wish.reserve_minutes},
                 {"level", wish.level},
                 {"level_given", wish.level_given},
                 {"alternatives", wish.alternatives},
                 {"wants", list(wish.wants, [](const wish::Want& w) { return want(w, "count"); })},
                 {"avoids", list(wish.avoids, avoid)}};
  write_limits(wish, result);
  write_lesson(wish, result);
  if (!wish.stops.new_kinds.empty() || wish.stops.talk_minutes > 0)
    result["stops"] = planned_stops(wish.stops);
  if (wish.pace != wish::usual_pace) result["pace"] = rounded(wish.pace, 100);
  if (wish.independent_minutes > 0) result["independent_minutes"] = wish.independent_minutes;
  if (wish.terms) result["terms"] = terms(*wish.terms);
  return result;
}

}  // namespace loopwright::file
