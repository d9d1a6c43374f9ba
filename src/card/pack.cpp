// Method: every part of the pack makes its own pages within the same frame; they are bound in the order asked
// for. A part with nothing to say has no page.
#include "loopwright/card/pack.hpp"

#include <algorithm>
#include <array>

#include "card/after_sheet.hpp"
#include "card/late_page.hpp"
#include "card/map_pages.hpp"
#include "card/plan_page.hpp"
#include "card/row_pages.hpp"
#include "card/row_shape.hpp"
#include "card/sketch_pages.hpp"
#include "card/speech.hpp"
#include "card/subject_of.hpp"
#include "loopwright/draw/overview.hpp"
#include "loopwright/draw/render.hpp"
#include "loopwright/draw/sketch.hpp"
#include "loopwright/draw/strip.hpp"

namespace loopwright::card {
namespace {

constexpr std::array<std::string_view, sheets_count> sheet_names{
    "plan", "rows", "late", "sketches", "overview", "strip", "after"};

/// Of a page of text; lines of three columns would be too short to read.
constexpr int most_columns = 2;

class Pack {
 public:
  Pack(const Subject& subject, const PackOptions& options)
      : subject_(subject),
        style_(style_of(options.paper, options.print)),
        head_(head_of(subject)),
        frame_(frame_of(subject, head_, options.pupil)),
        entries_(entries_of(subject)),
        most_sketches_(options.most_sketches) {}

  std::vector<draw::Picture> pages_of(Sheets sheets) {
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

 private:
  [[nodiscard]] std::string words(std::string_view key) const {
    return std::string(subject_.words.at(key));
  }

  [[nodiscard]] Flow::Room room(std::string_view key) const {
    return framed(style_, frame_, words(key));
  }

  /// In the columns of its style, or in more where that saves a page.
  template <class Fill>
  [[nodiscard]] std::vector<draw::Picture> flowing(std::string_view key, int most,
                                                   Fill fill) const {
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
  [[nodiscard]] std::vector<DrawnEntry> drawn_entries(
      const PageStyle& style, const std::vector<EntryExtras>& extras) const {
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
  [[nodiscard]] std::vector<DrawnEntry> largest_entries() const {
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

  [[nodiscard]] std::vector<draw::Picture> rows() const {
    return row_pages(style_, largest_entries(), [&](std::size_t page, std::size_t pages) {
      return framed(style_, frame_,
                    subject_.words.fill(
                        "pack.rows", {{"n", std::to_string(page)}, {"of", std::to_string(pages)}}));
    });
  }

  [[nodiscard]] EntryExtras extras_of(const Entry& entry) const {
    const draw::Size size{style_.shape_width, style_.shape_height};
    std::optional<draw::Picture> shape;
    if (entry.kind != EntryKind::band) shape = shape_of(subject_, entry, size);
    return {std::move(shape),       words("card.look"),     words("pack.hard"),
            words("pack.box_said"), words("pack.box_dual"), most_digits()};
  }

  [[nodiscard]] std::size_t most_digits() const {
    std::size_t digits = 2;
    for (const Entry& entry : entries_) digits = std::max(digits, entry.number.size());
    return digits;
  }

  [[nodiscard]] std::vector<draw::Picture> sketches() const {
    return sketch_pages(subject_, style_, most_sketches_, [this] { return room("pack.sketches"); });
  }

  [[nodiscard]] std::vector<draw::Picture> overview() const {
    const draw::Box box = map_box("pack.overview");
    return in_frames("pack.overview",
                     draw::overview(subject_.roads, subject_.loop,
                                    overview_asked(entries_, subject_, box), subject_.words));
  }

  [[nodiscard]] std::vector<draw::Picture> strip() const {
    const draw::Box box = map_box("pack.strip");
    return in_frames("pack.strip",
                     draw::strip_map(subject_.roads, subject_.loop,
                                     strip_asked(entries_, subject_, box), subject_.words));
  }

  /// The room for a map, on which letters are those of normal print until it is put there.
  [[nodiscard]] draw::Box map_box(std::string_view key) const {
    draw::Box box = room(key).box;
    box.width /= letters_of(style_), box.height /= letters_of(style_);
    return box;
  }

  [[nodiscard]] std::vector<draw::Picture> in_frames(std::string_view key,
                                                     const std::vector<draw::Picture>& maps) const {
    std::vector<draw::Picture> pages;
    for (const draw::Picture& map : maps) {
      Flow::Room frame = room(key);
      draw::place(frame.page, map, {frame.box.x, frame.box.y}, letters_of(style_));
      pages.push_back(std::move(frame.page));
    }
    return pages;
  }

  const Subject& subject_;
  PageStyle style_;
  Head head_;
  Frame frame_;
  std::vector<Entry> entries_;
  std::size_t most_sketches_;
};

void add_pages(std::vector<draw::Picture>& pages, const DayLesson& one) {
  const SubjectOf subject(one.lesson);
  Pack pack(subject.get(), one.options);
  for (const Sheets sheets : one.options.sheets)
    for (draw::Picture& page : pack.pages_of(sheets)) pages.push_back(std::move(page));
}

}  // namespace

std::string_view name(Sheets sheets) {
  return sheet_names.at(static_cast<std::size_t>(sheets));
}

std::string write_pack(const Lesson& lesson, const PackOptions& options) {
  const DayLesson one{lesson, options};
  return write_day({&one, 1});
}

std::string write_day(std::span<const DayLesson> lessons) {
  std::vector<draw::Picture> pages;
  for (const DayLesson& one : lessons) add_pages(pages, one);
  const Lesson& first = lessons.front().lesson;
  const SubjectOf subject(first);
  const say::Words& words = subject.get().words;
  return draw::to_pdf(pages, {words.fill("card.title", {{"n", std::to_string(first.loop.id)}}) +
                                  ", " + write_when(words, first.loop.start),
                              write_time(first.loop.start)});
}

}  // namespace loopwright::card
