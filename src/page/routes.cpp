#include "page/routes.hpp"

#include <array>
#include <charconv>
#include <nlohmann/json.hpp>

#include "loopwright/base/nesting.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/draw/render.hpp"
#include "loopwright/draw/symbols.hpp"
#include "loopwright/road/junction_near.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/store/area.hpp"
#include "page/assets.hpp"
#include "page/job_files.hpp"
#include "page/ledger_file.hpp"
#include "page/replies.hpp"
#include "page/said_words.hpp"
#include "page/sketches.hpp"

namespace loopwright::page {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

std::optional<std::uint32_t> whole(std::string_view text) {
  std::uint32_t number = 0;
  const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), number);
  return failure == std::errc() && end == text.data() + text.size() ? std::optional(number)
                                                                    : std::nullopt;
}

/// "54.3,2.6"
std::optional<Point> point_of(std::string_view text) {
  const auto parts = split(text, ',');
  if (parts.size() != 2) return std::nullopt;
  const auto lat = read_number(parts[0]), lon = read_number(parts[1]);
  if (!lat || !lon || std::abs(*lat) > 90 || std::abs(*lon) > 180) return std::nullopt;
  return point_from_degrees(*lat, *lon);
}

std::string degrees_of(Point at) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%.7f,%.7f", at.lat(), at.lon());
  return text.data();
}

/// What there is to practise, with the movements one may ask for.
Json kinds() {
  Json all = Json::array();
  constexpr std::array<std::string_view, 4> forms{"junction", "run", "roadside", "manoeuvre"};
  for (const road::Kind kind : road::all_kinds()) {
    Json movements = Json::array(), met_by = Json::array();
    for (const road::Movement movement : road::movements_of(kind))
      movements.push_back(road::name(movement));
    for (const road::Kind other : road::all_kinds())
      if (road::meets(other, kind)) met_by.push_back(road::name(other));
    all.push_back({{"name", road::name(kind)},
                   {"form", forms[static_cast<std::size_t>(road::form_of(kind))]},
                   {"hardness", road::kind_row(kind).hardness},
                   {"movements", std::move(movements)},
                   {"met_by", std::move(met_by)}});
  }
  return all;
}

constexpr std::string_view symbols = "/symbols/";

Reply symbol(const std::string& name) {
  const auto kind = road::parse_kind(name);
  if (!kind) return trouble(404, "there is no such kind of practice");
  return {.status = 200,
          .type = "image/svg+xml",
          .body = draw::to_svg(draw::kind_symbol(*kind)),
          .headers = {}};
}

struct Corners {
  Point south_west{900'000'000, 1'800'000'000}, north_east{-900'000'000, -1'800'000'000};
};
Corners corners_of(const road::Roads& roads) {
  Corners corners;
  for (const road::Node& node : roads.nodes) {
    corners.south_west.lat_e7 = std::min(corners.south_west.lat_e7, node.at.lat_e7);
    corners.south_west.lon_e7 = std::min(corners.south_west.lon_e7, node.at.lon_e7);
    corners.north_east.lat_e7 = std::max(corners.north_east.lat_e7, node.at.lat_e7);
    corners.north_east.lon_e7 = std::max(corners.north_east.lon_e7, node.at.lon_e7);
  }
  return corners;
}

}  // namespace

Routes::Routes(const OpenArea& area, const Desk& desk)
    : area_(area),
      roads_(area.map()),
      desk_(desk),
      tiles_(area),
      finder_(roads_),
      jobs_(desk.program, desk.scratch),
      pupils_(desk, jobs_),
      centres_(desk, jobs_),
      recorded_(desk, jobs_),
      notes_(desk, jobs_),
      questions_(desk, jobs_),
      keeping_(desk, jobs_),
      days_(desk, jobs_) {}

