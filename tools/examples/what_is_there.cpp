// Shows: opening an area and reading its columns. Prints for each kind of practice at how many places the map has it,
// and at how many of these a tag says so, rather than a rule of ours that infers it.
//
//   what_is_there quillham.area
#include <iomanip>
#include <iostream>
#include <map>
#include <set>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"

namespace road = loopwright::road;

namespace {

struct Places {
  std::set<loopwright::PlaceId> all, certain;
};

/// A chance is one way of passing a place; a place, such as a roundabout, has many.
std::map<std::string_view, Places> places_by_kind(const road::Roads& roads) {
  std::map<std::string_view, Places> by_kind;
  for (const road::Chance& chance : roads.chances) {
    Places& places = by_kind[road::name(chance.kind)];
    places.all.insert(chance.place);
    if (chance.confidence == road::Confidence::certain) places.certain.insert(chance.place);
  }
  return by_kind;
}

}  // namespace

int main(int count, char** words) try {
  if (count != 2) throw loopwright::UsageError("usage: what_is_there AREA");
  // The area is mapped, not read: it must outlive the roads taken from it.
  const loopwright::store::Area area = loopwright::store::open_area(words[1]);
  for (const auto& [kind, places] : places_by_kind(area.roads()))
    std::cout << std::left << std::setw(24) << kind << std::right << std::setw(6)
              << places.all.size() << std::setw(6) << places.certain.size() << '\n';
} catch (const loopwright::Error& error) {
  std::cerr << error.what() << '\n';
  return static_cast<int>(error.exit_code());
}
