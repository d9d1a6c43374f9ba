// Method: one sheet of all; numbers that found no room there are drawn on enlarged parts in the same manner; what
// is too dense even there, on a part of that part.
#include "loopwright/draw/overview.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "draw/map_lines.hpp"
#include "draw/overview_sheet.hpp"

namespace loopwright::draw {
namespace {

/// "A" of the first part.
std::string letter(std::size_t part) {
  return std::string(1, static_cast<char>('A' + part));
}

/// A sheet that may be shown larger in parts, and where that would help.
struct Source {
  MapFrame frame;
  std::vector<Crowded> spots;
};

/// The number of the source whose best part is most worth a page, and that part.
std::optional<std::pair<std::size_t, Part>> best_of(const std::vector<Source>& sources) {
  std::optional<std::pair<std::size_t, Part>> best;
  for (std::size_t i = 0; i < sources.size(); ++i) {
    const auto part = best_part(sources[i].frame, sources[i].spots);
    if (part && (!best || part->worth > best->second.worth)) best = std::pair(i, *part);
  }
  return best;
}

/// The whole, and parts of it or of each other.
class Sheets {
 public:
  Sheets(const road::Roads& roads, const wish::Loop& loop, const OverviewAsked& asked,
         const say::Words& words)
      : whole_(frame_of(roads, loop, asked)) {
    constexpr std::size_t most_parts = 3;
    sheets_.emplace_back(roads, loop, asked, words, whole_);
    sources_.push_back({whole_, sheets_.front().crowded()});
    while (sheets_.size() <= most_parts) {
      const auto found = best_of(sources_);
      if (!found) break;
      shown_on_.push_back(found->first);
      add(sheets_.emplace_back(roads, loop, asked, words, found->second.frame));
    }
  }

  std::vector<Picture> finished() {
    OverviewSheet& first = sheets_.front();
    for (std::size_t i = 1; i < sheets_.size(); ++i) {
      sheets_[i].write_name({0, 0}, letter(i - 1));
      sheets_[shown_on_[i - 1]].frame_part(sheets_[i].frame(), letter(i - 1));
    }
    std::vector<Picture> pages(1);
    std::string start_part;
    for (std::size_t i = 1; i < sheets_.size(); ++i) {
      pages.push_back(sheets_[i].finished({}));
      if (sheets_[i].shows_start() && start_part.empty()) start_part = letter(i - 1);
    }
    first.lead_out();
    pages.front() = first.finished({first.left_out(), start_part});
    return pages;
  }

 private:
  void add(OverviewSheet& part) {
    part.lead_out();
    sheets_.front().leave_to(part.frame(), part.placed());
    for (Source& source : sources_) {
      const Box shown = shown_by(part.frame(), source.frame);
      std::erase_if(source.spots, [&](const Crowded& one) { return holds(shown, one.spot); });
    }
    sources_.push_back({part.frame(), part.still_crowded()});
  }

  MapFrame whole_;
  std::vector<OverviewSheet> sheets_;  ///< the whole, then its parts
  std::vector<std::size_t> shown_on_;  ///< for each part the sheet that frames it
  std::vector<Source> sources_;        ///< as many as sheets
};

}  // namespace

std::vector<Picture> overview(const road::Roads& roads, const wish::Loop& loop,
                              const OverviewAsked& asked, const say::Words& words) {
  return Sheets(roads, loop, asked, words).finished();
}

}  // namespace loopwright::draw
