// Method: a screen asks for a dozen tiles of one lesson: of the last few roads that the area handed out the tiles are kept.
#include "page/noted_tiles.hpp"

#include <limits>
#include <optional>
#include <string_view>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/road/setting_of.hpp"
#include "loopwright/wish/lesson.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

// As many as the area keeps for its notes, and the map alone.
constexpr std::size_t most_laid = 5;
constexpr std::int64_t most_minutes = 600;  // as of a wish

/// "2026-11-28T15:00" on the clock of the area.
std::optional<Instant> moment_of(std::string_view text, std::string_view zone) {
  const auto written = read_time(text);
  if (!written) return std::nullopt;
  if (!written->offset_s) return hours::instant_in(zone, written->civil);
  return hours::with_offset_of(zone, civil_seconds(written->civil) - *written->offset_s);
}

/// Of "/tiles/15/16620/10404".
std::optional<TileAddress> tile_of(std::string_view path) {
  const auto parts = split(path.substr(1), '/');
  if (parts.size() != 4) return std::nullopt;
  const auto zoom = read_int64(parts[1]), column = read_int64(parts[2]), row = read_int64(parts[3]);
  constexpr std::int64_t most = std::numeric_limits<std::uint32_t>::max();
  const auto fits = [](const auto& number) { return number && *number >= 0 && *number <= most; };
  if (!fits(zoom) || !fits(column) || !fits(row) || *zoom > most_zoom) return std::nullopt;
  const TileAddress tile{static_cast<int>(*zoom), static_cast<std::uint32_t>(*column),
                         static_cast<std::uint32_t>(*row)};
  return is_tile(tile) ? std::optional(tile) : std::nullopt;
}

}  // namespace

std::shared_ptr<const NotedTiles::Laid> NotedTiles::of(const Instant& start, int minutes) {
  std::shared_ptr<const road::Roads> roads = area_.noted(start, minutes);
  const std::lock_guard lock(mutex_);
  for (const auto& each : kept_)
    if (each->roads == roads) return each;
  kept_.push_front(std::make_shared<const Laid>(std::move(roads), area_.map()));
  if (kept_.size() > most_laid) kept_.pop_back();
  return kept_.front();
}

Reply NotedTiles::answer(const Address& address, const hours::SchoolTerms& terms) {
  const road::AreaInfo& info = area_.map().info();
  const auto tile = tile_of(address.path);
  if (!tile) return trouble(404, "there is no such tile");
  const auto at = moment_of(word(address, "at"), info.zone);
  const auto minutes = read_int64(word(address, "minutes"));
  if (!at || !minutes || *minutes < 0 || *minutes > most_minutes)
    return trouble(400, "at: a time such as 2026-11-28T15:00; minutes: of a lesson from then");
  Reply reply{
      .status = 200, .type = "application/vnd.mapbox-vector-tile", .body = "", .headers = {}};
  try {
    const auto laid = of(*at, wish::slow_minutes(static_cast<int>(*minutes)));
    reply.body = laid->tiles.tile(*tile, {*at, at->plus_seconds(60 * *minutes)},
                                  road::setting_of(info, middle_of(*tile), terms));
  } catch (const InputError& error) {
    return trouble(422, error.what());
  }
  return reply;
}

}  // namespace loopwright::page
