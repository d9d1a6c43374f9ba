// Method: one line at the top over a thick rule; at the foot a thin rule, one caution in bold, the rest small.
#include "card/page_frame.hpp"

#include <algorithm>

#include "card/speech.hpp"

namespace loopwright::card {
namespace {

constexpr double rule_gap = 2;

double add_label(draw::Picture& page, draw::Label label) {
  const double height = draw::extent_of(label).height;
  page.add(std::move(label));
  return height;
}

double line_height(const PageStyle& style) {
  return draw::extent_of({{0, 0}, "0", plain(style)}).height;
}

/// Lower edge of the head.
double add_head(draw::Picture& page, const PageStyle& style, const Frame& frame,
                const std::string& sheet) {
  const double right = style.width - style.margin;
  draw::Type large = bold(style);
  large.points *= 2;
  draw::Label title{{style.margin, style.margin - 2}, frame.title, large};
  const draw::Extent extent = draw::extent_of(title);
  page.add(std::move(title));
  const double x = style.margin + extent.width + 4;
  double y = style.margin - 1.5;
  draw::Type side = bold(style);
  side.align = draw::Align::right;
  add_label(page, {{right, y}, frame.back_by, side});
  y += add_label(page, {{x, y}, frame.when, bold(style)});
  side.bold = false;
  add_label(page, {{right, y}, sheet, side});
  const double bottom = std::max(style.margin - 2 + extent.height, y + line_height(style)) + 1.2;
  page.add(draw::Stroke{{{style.margin, bottom}, {right, bottom}}, 0.8});
  return bottom + rule_gap;
}

/// Upper edge of the foot.
double add_foot(draw::Picture& page, const PageStyle& style, const Frame& frame) {
  const double width = style.width - 2 * style.margin;
  std::vector<draw::Label> labels{{{0, 0}, frame.caution, bold(style), width}};
  for (const std::string& line : frame.foot) labels.push_back({{0, 0}, line, grey(style), width});
  double height = 0;
  for (const draw::Label& label : labels) height += draw::extent_of(label).height;
  const double top = style.height - style.margin + 3 - height;
  double y = top;
  for (draw::Label& label : labels) {
    label.at = {style.margin, y};
    y += add_label(page, std::move(label));
  }
  page.add(draw::Stroke{{{style.margin, top - 1}, {style.width - style.margin, top - 1}}, 0.3});
  return top - rule_gap;
}

}  // namespace

Frame frame_of(const Subject& subject, const Head& head, const std::string& pupil) {
  const say::Words& words = subject.words;
  return {pupil.empty() ? head.title : pupil,
          head.when,
          head.back_by,
          std::string(words.at("caution.parked")),
          {std::string(words.at("caution.short")) + " " + write_credit(words, subject.roads) +
           ", " + std::string(words.at("card.licence"))}};
}

Flow::Room framed(const PageStyle& style, const Frame& frame, const std::string& sheet) {
  Flow::Room room{{style.width, style.height}, {}};
  const double top = add_head(room.page, style, frame, sheet);
  const double bottom = add_foot(room.page, style, frame);
  room.box = {style.margin, top, style.width - 2 * style.margin, bottom - top};
  return room;
}

}  // namespace loopwright::card