Reply Routes::answer(const Request& request) {
  const std::optional<Address> address = address_of(request.target);
  if (!address) return trouble(400, "no address of this page");
  if (nests_deeper(request.body, most_nested))
    return trouble(400, "lists in what was sent lie too deep in each other");
  if (address->path.starts_with("/jobs/")) return job(request, *address);
  if (address->path == "/pupils" || address->path.starts_with("/pupils/"))
    return pupils_.answer(request, *address);
  if (address->path == "/centres" || address->path.starts_with("/centres/"))
    return centres_.answer(request, *address);
  if (address->path == "/recorded" || address->path.starts_with("/recorded/"))
    return recorded_.answer(request, *address);
  if (address->path == "/day")
    return request.method == Method::post ? days_.begin(request.body)
                                          : days_.paper_of(word(*address, "day"));
  if (address->path == "/notes" || address->path.starts_with("/notes/"))
    return notes_.answer(request, *address);
  if (address->path == "/loops")
    return request.method == Method::post ? look_for_loops(request) : not_so("POST");
  if (request.method != Method::get && request.method != Method::head) return not_so("GET, HEAD");
  return get(*address);
}

Reply Routes::get(const Address& address) {
  if (address.path == "/area") return area();
  if (address.path.starts_with("/told/")) return questions_.answer(address);
  if (address.path == "/find") return find(address);
  if (address.path == "/look") return look(address);
  if (address.path.starts_with("/tiles/")) return tiles_.answer(address, desk_.school_terms);
  if (address.path == "/favicon.ico")
    return symbol(std::string(road::name(road::Kind::roundabout)));
  if (address.path.starts_with(symbols)) return symbol(address.path.substr(symbols.size()));
  if (const auto file = asset(address.path))
    return {.status = 200,
            .type = std::string(file->type),
            .body = std::string(file->bytes),
            .headers = {}};
  return trouble(404, "there is no such page");
}

Reply Routes::area() const {
  const road::AreaInfo& info = roads_.info();
  const Corners corners = corners_of(roads_);
  return told({{"file", desk_.area.filename().string()},
               {"id", info.id},
               {"region", info.region.code},
               {"zone", info.zone},
               {"map", info.map_timestamp},
               {"extent",
                {corners.south_west.lon(), corners.south_west.lat(), corners.north_east.lon(),
                 corners.north_east.lat()}},
               {"zooms", {least_zoom, most_zoom}},
               {"notes", !desk_.notes.empty()},
               {"book", !desk_.book.empty()},
               {"kinds", kinds()}});
}

Reply Routes::find(const Address& address) {
  const std::string text = word(address, "text");
  if (trim(text).empty()) return trouble(400, "text: what is to be found");
  place::Finding found;
  {
    const std::lock_guard lock(finding_);
    found = finder_.find(text);
  }
  Json places = Json::array();
  for (const place::Candidate& each : found.candidates)
    places.push_back({{"name", each.name},
                      {"what", each.what},
                      {"near", each.near},
                      {"lat", each.at.lat()},
                      {"lon", each.at.lon()}});
  return told({{"places", std::move(places)},
               {"meant", found.meant},
               {"why", found.why},
               {"instead", found.instead},
               {"note", found.note}});
}

Reply Routes::look(const Address& address) {
  const auto at = point_of(word(address, "at"));
  const std::string start = word(address, "start");
  if (!at || (!start.empty() && !read_time(start)))
    return trouble(400, "at: LAT,LON; start: a time such as 2026-11-28T15:00");
  Words words{degrees_of(*at)};
  if (!start.empty()) words.insert(words.end(), {"--start", start});
  const JobState state =
      jobs_.run([&](const fs::path&) { return on_area(desk_, {"look"}, words); });
  if (state.stage != Stage::over || state.code != 0) return trouble(422, complaint(state));
  Json said{{"said", state.said}};
  // What keeps off a junction takes a point for it within 5 m alone (DEVELOPERS.md, Keeping off); a finger isn't so sure.
  constexpr double finger_m = 40;  // ours
  if (const auto junction = road::junction_near(roads_, *at, finger_m))
    said["junction"] = degrees_of(*junction);
  return told(said);
}

