// The area file: written once by `build`, mapped read-only by everything else.
//
//   Area area = open_area("out/n.area");   area.roads().nodes.size();
//
// Rules: writing goes to a file beside it that is renamed at the end, so an area file is always
// whole or absent. Opening checks length, magic, format number, header and section table; it does
// not read the columns (verify does). Throws InputError with what, where and how to rebuild.
// A file cut short or written over by someone else while it is mapped ends the program with one line and exit 1.
// Byte layout: src/store/layout.hpp.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>

#include "loopwright/road/roads.hpp"

namespace loopwright::store {

/// Writes an area file and returns its id (a hash of the content).
std::string write_area(const std::filesystem::path& file, const road::Tables& tables,
                       const road::AreaInfo& info);

class Area {
 public:
  [[nodiscard]] const road::Roads& roads() const { return roads_; }

 private:
  friend Area open_area(const std::filesystem::path& file);
  std::shared_ptr<const void> mapping_;
  road::Roads roads_;
};

Area open_area(const std::filesystem::path& file);

/// Throws InputError when the file of an Area wasn't, while that was held, as it was when it was opened: what was
/// read may be neither its old content nor its new. To be asked before an answer counts; write_whole does.
void need_unchanged();

/// Reads every byte and compares checksums; throws InputError at the first section that differs.
void verify_area(const std::filesystem::path& file);

/// Writes text to a file beside `file` and renames it. Throws InputError.
void write_whole(const std::filesystem::path& file, std::string_view text);

}  // namespace loopwright::store
