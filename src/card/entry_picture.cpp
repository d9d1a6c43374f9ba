// Method:
// 1. From the left: a mark for rows that are said together or driven by the learner alone, the number, the
//    junction, the words; at the right edge a new limit in its ring and how hard it is.
// 2. What is spoken takes the first line; below it the rest flows from left to right, a piece that doesn't
//    fit into what is left of a line begins a new one.
// 3. An instructor's rows with practice have boxes to tick when parked: how much help it took, said, dual controls.
#include "card/entry_picture.hpp"

#include <algorithm>

namespace loopwright::card {
namespace {

constexpr double mark_width = 3;
constexpr double piece_gap = 2.5;
constexpr double numeral_gap = 3;
constexpr int help_levels = 5;
constexpr double bottom_gap = 1.2;

class EntryDrawing {
 public:
  EntryDrawing(const PageStyle& style, double width, const Entry& entry, const EntryExtras& extras)
      : style_(style), entry_(entry), extras_(extras), picture_{width, 0} {
    const double number = digits_width(extras.digits, style.say + 2);
    left_ = mark_width + number + 2 + style.shape_width + 2;
  }

  draw::Picture draw() {
    if (entry_.kind == EntryKind::band) {
      add_band();
    } else {
      add_number();
      if (extras_.shape)
        draw::place(picture_, *extras_.shape, {left_ - 2 - style_.shape_width, 0.5});
      add_numerals();
      add_spoken();
      add_boxes();
      add_pieces();
    }
    picture_.height =
        std::max(y_ + bottom_gap, entry_.kind == EntryKind::band ? 0 : style_.shape_height + 1);
    return std::move(picture_);
  }

 private:
  static double digits_width(std::size_t digits, double points) {
    return draw::extent_of({{0, 0}, std::string(digits, '0'), {points, true}}).width;
  }

  void add_number() {
    picture_.add(draw::Label{{left_ - 4 - style_.shape_width, 0.4},
                             entry_.number,
                             {style_.say + 2, true, draw::Ink::black, draw::Align::right}});
  }

  /// The new limit in a ring, and how hard what begins here is; from the right edge.
  void add_numerals() {
    double x = picture_.width;
    if (entry_.hardness > 0 && extras_.reader == Reader::instructor) {
      const draw::Label word{{0, 0}, extras_.hard, grey(style_)};
      const draw::Extent extent = draw::extent_of(word);
      const double line = line_height(style_.say);
      picture_.add(
          draw::Label{{x - extent.width, line - extent.height - 0.3}, word.text, word.type});
      x -= extent.width + 1;
      picture_.add(draw::Label{{x, 0},
                               std::to_string(entry_.hardness),
                               {style_.say, true, draw::Ink::black, draw::Align::right}});
      x -= digits_width(1, style_.say) + numeral_gap;
    }
    if (!entry_.limit.empty()) x = add_limit(x);
    right_ = x;
  }

  /// A figure in a ring about as high as the line; what the map only lets us infer has its question mark.
  double add_limit(double x) {
    const double line = line_height(style_.say);
    if (!entry_.limit_sure) x = add_numeral(x, "?", draw::Align::right) - 0.5;
    if (entry_.limit.find_first_not_of("0123456789") != std::string::npos)
      return add_numeral(x, entry_.limit, draw::Align::right) - numeral_gap;
    const double width = draw::extent_of({{0, 0}, entry_.limit, {style_.text, true}}).width;
    const double radius = width / 2 + 1;
    picture_.add(draw::Disc{{x - radius, line / 2}, radius - 0.25, {}, 0.5});
    add_numeral(x - radius, entry_.limit, draw::Align::middle);
    return x - 2 * radius - numeral_gap;
  }

  /// Bold, in the middle of the spoken line; its left edge, when it stands to the left of x.
  double add_numeral(double x, const std::string& text, draw::Align align) {
    const draw::Type type{style_.text, true, draw::Ink::black, align};
    const draw::Extent extent = draw::extent_of({{0, 0}, text, type});
    picture_.add(draw::Label{{x, (line_height(style_.say) - extent.height) / 2}, text, type});
    return x - extent.width;
  }

  [[nodiscard]] static double line_height(double points) {
    return draw::extent_of({{0, 0}, "0", {points, true}}).height;
  }

