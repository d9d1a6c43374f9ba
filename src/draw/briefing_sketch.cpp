// 1. The title stands above, the words below; what is left between is a circle on the ground.
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

/// Adds words in a column, returns their lower edge.
double add_words(Picture& picture, const std::string& text, Type type, double top) {
  const Label label{{margin, top}, text, type, picture.width - 2 * margin};
  picture.add(label);
  return top + extent_of(label).height;
}

/// The note comes second, behind the number of the exit.
std::vector<std::string> words_below(const road::Roads& roads, const Scene& scene,
                                     const SketchAsked& asked) {
  std::vector<std::string> lines = sketch_words(roads, scene, asked.words);
  if (!asked.note.empty())
    lines.insert(lines.begin() + std::min<std::ptrdiff_t>(1, std::ssize(lines)), asked.note);
  return lines;
}

}  // namespace

Picture briefing_sketch(const road::Roads& roads, const wish::Loop& loop, At at,
                        const SketchAsked& asked) {
  const Size size = asked.size;
  const Scene scene = scene_at(roads, loop, at, 150);
  Picture picture{size.width, size.height};
  const double top = add_words(picture, asked.title, {11, true}, margin) + between;
  Picture below{size.width, size.height};
  double words_end = 0;
  bool first = true;
  for (const std::string& line : words_below(roads, scene, asked)) {
    words_end = add_words(below, line, {9, first}, words_end + (first ? 0 : line_gap));
    first = false;
  }
  const double bottom = size.height - margin - words_end;
  place(picture, below, {0, bottom});

  const double radius = std::min(size.width / 2 - margin, (bottom - between - top) / 2);
  const double shown = shown_m(roads, scene);
  Board board{roads,
              scene,
              asked.words,
              picture,
              RoomFor({margin, top, size.width - 2 * margin, 2 * radius}),
              {size.width / 2, top + radius},
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
