// Method: the loop is tied to the roads as its notes make them, and spoken as the card speaks it; a row whose place lies
// between two of its stretches has a sketch of that place.
#include "page/sketches.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "loopwright/base/text.hpp"
#include "loopwright/draw/render.hpp"
#include "loopwright/draw/sketch.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/wish/learners_drive.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/resolve.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

// Read on a screen beside the rows: a quarter of a sheet of paper, as the pack has it.
constexpr draw::Size sketch_mm{92, 125};

bool has_junction(const say::Row& row) {
  return row.kind != say::RowKind::leave && row.kind != say::RowKind::pull_up &&
         row.stretch < row.exit;
}

/// "at the roundabout take the third exit, Tanner Street"
std::string text_of(const say::Row& row) {
  return row.where.empty() ? row.say : row.say + ", " + row.where;
}

/// Numbers of the rows are those of the card, passes those of the file.
Json list_of(const std::vector<say::Row>& rows, const wish::LearnersDrive& own) {
  Json list = Json::array();
  for (std::size_t k = 0; k < rows.size(); ++k) {
    if (!has_junction(rows[k])) continue;
    Json passes = Json::array();
    for (const std::size_t pass : rows[k].passes) passes.push_back(own.passes[pass]);
    list.push_back({{"row", k + 1}, {"text", text_of(rows[k])}, {"passes", std::move(passes)}});
  }
  return list;
}

/// What its numbers mean, where the row counts otherwise than signs do (as card/sketch_pages.cpp has it).
std::string note_of(const say::Row& row, const say::Words& words) {
  const bool counts =
      std::ranges::find(row.briefs, words.at("brief.count_every")) != row.briefs.end();
  return counts ? std::string(words.at("sketch.count_every")) : std::string();
}

}  // namespace

Reply sketches_of(const OpenArea& area, const std::filesystem::path& loops, std::string_view what,
                  const Address& address) {
  const auto number = read_int64(word(address, "loop")),
             row_number = read_int64(word(address, "row"));
  wish::Answer answer = file::load_answer(loops);
  const auto loop = std::ranges::find_if(
      answer.loops, [&](const wish::Loop& each) { return number && each.id == *number; });
  if (loop == answer.loops.end()) return trouble(404, "there is no such loop");
  if (answer.area.id != area.map().info().id)
    return trouble(409,
                   "the area file was written anew meanwhile: end the page and start it again");
  const auto roads = area.noted(
      answer.wish.start, wish::slow_minutes(answer.wish.minutes.value_or(wish::own_drive_minutes)));
  wish::resolve(*roads, *loop);
  const say::Words words;
  const wish::LearnersDrive own = wish::learners_drive(*roads, answer.wish, *loop);
  const std::vector<say::Row> rows = say::say_loop(*roads, own.loop, {&words});
  if (what == "sketches") return told({{"rows", list_of(rows, own)}});
  if (!row_number || *row_number < 1 || *row_number > std::ssize(rows) ||
      !has_junction(rows[static_cast<std::size_t>(*row_number - 1)]))
    return trouble(404, "that row has no junction");
  const say::Row& row = rows[static_cast<std::size_t>(*row_number - 1)];
  const draw::Picture picture = draw::briefing_sketch(
      *roads, own.loop, {row.stretch, row.exit},
      {say::capitalised(text_of(row)), sketch_mm, words, note_of(row, words)});
  return {.status = 200, .type = "image/svg+xml", .body = draw::to_svg(picture), .headers = {}};
}

}  // namespace loopwright::page
