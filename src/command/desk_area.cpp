// Method: laying notes takes a few hundredths of a second and a screen asks for a dozen tiles at once, so the last few
// lessons' roads are kept, each with the file of notes it was made with (its time and size).
#include "command/desk_area.hpp"

#include <deque>
#include <filesystem>
#include <mutex>
#include <tuple>

#include "loopwright/road/setting_of.hpp"

namespace loopwright::command {
namespace {

namespace fs = std::filesystem;

/// Two tabs, and the lesson before in each.
constexpr std::size_t most_kept_lessons = 4;

class DeskArea final : public page::OpenArea {
 public:
  explicit DeskArea(const AreaTexts& texts)
      : area_(store::open_area(texts.area)), notes_(texts.notes), terms_(terms_in(texts.terms)) {
    if (has_notes()) file::NotesFile::load(notes_);  // told now, and not with the first tile
  }

  [[nodiscard]] const road::Roads& map() const override { return area_.roads(); }

  [[nodiscard]] std::shared_ptr<const road::Roads> noted(const Instant& start,
                                                         int minutes) const override {
    if (!has_notes()) return {std::shared_ptr<const void>(), &map()};
    const std::lock_guard lock(laying_);
    const Made made{fs::last_write_time(notes_), fs::file_size(notes_), start.unix_s, minutes};
    for (const auto& [key, roads] : kept_)
      if (key == made) return {roads, &roads->roads()};
    const auto laid = laid_now(start, minutes);
    kept_.emplace_front(made, laid);
    if (kept_.size() > most_kept_lessons) kept_.pop_back();
    return {laid, &laid->roads()};
  }

 private:
  using Made = std::tuple<fs::file_time_type, std::uintmax_t, std::int64_t, int>;

  [[nodiscard]] bool has_notes() const {
    std::error_code ignored;
    return !notes_.empty() && fs::exists(notes_, ignored);
  }

  [[nodiscard]] std::shared_ptr<const mark::Noted> laid_now(const Instant& start,
                                                            int minutes) const {
    std::optional<Point> place;
    if (!map().nodes.empty()) place = map().nodes.front().at;
    const hours::Setting setting = road::setting_of(map().info(), place, terms_);
    return std::make_shared<const mark::Noted>(mark::with_notes(
        map(), file::NotesFile::load(notes_).notes(), road::lesson_time(start, minutes, setting)));
  }

  store::Area area_;
  fs::path notes_;
  hours::SchoolTerms terms_;
  mutable std::mutex laying_;
  mutable std::deque<std::pair<Made, std::shared_ptr<const mark::Noted>>> kept_;
};

}  // namespace

std::unique_ptr<page::OpenArea> open_for_desk(const AreaTexts& texts) {
  return std::make_unique<DeskArea>(texts);
}

}  // namespace loopwright::command
