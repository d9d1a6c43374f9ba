// Bytes that may be an area file, and what opening or verifying them says.
#pragma once

#include <catch2/catch.hpp>
#include <filesystem>
#include <string>
#include <string_view>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"
#include "store/tiny_area.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright::test {

class Trial {
 public:
  explicit Trial(std::string_view bytes) { write_bytes(file_, bytes); }
  [[nodiscard]] std::string opening() const {
    return said([this] { store::open_area(file_); });
  }
  [[nodiscard]] std::string verifying() const {
    return said([this] { store::verify_area(file_); });
  }

 private:
  template <class Act>
  [[nodiscard]] std::string said(Act act) const {
    try {
      act();
    } catch (const InputError& error) {
      CHECK(error.exit_code() == Exit::could_not);
      const std::string text = error.what();
      const std::string start = file_.string() + ": ";
      return text.rfind(start, 0) == 0 ? text.substr(start.size()) : text;
    }
    return "nothing";
  }
  ScratchFolder folder_;
  std::filesystem::path file_ = folder_ / "n.area";
};

/// The bytes of the tiny area.
inline std::string area_bytes() {
  const ScratchFolder folder;
  store::write_area(folder / "n.area", tiny_tables(), tiny_info());
  return read_bytes(folder / "n.area");
}

}  // namespace loopwright::test
