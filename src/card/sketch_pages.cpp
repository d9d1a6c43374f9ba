// Method: the places come hardest first; a sheet is filled line by line. Each is titled by its row.
#include "card/sketch_pages.hpp"

#include <algorithm>

#include "card/speech.hpp"
#include "card/stops.hpp"
#include "loopwright/draw/sketch.hpp"

namespace loopwright::card {
namespace {

constexpr double gap = 4;

/// The row that is said at the place; the end when there is none.
auto own_row(const Subject& subject, const draw::At& at) {
  return std::ranges::find_if(subject.rows, [&](const say::Row& row) {
    return row.stretch == at.entry && row.kind != say::RowKind::leave;
  });
}

/// What to make of two counts: the row's where it counts as an eye does, the picture's as signs do.
std::string note_of(const Subject& subject, const draw::At& at) {
  const auto own = own_row(subject, at);
  const std::string_view brief = subject.words.at("brief.count_every");
  if (own == subject.rows.end() || std::ranges::find(own->briefs, brief) == own->briefs.end())
    return {};
  return std::string(subject.words.at("sketch.count_every"));
}

/// The row that is said at the place, or the last one before it.
std::string title_of(const Subject& subject, const draw::At& at) {
  const auto own = own_row(subject, at);
  if (own == subject.rows.end())
    return subject.words.fill("pack.sketch_after",
                              {{"row", std::to_string(row_of_stretch(subject, at.entry))},
                               {"street", street_words(subject, at.entry)}});
  const auto number = static_cast<std::size_t>(own - subject.rows.begin()) + 1;
  return subject.words.fill("pack.sketch",
                            {{"row", write_rows(subject.words, {number})}, {"say", own->say}});
}

struct Drawn {
  std::size_t shown = 0, all = 0;
};

/// Tells that there are more; what is left of the box is for the pictures.
void add_more(draw::Picture& page, draw::Box& box, const Subject& subject, Drawn drawn,
              const PageStyle& style) {
  draw::Label label{{box.x, box.y},
                    subject.words.fill("pack.sketches_more", {{"n", std::to_string(drawn.shown)},
                                                              {"of", std::to_string(drawn.all)}}),
                    bold(style),
                    box.width};
  const double height = draw::extent_of(label).height + 1;
  page.add(std::move(label));
  box.y += height, box.height -= height;
}

struct Grid {
  std::size_t across = 1, down = 1;
};

/// Four to a sheet; two where the letters are large, one where the sheet is small.
Grid grid_of(const PageStyle& style) {
  if (style.width <= style_of(Paper::a5, Print::normal).width) return {1, 1};
  return {letters_of(style) > 1 ? 1U : 2U, 2};
}

draw::Box part_of(const draw::Box& box, const Grid& grid, std::size_t n) {
  const auto share = [](double whole, std::size_t parts) {
    return (whole - gap * static_cast<double>(parts - 1)) / static_cast<double>(parts);
  };
  const double width = share(box.width, grid.across), height = share(box.height, grid.down);
  return {box.x + static_cast<double>(n % grid.across) * (width + gap),
          box.y + static_cast<double>(n / grid.across) * (height + gap), width, height};
}

}  // namespace

std::vector<draw::Picture> sketch_pages(const Subject& subject, const PageStyle& style,
                                        std::size_t most,
                                        const std::function<Flow::Room()>& new_page) {
  std::vector<draw::At> places = draw::worth_sketching(subject.roads, subject.loop);
  const std::size_t all = places.size();
  places.resize(std::min(most, all));
  const Grid grid = grid_of(style);
  std::vector<draw::Picture> pages;
  draw::Box box;
  for (std::size_t n = 0; n < places.size(); ++n) {
    const std::size_t on_page = n % (grid.across * grid.down);
    if (on_page == 0) {
      Flow::Room room = new_page();
      pages.push_back(std::move(room.page));
      box = room.box;
      if (n == 0 && all > places.size())
        add_more(pages.back(), box, subject, {places.size(), all}, style);
    }
    const draw::Box part = part_of(box, grid, on_page);
    const double scale = letters_of(style);
    const draw::Size size{part.width / scale, part.height / scale};
    draw::place(pages.back(),
                draw::briefing_sketch(subject.roads, subject.loop, places[n],
                                      {title_of(subject, places[n]), size, subject.words,
                                       note_of(subject, places[n])}),
                {part.x, part.y}, scale);
  }
  return pages;
}

}  // namespace loopwright::card
