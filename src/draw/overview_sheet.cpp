// Method: pale roads, the way over them, its openings with numbers, what lies beside it, and names
// where paper is left; the order in which they take their place is that of their worth.
#include "draw/overview_sheet.hpp"

#include <algorithm>

#include "draw/map_foot.hpp"
#include "draw/map_lines.hpp"
#include "draw/map_marks.hpp"
#include "draw/street_names.hpp"
#include "draw/words_near.hpp"

namespace loopwright::draw {

OverviewSheet::OverviewSheet(const road::Roads& roads, const wish::Loop& loop,
                             const OverviewAsked& asked, const say::Words& words,
                             const MapFrame& frame)
    : roads_(roads),
      loop_(loop),
      asked_(asked),
      words_(words),
      frame_(frame),
      rings_(small_rings(roads, frame)),
      way_(way_of(roads, loop, frame, rings_)),
      taken_(frame.map),
      page_{asked.width, asked.height},
      town_(roads_of(roads, frame)) {
  draw_roads(page_, roads_, town_, frame_, rings_);
  draw_way(page_, way_, within(frame_.map, way_thick / 2));
  std::vector<Numbered> on_the_way;
  for (const Numbered& number : asked_.numbers)
    if (number.stretch > 0) {
      on_the_way.push_back(number);
    } else {
      start_ += number.text + " ";
    }
  start_ += words.at("map.start");
  numbers_ = set_numbers(way_, on_the_way, frame_.map, taken_);
  take_way();
}

std::vector<Crowded> OverviewSheet::crowded() const {
  constexpr double no_room = 4, not_there = 1;
  std::vector<Crowded> spots;
  for (const Numbered& number : numbers_.left_out) spots.push_back({junction_of(number), no_room});
  for (const SetNumber& one : numbers_.set)
    if (one.apart) spots.push_back({junction_of(one.number), not_there});
  return spots;
}

std::vector<Crowded> OverviewSheet::still_crowded() const {
  constexpr double worth = 2;
  std::vector<Crowded> spots;
  for (const Numbered& number : numbers_.left_out) spots.push_back({junction_of(number), worth});
  return spots;
}

std::set<std::string> OverviewSheet::placed() const {
  std::set<std::string> texts;
  for (const SetNumber& one : numbers_.set) texts.insert(one.number.text);
  texts.insert(led_.begin(), led_.end());
  return texts;
}

void OverviewSheet::lead_out() {
  std::erase_if(numbers_.left_out, [&](const Numbered& number) {
    constexpr double longest_line = 11;  // further off an eye doesn't follow
    const Label words{{}, number.text, {9, true}};
    if (!write_led(page_, taken_, junction_of(number), words, longest_line)) return false;
    led_.insert(number.text);
    return true;
  });
}

void OverviewSheet::leave_to(const MapFrame& part, const std::set<std::string>& there) {
  const Box box = shown_by(part, frame_);
  for (const SetNumber& one : numbers_.set)
    if (stands_apart_in(box, one)) numbers_.left_out.push_back(one.number);
  std::erase_if(numbers_.set, [&](const SetNumber& one) { return stands_apart_in(box, one); });
  std::erase_if(numbers_.left_out, [&](const Numbered& one) { return there.contains(one.text); });
  taken_ = Taken(frame_.map);
  for (const SetNumber& one : numbers_.set)
    taken_.add_disc(way_.spot_at(one.at), opening_for(one.number.text) + 0.3);
  take_way();
}

void OverviewSheet::frame_part(const MapFrame& part, const std::string& name) {
  const Box box = shown_by(part, frame_);
  const double right = box.x + box.width, bottom = box.y + box.height;
  const Line edge{{box.x, box.y}, {right, box.y}, {right, bottom}, {box.x, bottom}, {box.x, box.y}};
  for (const Line& line : clipped(edge, frame_.map))
    page_.add(Stroke{line, 0.4, Ink::grey, Cap::butt, {2, 1}});
  write_name({std::max(box.x, 0.0), std::max(box.y, 0.0)}, name);
  taken_.add_line(edge, 0.4);
}

std::string OverviewSheet::left_out() const {
  std::string texts;
  for (const Numbered& number : asked_.numbers)
    for (const Numbered& one : numbers_.left_out)
      if (one.stretch == number.stretch && one.text == number.text)
        texts.append(texts.empty() ? "" : ", ").append(one.text);
  return texts;
}

void OverviewSheet::write_name(Spot corner, const std::string& name) {
  write_near(page_, taken_, corner + Spot{3.5, 3.5}, {{}, name, {14, true}}, 0);
}

Picture OverviewSheet::finished(const Elsewhere& elsewhere) {
  const MapOf map{roads_, loop_, frame_, way_, words_, start_};
  shows_start_ = draw_marks(page_, map, taken_);
  for (const SetNumber& number : numbers_.set)
    draw_number(page_, way_, number.at, number.number.text);
  draw_names(page_, map, town_, taken_);
  draw_foot(page_, frame_, roads_.info().region.unit,
            {words_, asked_.credit, elsewhere.no_room,
             shows_start_ ? std::string() : elsewhere.start_part});
  return std::move(page_);
}

void OverviewSheet::take_way() {
  taken_.add_line(way_.line, way_thick / 2 + 0.2);
}

Spot OverviewSheet::junction_of(const Numbered& number) const {
  return way_.line[way_.end_of(number.stretch)];
}

bool OverviewSheet::stands_apart_in(const Box& box, const SetNumber& one) const {
  return one.apart && holds(box, junction_of(one.number));
}

}  // namespace loopwright::draw