  void add_spoken() {
    draw::Label spoken{{left_, 0}, entry_.say, {style_.say, true}, right_ - left_};
    // A ring may reach a little below its line.
    const double ring = entry_.limit.empty() ? 0 : 0.6;
    y_ = std::max(draw::extent_of(spoken).height, line_height(style_.say) + ring);
    picture_.add(std::move(spoken));
  }

  /// At the right, on the line below what is spoken; pieces beside it get less room.
  void add_boxes() {
    free_right_ = picture_.width;
    if (entry_.kind != EntryKind::row || entry_.hardness == 0) return;
    if (extras_.reader != Reader::instructor) return;
    const double size = line_height(style_.text);
    double x = picture_.width;
    for (const std::string* name : {&extras_.dual, &extras_.said}) {
      const draw::Label label{{0, 0}, *name, grey(style_)};
      x -= draw::extent_of(label).width;
      picture_.add(draw::Label{{x, y_}, label.text, label.type});
      x -= size + 0.8;
      add_box(x, size, {});
      x -= piece_gap;
    }
    for (int level = help_levels; level > 0; --level) {
      x -= size;
      add_box(x, size, std::to_string(level));
      x -= 0.8;
    }
    free_right_ = x - piece_gap;
    boxes_bottom_ = y_ + size + 0.4;
  }

  void add_box(double x, double size, const std::string& digit) {
    const double y = y_ + 0.2, end = x + size - 0.2, bottom = y + size - 0.2;
    picture_.add(draw::Stroke{{{x, y}, {end, y}, {end, bottom}, {x, bottom}, {x, y}}, 0.25});
    if (digit.empty()) return;
    draw::Type type = grey(style_);
    type.align = draw::Align::middle;
    picture_.add(draw::Label{{(x + end) / 2, y_}, digit, type});
  }

  void add_pieces() {
    x_ = left_;
    add_piece(entry_.where, plain(style_));
    add_piece(entry_.lane, bold(style_));
    add_piece(entry_.landmark, plain(style_));
    if (!entry_.limit_sure) add_piece(extras_.look, plain(style_));
    add_piece(entry_.kerb, bold(style_));
    add_piece(entry_.next, grey(style_));
    add_piece(entry_.after, grey(style_));
    add_piece(entry_.brief, bold(style_));
    add_piece(entry_.then, plain(style_));
    if (x_ > left_) y_ += line_height(style_.text);
    y_ = std::max(y_, boxes_bottom_);
  }

  [[nodiscard]] double line_end() const {
    return y_ + 0.1 < boxes_bottom_ ? free_right_ : picture_.width;
  }

  void add_piece(const std::string& text, const draw::Type& type) {
    if (text.empty()) return;
    const double width = draw::extent_of({{0, 0}, text, type}).width;
    if (x_ > left_ && x_ + width > line_end()) new_line();
    if (x_ + width <= line_end()) {
      picture_.add(draw::Label{{x_, y_}, text, type});
      x_ += width + piece_gap;
      return;
    }
    draw::Label column{{left_, y_}, text, type, line_end() - left_};
    y_ += draw::extent_of(column).height;
    picture_.add(std::move(column));
  }

  void new_line() {
    x_ = left_;
    y_ += line_height(style_.text);
  }

  void add_band() {
    draw::Label head{{mark_width, 0.5}, entry_.say, bold(style_), picture_.width - mark_width};
    head.type.points += 1;
    y_ = 0.5 + draw::extent_of(head).height;
    picture_.add(std::move(head));
    if (entry_.then.empty()) return;
    draw::Label more{{mark_width, y_}, entry_.then, plain(style_), picture_.width - mark_width};
    y_ += draw::extent_of(more).height;
    picture_.add(std::move(more));
  }

  const PageStyle& style_;
  const Entry& entry_;
  const EntryExtras& extras_;
  draw::Picture picture_;
  double left_ = 0, right_ = 0;  ///< of what is spoken
  double x_ = 0, y_ = 0;
  double free_right_ = 0, boxes_bottom_ = 0;
};

}  // namespace

draw::Picture entry_picture(const PageStyle& style, double width, const Entry& entry,
                            const EntryExtras& extras) {
  return EntryDrawing(style, width, entry, extras).draw();
}

}  // namespace loopwright::card
