// Draws the junctions of a loop, or every way through all places of a kind, as PNG to look at.
//
//   build/draw-sketches town.area FOLDER --loops loops.json      the pictures of each loop
//   build/draw-sketches town.area FOLDER --kind roundabout       every way through every roundabout
//
// FOLDER/sketches-001.png …: four briefing pictures a sheet; FOLDER/rows-001.png …: the small shapes,
// with what the area says of each: movement, exit, the map object.
#include <CLI/CLI.hpp>
#include <cmath>
#include <filesystem>
#include <iostream>

#include "loopwright/base/error.hpp"
#include "loopwright/draw/render.hpp"
#include "loopwright/draw/sketch.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/store/area.hpp"
#include "loopwright/wish/resolve.hpp"

namespace {

using namespace loopwright;
namespace fs = std::filesystem;

struct Drawn {
  draw::Picture row, sketch;
  std::string caption;
};

constexpr draw::Size row_size{26, 22}, sketch_size{92, 125};

class Album {
 public:
  Album(fs::path folder, double dots) : folder_(std::move(folder)), dots_(dots) {}

  void save(const std::vector<Drawn>& all) const {
    fs::create_directories(folder_);
    save_pages(all, "sketches", {210, 297}, {2, 2});
    save_pages(all, "rows", {210, 297}, {6, 8});
  }

 private:
  struct Grid {
    std::size_t columns, rows;
  };

  void save_pages(const std::vector<Drawn>& all, const std::string& name, draw::Size paper,
                  Grid grid) const {
    const std::size_t each = grid.columns * grid.rows;
    const double wide = paper.width / static_cast<double>(grid.columns);
    const double tall = paper.height / static_cast<double>(grid.rows);
    for (std::size_t first = 0; first < all.size(); first += each) {
      draw::Picture page{paper.width, paper.height};
      for (std::size_t i = first; i < std::min(all.size(), first + each); ++i) {
        const std::size_t cell = i - first;
        const draw::Spot at{wide * static_cast<double>(cell % grid.columns) + 3,
                            tall * static_cast<double>(cell / grid.columns) + 3};
        const bool large = name == "sketches";
        const draw::Picture& picture = large ? all[i].sketch : all[i].row;
        draw::place(page, picture, at);
        if (!large)
          page.add(draw::Label{{at.x, at.y + picture.height + 0.5}, all[i].caption, {6}, wide - 5});
      }
      std::string number = std::to_string(first / each + 1);
      number.insert(0, number.size() < 3 ? 3 - number.size() : 0, '0');
      store::write_whole(folder_ / (name + "-" + number + ".png"), draw::to_png(page, dots_));
    }
  }

  fs::path folder_;
  double dots_;
};

std::string caption_of(const road::Roads& roads, const road::Chance& chance) {
  std::string text(road::name(chance.kind));
  text.append(" ").append(road::name(chance.movement));
  if (chance.exit_number > 0) text += ", exit " + std::to_string(chance.exit_number);
  text += ", node " + std::to_string(roads.nodes[roads.to_node(chance.entry).index()].osm_id);
  return text;
}

Drawn drawn_of(const road::Roads& roads, const wish::Loop& loop, draw::At at, std::string caption) {
  return {draw::row_shape(roads, loop, at, row_size),
          draw::briefing_sketch(roads, loop, at, {caption, sketch_size, say::Words()}), caption};
}

wish::LoopStretch row_of(StretchId stretch) {
  wish::LoopStretch row;
  row.stretch = stretch;
  return row;
}

/// The way of a chance, with the road before it and behind it as it runs straight on.
wish::Loop drive_of(const road::Roads& roads, const road::Chance& chance, draw::At& at) {
  constexpr std::size_t around = 4;
  wish::Loop loop;
  for (const StretchId stretch : roads.path_of(chance)) loop.stretches.push_back(row_of(stretch));
  const auto onward = [&](StretchId from) {
    StretchId best;
    double least = 45;
    for (const StretchId next : roads.leaving(roads.to_node(from))) {
      const double bend = std::abs(heading_change_deg(road::bearing_in_deg(roads, from),
                                                      road::bearing_out_deg(roads, next)));
      if (next != from.back() && bend < least) best = next, least = bend;
    }
    return best;
  };
  at = {0, loop.stretches.size() - 1};
  for (std::size_t i = 0; i < around; ++i) {
    if (const StretchId on = onward(loop.stretches.back().stretch); on.known())
      loop.stretches.push_back(row_of(on));
    const StretchId before = onward(loop.stretches.front().stretch.back());
    if (!before.known()) continue;
    loop.stretches.insert(loop.stretches.begin(), row_of(before.back()));
    ++at.entry, ++at.exit;
  }
  return loop;
}

std::vector<Drawn> all_of_kind(const road::Roads& roads, road::Kind kind, std::int64_t node) {
  std::vector<Drawn> all;
  for (const road::Chance& chance : roads.chances) {
    const std::int64_t enters = roads.nodes[roads.to_node(chance.entry).index()].osm_id;
    if (!road::meets(chance.kind, kind) || (node != 0 && enters != node)) continue;
    draw::At at;
    const wish::Loop loop = drive_of(roads, chance, at);
    all.push_back(drawn_of(roads, loop, at, caption_of(roads, chance)));
  }
  return all;
}

std::vector<Drawn> all_of_loops(const road::Roads& roads, const fs::path& file) {
  std::vector<Drawn> all;
  wish::Answer answer = file::load_answer(file);
  for (wish::Loop& loop : answer.loops) {
    wish::resolve(roads, loop);
    for (const draw::At at : draw::worth_sketching(roads, loop))
      all.push_back(
          drawn_of(roads, loop, at,
                   "Loop " + std::to_string(loop.id) + ", into " + loop.stretches[at.exit].street));
  }
  return all;
}

int run(int argc, char** argv) {
  std::string area_file, folder, loops, kind_name;
  double dots = 110;
  std::int64_t node = 0;
  CLI::App app{"Draws junctions as PNG to look at."};
  app.add_option("AREA", area_file)->required();
  app.add_option("FOLDER", folder)->required();
  app.add_option("--loops", loops, "loop file: the places of its loops");
  app.add_option("--kind", kind_name, "every way through every place of this kind");
  app.add_option("--node", node, "only the ways that come in at this map node");
  app.add_option("--dots", dots, "in an inch");
  CLI11_PARSE(app, argc, argv);
  const store::Area area = store::open_area(area_file);
  const auto kind = road::parse_kind(kind_name);
  if (loops.empty() && !kind) throw InputError("say --loops FILE, or --kind and one of the kinds");
  if (kind && road::form_of(*kind) != road::KindForm::junction)
    throw InputError(kind_name + " is no junction; say --kind and the kind of a junction");
  const std::vector<Drawn> all =
      kind ? all_of_kind(area.roads(), *kind, node) : all_of_loops(area.roads(), loops);
  Album(folder, dots).save(all);
  std::cout << all.size() << " places drawn\n";
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const std::exception& error) {
    std::cerr << "draw-sketches: " << error.what() << '\n';
    return 1;
  }
}
