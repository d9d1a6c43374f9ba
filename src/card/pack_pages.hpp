// The pages of a lesson on paper, part by part.
//
//   PackPages pack(subject, options, frame_of(subject, head, "WREN"));
//   for (draw::Picture& page : pack.of(Sheets::rows)) pages.push_back(std::move(page));
//
// Rules: every page is within the same frame; a part with nothing to say has no page. The subject outlives it.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "card/entries.hpp"
#include "card/entry_picture.hpp"
#include "card/flow.hpp"
#include "card/head.hpp"
#include "card/page_frame.hpp"
#include "card/page_style.hpp"
#include "card/row_pages.hpp"
#include "card/sections.hpp"
#include "loopwright/card/pack.hpp"

namespace loopwright::card {

class PackPages {
 public:
  PackPages(const Subject& subject, const PackOptions& options, Frame frame);

  std::vector<draw::Picture> of(Sheets sheets) const;

 private:
  /// Text in the columns of its style, or in more where that saves a page.
  [[nodiscard]] std::vector<draw::Picture> flowing(std::string_view key, int most,
                                                   const std::function<void(Flow&)>& fill) const;
  [[nodiscard]] std::string words(std::string_view key) const;
  [[nodiscard]] Flow::Room room(std::string_view key) const;
  [[nodiscard]] EntryExtras extras_of(const Entry& entry) const;
  [[nodiscard]] std::size_t most_digits() const;
  [[nodiscard]] std::vector<DrawnEntry> drawn_entries(const PageStyle& style,
                                                      const std::vector<EntryExtras>& extras) const;
  [[nodiscard]] std::vector<DrawnEntry> largest_entries() const;
  [[nodiscard]] std::vector<draw::Picture> rows() const;
  [[nodiscard]] std::vector<draw::Picture> sketches() const;
  [[nodiscard]] std::vector<draw::Picture> overview() const;
  [[nodiscard]] std::vector<draw::Picture> strip() const;
  [[nodiscard]] draw::Box map_box(std::string_view key) const;
  [[nodiscard]] std::vector<draw::Picture> in_frames(std::string_view key,
                                                     const std::vector<draw::Picture>& maps) const;

  const Subject& subject_;
  const PackOptions& options_;
  PageStyle style_;
  Head head_;
  Frame frame_;
  std::vector<Entry> entries_;
};

}  // namespace loopwright::card