Reply Routes::look_for_loops(const Request& request) {
  const WishLines wish = wish_lines(request.body);
  if (!wish.trouble.empty()) return trouble(400, wish.trouble);
  const auto id = jobs_.add([&](const fs::path& folder) {
    store::write_whole(folder / "wish", wish.text);
    Words words{"--wish", (folder / "wish").string(), "-o", (folder / "loops.json").string()};
    if (!wish.effort.empty()) words.push_back("--" + wish.effort);
    const auto start = read_time(wish.start);
    if (start && write_ledger(desk_.book, start->civil.date, folder / "driven"))
      words.insert(words.end(), {"--driven", (folder / "driven").string()});
    return on_area(desk_, {"loops"}, std::move(words));
  });
  if (!id) return too_much();
  return told({{"job", *id}});
}

Reply Routes::job(const Request& request, const Address& address) {
  const auto parts = split(std::string_view(address.path).substr(1), '/');
  const std::string id(parts[1]);
  const std::string_view what = parts.size() > 2 ? parts[2] : "";
  if (request.method == Method::remove && what.empty()) return jobs_.end(id), told(Json::object());
  if (request.method == Method::post && what == "keep")
    return keeping_.keep(jobs_.state(id), request.body);
  if (request.method != Method::get && request.method != Method::head) return not_so("GET, HEAD");
  const std::optional<JobState> state = jobs_.state(id);
  if (!state || parts.size() > 3) return trouble(404, "there is no such job, or no longer");
  if (what.empty())
    return told({{"stage", name(state->stage)},
                 {"code", state->code},
                 {"said", state->said},
                 {"warned", has_failed(*state) ? Json::array() : Json(warnings(*state))},
                 {"trouble", has_failed(*state) ? complaint(*state) : ""}});
  if (state->stage != Stage::over || has_failed(*state))
    return trouble(409, "nothing was found there yet");
  if (what == "loops") return loops_of(*state);
  if (what == "sketches" || what == "sketch")
    return sketches_of(area_, state->folder / "loops.json", what, address);
  if (what == "drive") return written(*state, address, "geojson");
  if (what == "card") return written(*state, address, word(address, "form"));
  if (auto file = file_of(*state, what)) return *file;
  return trouble(404, "there is no such thing of a job");
}

Reply Routes::loops_of(const JobState& state) const {
  std::string text = bytes_of(state.folder / "loops.json");
  const Json answer = Json::parse(text, nullptr, false);
  if (!answer.is_object() || answer.value("/area/id"_json_pointer, "") != roads_.info().id)
    return trouble(409,
                   "the area file was written anew meanwhile: end the page and start it again");
  return json(std::move(text));
}

Reply Routes::written(const JobState& job, const Address& address, const std::string& form) {
  const std::string type(type_of(form));
  const auto number = whole(word(address, "loop"));
  if (type.empty() || !number)
    return trouble(400, "loop: its number; form: pdf, html, gpx, ics or text");
  const std::string pupil = word(address, "pupil");
  Reply reply{.status = 200, .type = type, .body = "", .headers = {}};
  const JobState state = jobs_.run(
      [&](const fs::path& folder) {
        Words words{(job.folder / "loops.json").string(),
                    "--loop",
                    std::to_string(*number),
                    "--format",
                    form,
                    "-o",
                    (folder / "card").string()};
        if (!pupil.empty()) words.push_back("--pupil=" + pupil);
        return on_area(desk_, {"card"}, std::move(words));
      },
      [&](const JobState& over) { reply.body = bytes_of(over.folder / "card"); });
  if (state.stage != Stage::over || state.code != 0)
    return form == "geojson" ? trouble(422, complaint(state)) : line_to_read(422, complaint(state));
  if (form != "html" && form != "geojson" && form != "text")
    reply.headers["Content-Disposition"] = "inline; filename=\"lesson." + form + "\"";
  return reply;
}

}  // namespace loopwright::page
