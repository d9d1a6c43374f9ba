// Method: text flows through columns, rows are as large as keeps to so many a page, maps fill what the frame leaves.
#include "card/pack_pages.hpp"

#include <algorithm>

#include "card/after_sheet.hpp"
#include "card/late_page.hpp"
#include "card/map_pages.hpp"
#include "card/plan_page.hpp"
#include "card/row_shape.hpp"
#include "card/sketch_pages.hpp"
#include "loopwright/draw/overview.hpp"
#include "loopwright/draw/strip.hpp"

namespace loopwright::card {
namespace {

/// Of a page of text; lines of three columns would be too short to read.
constexpr int most_columns = 2;

}  // namespace

PackPages::PackPages(const Subject& subject, const PackOptions& options, Frame frame)
    : subject_(subject),
      options_(options),
      style_(style_of(options.paper, options.print)),
      head_(head_of(subject)),
      frame_(std::move(frame)),
      entries_(entries_of(subject)) {}

std::vector<draw::Picture> PackPages::of(Sheets sheets) const {
  switch (sheets) {
    case Sheets::plan:
      return flowing("pack.plan", most_columns,
                     [&](Flow& flow) { add_plan(flow, style_, subject_, head_); });
    case Sheets::rows:
      return rows();
    case Sheets::late:
      return flowing("pack.late", most_columns,
                     [&](Flow& flow) { add_late(flow, style_, subject_); });
    case Sheets::sketches:
      return sketches();
    case Sheets::overview:
      return overview();
    case Sheets::strip:
      return strip();
    case Sheets::after:
      return flowing("pack.after", 1, [&](Flow& flow) { add_after(flow, style_, subject_); });
  }
  return {};
}

std::string PackPages::words(std::string_view key) const {
  return std::string(subject_.words.at(key));
}

Flow::Room PackPages::room(std::string_view key) const {
  return framed(style_, frame_, words(key));
}

std::vector<draw::Picture> PackPages::flowing(std::string_view key, int most,
                                              const std::function<void(Flow&)>& fill) const {
  const auto in_columns = [&](int columns) {
    PageStyle style = style_;
    style.columns = columns;
    Flow flow(style, [this, key] { return room(key); });
    fill(flow);
    return flow;
  };
  const int usual = std::min(style_.columns, most);
  const Flow flow = in_columns(usual);
  if (usual == most || flow.page_count() <= 1) return flow.pages();
  const Flow more = in_columns(most);
  return (more.page_count() < flow.page_count() ? more : flow).pages();
}

/// With what stands beside each entry, which is as large on any scale.
std::vector<DrawnEntry> PackPages::drawn_entries(const PageStyle& style,
                                                 const std::vector<EntryExtras>& extras) const {
  const double width = style.width - 2 * style.margin;
  std::vector<DrawnEntry> drawn;
  for (std::size_t i = 0; i < entries_.size(); ++i) {
    const Entry& entry = entries_[i];
    drawn.push_back({entry_picture(style, width, entry, extras[i]), entry.kind,
                     entry.joins_previous, entry.independent});
  }
  return drawn;
}

/// As large as keeps to the rows of a page.
std::vector<DrawnEntry> PackPages::largest_entries() const {
  const double height = room("pack.plan").box.height;
  const auto counted = static_cast<std::size_t>(
      std::ranges::count_if(entries_, [](const Entry& e) { return e.kind != EntryKind::band; }));
  const auto rows = static_cast<std::size_t>(style_.rows);
  std::vector<EntryExtras> extras;
  for (const Entry& entry : entries_) extras.push_back(extras_of(entry));
  for (const double scale : {1.15, 1.07}) {
    std::vector<DrawnEntry> drawn = drawn_entries(scaled(style_, scale), extras);
    if (entries_per_page(drawn, style_.rows, height).size() <= (counted + rows - 1) / rows)
      return drawn;
  }
  return drawn_entries(style_, extras);
}

std::vector<draw::Picture> PackPages::rows() const {
  return row_pages(style_, largest_entries(), [&](std::size_t page, std::size_t pages) {
    return framed(style_, frame_,
                  subject_.words.fill(
                      "pack.rows", {{"n", std::to_string(page)}, {"of", std::to_string(pages)}}));
  });
}

EntryExtras PackPages::extras_of(const Entry& entry) const {
  const draw::Size size{style_.shape_width, style_.shape_height};
  std::optional<draw::Picture> shape;
  if (entry.kind != EntryKind::band) shape = shape_of(subject_, entry, size);
  return {std::move(shape),       words("card.look"), words("pack.hard"), words("pack.box_said"),
          words("pack.box_dual"), most_digits(),      options_.reader};
}

std::size_t PackPages::most_digits() const {
  std::size_t digits = 2;
  for (const Entry& entry : entries_) digits = std::max(digits, entry.number.size());
  return digits;
}

std::vector<draw::Picture> PackPages::sketches() const {
  return sketch_pages(subject_, style_, options_.most_sketches,
                      [this] { return room("pack.sketches"); });
}

std::vector<draw::Picture> PackPages::overview() const {
  const draw::Box box = map_box("pack.overview");
  return in_frames("pack.overview",
                   draw::overview(subject_.roads, subject_.loop,
                                  overview_asked(entries_, subject_, box), subject_.words));
}

std::vector<draw::Picture> PackPages::strip() const {
  const draw::Box box = map_box("pack.strip");
  return in_frames("pack.strip",
                   draw::strip_map(subject_.roads, subject_.loop,
                                   strip_asked(entries_, subject_, box), subject_.words));
}

/// The room for a map, on which letters are those of normal print until it is put there.
draw::Box PackPages::map_box(std::string_view key) const {
  draw::Box box = room(key).box;
  box.width /= letters_of(style_), box.height /= letters_of(style_);
  return box;
}

std::vector<draw::Picture> PackPages::in_frames(std::string_view key,
                                                const std::vector<draw::Picture>& maps) const {
  std::vector<draw::Picture> pages;
  for (const draw::Picture& map : maps) {
    Flow::Room frame = room(key);
    draw::place(frame.page, map, {frame.box.x, frame.box.y}, letters_of(style_));
    pages.push_back(std::move(frame.page));
  }
  return pages;
}

}  // namespace loopwright::card
