// 1. The title stands above, the words below, or at the right of a sheet that is wider than high; what is left
//    is a circle on the ground.
// 2. Roads, boxes and lines across them, the way over both; then numbers, looks and names, each where there is
//    room beside what is there already.
#include <algorithm>
#include <cmath>

#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"
#include "draw/way.hpp"

namespace loopwright::draw {
namespace {

constexpr double margin = 2, between = 1.5, line_gap = 0.7;

/// Ground shown around the middle: what lies inside and some road beyond.
double shown_m(const road::Roads& roads, const Scene& scene) {
  constexpr double beyond_m = 32;
  double inner = scene.ring_m;
  for (const NodeId node : scene.nodes)
    inner = std::max(inner, length_of(scene.frame.spot(roads.nodes[node.index()].at)));
  return inner + beyond_m;
}

/// Adds words in a column from `left` to the right edge, returns their lower edge.
double add_words(Picture& picture, const std::string& text, Type type, Spot at) {
  const Label label{at, text, type, picture.width - margin - at.x};
  picture.add(label);
  return at.y + extent_of(label).height;
}

/// The note comes second, behind the number of the exit.
std::vector<std::string> words_of(const road::Roads& roads, const Scene& scene,
                                  const SketchAsked& asked) {
  std::vector<std::string> lines = sketch_words(roads, scene, asked.words);
  if (!asked.note.empty())
    lines.insert(lines.begin() + std::min<std::ptrdiff_t>(1, std::ssize(lines)), asked.note);
  return lines;
}

/// The words, the most important first, in one column.
Picture words_column(const std::vector<std::string>& lines, double width) {
  Picture column{width, 0};
  for (const std::string& line : lines) {
    const bool first = column.height == 0;
    const Spot at{margin, column.height + (first ? 0 : line_gap)};
    column.height = add_words(column, line, {9, first}, at);
  }
  return column;
}

/// Adds the words below the picture or beside it; the box that is left.
Box add_column(Picture& picture, const std::vector<std::string>& lines, double top) {
  constexpr double share_beside = 0.32;  // of the width; letters and picture both keep their size
  const Size size{picture.width, picture.height};
  if (size.width > size.height) {
    const double width = share_beside * size.width;
    place(picture, words_column(lines, width), {size.width - width, top});
    return {margin, top, size.width - width - margin, size.height - margin - top};
  }
  const Picture column = words_column(lines, size.width);
  const double bottom = size.height - margin - column.height;
  place(picture, column, {0, bottom});
  return {margin, top, size.width - 2 * margin, bottom - between - top};
}

}  // namespace

Picture briefing_sketch(const road::Roads& roads, const wish::Loop& loop, At at,
                        const SketchAsked& asked) {
  const Scene scene = scene_at(roads, loop, at, 150);
  Picture picture{asked.size.width, asked.size.height};
  const double top = add_words(picture, asked.title, {11, true}, {margin, margin}) + between;
  const Box box = add_column(picture, words_of(roads, scene, asked), top);
  const double radius = std::min(box.width, box.height) / 2;
  const double shown = shown_m(roads, scene);
  Board board{roads,
              scene,
              asked.words,
              picture,
              RoomFor({box.x, top, box.width, 2 * radius}),
              {box.x + box.width / 2, top + radius},
              shown,
              radius / shown};
  draw_roads(board);
  draw_boxes(board);
  draw_crosslines(board);
  const Line way = board.on_sheet(lane_way(roads, loop, at, scene, shown - 1));
  draw_way(picture, way, 1.2, 4);
  board.room.keep_off(way, 2);
  draw_scale(board);
  draw_looks(board, way);
  draw_arm_words(board, way);
  return picture;
}

}  // namespace loopwright::draw
