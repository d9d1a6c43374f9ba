// 1. The module is loaded, once, and its three functions looked up. It stays loaded as long as any
//    copy of the source of heights lives.
// 2. Files are listed, folders searched; each is opened, none is read before a height is asked for.
#include <dlfcn.h>

#include <algorithm>
#include <array>
#include <memory>
#include <string>
#include <vector>

#include "height_grids.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/memory.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/read/heights.hpp"

namespace loopwright::read {
namespace {

namespace fs = std::filesystem;

/// The module while it is loaded, and the grids it has opened.
class Opened {
 public:
  explicit Opened(const fs::path& module);
  ~Opened();
  Opened(const Opened&) = delete;
  Opened& operator=(const Opened&) = delete;
  void open(const fs::path& file);
  [[nodiscard]] std::optional<double> at(Point point) const { return grids_.at(point); }

 private:
  template <class Function>
  [[nodiscard]] Function find(const char* name) const;

  void* module_ = nullptr;
  OpenGrid open_ = nullptr;
  ReadFour read_ = nullptr;
  CloseGrid close_ = nullptr;
  std::vector<void*> handles_;
  HeightGrids grids_;
};

template <class Function>
Function Opened::find(const char* name) const {
  void* found = dlsym(module_, name);
  if (found == nullptr) {
    throw InputError("the reader of elevation grids is of another version; build Loopwright again");
  }
  return reinterpret_cast<Function>(found);
}

Opened::Opened(const fs::path& module) {
  if (!fs::exists(module)) {
    throw InputError(
        "there is no reader of elevation grids beside this Loopwright; install the package "
        "loopwright-heights (or, built by yourself: libgdal-dev, and build it again), or leave "
        "--heights out");
  }
  module_ = dlopen(module.c_str(), RTLD_NOW | RTLD_LOCAL);
  if (module_ == nullptr) {
    throw InputError("the reader of elevation grids doesn't start (" + std::string(dlerror()) +
                     "); install the package libgdal32, or leave --heights out");
  }
  constexpr std::size_t begin_bytes = 64
                                      << 20;  // what GDAL takes when it begins; ours, with a margin
  need_memory(begin_bytes);
  open_ = find<OpenGrid>(open_grid_name);
  read_ = find<ReadFour>(read_four_name);
  close_ = find<CloseGrid>(close_grid_name);
}

/// The module stays loaded: what it brought with it doesn't survive being unloaded and loaded again.
Opened::~Opened() {
  for (void* handle : handles_) close_(handle);
}

void Opened::open(const fs::path& file) {
  std::array<char, 200> reason{};
  GridShape shape;
  void* handle = open_(file.c_str(), &shape, {reason.data(), reason.size()});
  if (handle == nullptr) {
    throw InputError(file.string() + ": can't be read as an elevation grid (" + reason.data() +
                     "); give .hgt or GeoTIFF files");
  }
  handles_.push_back(handle);
  grids_.add({shape, [read = read_, handle](int column, int row) {
                std::array<float, 4> four{};
                read(handle, column, row, four.data());
                return four;
              }});
}

bool is_grid_file(const fs::path& file) {
  constexpr std::array<std::string_view, 6> endings{".hgt", ".tif", ".tiff",
                                                    ".asc", ".vrt", ".zip"};
  const std::string ending = lower(file.extension().string());
  return std::ranges::find(endings, ending) != endings.end();
}

std::vector<fs::path> files_of(const fs::path& grid) {
  if (!fs::exists(grid)) {
    throw InputError(grid.string() +
                     ": no such file or folder; give an elevation grid or a folder of them");
  }
  if (!fs::is_directory(grid)) return {grid};
  std::vector<fs::path> files;
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(grid)) {
    if (entry.is_regular_file() && is_grid_file(entry.path())) files.push_back(entry.path());
  }
  if (files.empty()) {
    throw InputError(grid.string() + ": holds no elevation grid (.hgt, .tif, .asc, .vrt, .zip)");
  }
  std::ranges::sort(files);
  return files;
}

}  // namespace

mark::HeightSource open_heights(std::span<const fs::path> grids, const fs::path& module) {
  if (grids.empty()) return {};
  const auto opened = std::make_shared<Opened>(module);
  for (const fs::path& grid : grids) {
    for (const fs::path& file : files_of(grid)) opened->open(file);
  }
  return [opened](Point point) { return opened->at(point); };
}

}  // namespace loopwright::read
