// A column by row number of which only the pages in use take memory: what is asked of a few places of a large
// map costs as little as on a small one.
//
//   Paged<std::int32_t> ms(rows, unknown);   ms.at(row) = 12;   if (ms[row] != unknown) …
//
// Rules: a row lies below the count of rows. A copy copies the pages in use.
#pragma once

#include <array>
#include <cassert>
#include <cstddef>
#include <memory>
#include <vector>

namespace loopwright {

template <class T>
class Paged {
 public:
  Paged() = default;
  /// rows: how many; elsewhere: the value of each that was never written.
  Paged(std::size_t rows, T elsewhere)
      : pages_((rows + page_rows - 1) / page_rows), elsewhere_(elsewhere) {}
  Paged(const Paged& other) : pages_(other.pages_.size()), elsewhere_(other.elsewhere_) {
    for (std::size_t k = 0; k < pages_.size(); ++k)
      if (other.pages_[k]) pages_[k] = std::make_unique<Page>(*other.pages_[k]);
  }
  Paged(Paged&&) noexcept = default;
  Paged& operator=(const Paged& other) {
    if (this != &other) *this = Paged(other);
    return *this;
  }
  Paged& operator=(Paged&&) noexcept = default;
  ~Paged() = default;

  [[nodiscard]] T operator[](std::size_t row) const {
    assert(row / page_rows < pages_.size());
    const auto& page = pages_[row / page_rows];
    return page ? (*page)[row % page_rows] : elsewhere_;
  }
  /// For writing; makes the row's page.
  [[nodiscard]] T& at(std::size_t row) {
    assert(row / page_rows < pages_.size());
    auto& page = pages_[row / page_rows];
    if (!page) {
      page = std::make_unique<Page>();
      page->fill(elsewhere_);
    }
    return (*page)[row % page_rows];
  }

  /// Calls do_with(row, value) for each row of the pages in use, in order; the value may be changed.
  template <class Do>
  void each(Do do_with) {
    for (std::size_t k = 0; k < pages_.size(); ++k)
      for (std::size_t row = 0; pages_[k] && row < page_rows; ++row)
        do_with(k * page_rows + row, (*pages_[k])[row]);
  }

 private:
  static constexpr std::size_t page_rows = 512;
  using Page = std::array<T, page_rows>;
  std::vector<std::unique_ptr<Page>> pages_;
  T elsewhere_{};
};

}  // namespace loopwright
