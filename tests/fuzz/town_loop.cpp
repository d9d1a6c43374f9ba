#include "town_loop.hpp"

#include "card/card_town.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/store/area.hpp"
#include "town.hpp"
#include "trial.hpp"

namespace loopwright::fuzz {

const std::filesystem::path& town_loop() {
  static const std::filesystem::path file = [] {
    wish::Answer answer = test::card_answer(test::built_card_town());
    const store::Area area = store::open_area(town_area());
    const road::AreaInfo& info = area.roads().info();
    answer.area.id = info.id;
    answer.area.region = info.region.code;
    answer.area.side = name(info.region.side);
    answer.area.map_timestamp = info.map_timestamp;
    return scratch_file("loop.json", file::write_answer(answer));
  }();
  return file;
}

}  // namespace loopwright::fuzz
