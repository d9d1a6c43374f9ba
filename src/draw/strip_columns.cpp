// Method: the columns are filled from the foot, each item as far above the one before as the metres
// between them are at the scale, but never nearer than both need; the largest scale that takes no more
// pages than the least needs is found by halving.
#include "draw/strip_columns.hpp"

#include <algorithm>

namespace loopwright::draw {
namespace {

// Ours. A longer piece of ribbon says no more than a cut one.
constexpr double longest_mm = 45;
constexpr double most_mm_per_m = 0.12;

class Filling {
 public:
  Filling(const Strip& strip, double height, double mm_per_m)
      : strip_(strip), height_(height), scale_(mm_per_m) {}

  std::vector<StripColumn> columns() {
    columns_.emplace_back();
    for (std::size_t i = 0; i < strip_.items.size(); ++i) add(i);
    const double rest = (strip_.length_m - last_m_) * scale_;
    const double gap = std::max(std::min(rest, longest_mm), last_above_);
    end_column(strip_.length_m, std::min(height_, y_ + gap), rest);
    return std::move(columns_);
  }

 private:
  void add(std::size_t i) {
    const StripItem& item = strip_.items[i];
    double wanted = (item.at_m - last_m_) * scale_;
    const double least = last_above_ + item.below;
    double gap = std::max(std::min(wanted, longest_mm), least);
    if (y_ + gap + item.above > height_ && y_ + least + item.above <= height_)
      gap = height_ - item.above - y_;
    if (y_ + gap + item.above > height_ && !columns_.back().items.empty()) {
      end_column(item.at_m, height_, wanted);
      columns_.emplace_back();
      columns_.back().from_m = item.at_m;
      y_ = 0, last_above_ = 0, wanted = 0;
      gap = item.below;
    }
    y_ += gap;
    columns_.back().items.push_back({i, y_, is_cut(wanted, gap)});
    last_m_ = item.at_m, last_above_ = item.above;
  }

  static bool is_cut(double wanted_mm, double mm) { return wanted_mm > mm + 1; }

  /// wanted_mm: how long the ribbon from the last item would be at the scale.
  void end_column(double to_m, double top, double wanted_mm) {
    columns_.back().to_m = to_m;
    columns_.back().top = top;
    columns_.back().broken = is_cut(wanted_mm, top - y_);
  }

  const Strip& strip_;
  double height_, scale_;
  std::vector<StripColumn> columns_ = {};
  double y_ = 0, last_m_ = 0, last_above_ = 0;
};

}  // namespace

std::vector<StripColumn> set_columns(const Strip& strip, double height, std::size_t per_page) {
  const auto pages = [&](const std::vector<StripColumn>& columns) {
    return (columns.size() + per_page - 1) / per_page;
  };
  double low = 0, high = most_mm_per_m;
  std::vector<StripColumn> best = Filling(strip, height, low).columns();
  const std::size_t least = pages(best);
  for (int i = 0; i < 12; ++i) {
    const double middle = (low + high) / 2;
    std::vector<StripColumn> columns = Filling(strip, height, middle).columns();
    if (pages(columns) > least) {
      high = middle;
    } else {
      low = middle;
      best = std::move(columns);
    }
  }
  return best;
}

}  // namespace loopwright::draw
