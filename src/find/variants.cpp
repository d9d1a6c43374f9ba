// Method:
// 1. A variant is the first loop of the wish that it must meet (wish/variant.hpp); of the harder wish the
//    hardest of several alternatives that is harder than the first loop.
// 2. Only of a loop that meets the wish, so that one shortfall speaks of all loops. Too short an
//    independent stretch is no reason: a variant may have as short a one.
#include "loopwright/wish/variant.hpp"

#include <algorithm>
#include <string>

#include "find/caps.hpp"
#include "find/find_by.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/independent.hpp"

namespace loopwright::find {

namespace {

/// Among so many loops of the harder wish the hardest is taken: ours, for what one search costs more.
constexpr int harder_alternatives = 4;

bool lacks_something(const std::optional<wish::Shortfall>& shortfall) {
  return shortfall && (!shortfall->missing.empty() || !shortfall->not_taken.empty() ||
                       !shortfall->stops.empty() || shortfall->least_minutes.has_value());
}

std::string limit_words(const wish::Wish& wish) {
  return "nothing above hardness " + std::to_string(*wish.hardest);
}

/// Which wants stand in the way of a wish that wasn't met.
std::string in_its_way(const wish::Wish& wish, const FindResult& found) {
  std::string wants;
  if (found.shortfall)
    for (const wish::Missing& missing : found.shortfall->missing)
      wants += (wants.empty() ? "" : " and ") + wish::write_want(missing.want);
  if (wants.empty() && found.shortfall && !found.shortfall->not_taken.empty())
    return "'" + found.shortfall->not_taken.front() + "' isn't come to with " + limit_words(wish);
  if (wants.empty()) return "none was found that is as wished with " + limit_words(wish);
  return wants + (found.shortfall->missing.size() == 1 ? " stands" : " stand") + " in the way of " +
         limit_words(wish);
}

class VariantSearch {
 public:
  VariantSearch(const road::Roads& roads, const wish::Wish& wish, const hours::Setting& setting,
                Effort effort, FindResult& found)
      : roads_(roads), wish_(wish), setting_(setting), effort_(effort), found_(found) {}

  void run() {
    if (found_.loops.empty()) return;
    if (lacks_something(found_.shortfall)) {
      say_none("no easier or harder loop: variants are made of a loop that meets the wish");
      return;
    }
    first_ = found_.loops.front();
    add_easier();
    add_harder();
  }

 private:
  void say_none(const std::string& why) {
    std::string& because = found_.fewer_because;
    because += (because.empty() ? "" : "; ") + why;
  }

  [[nodiscard]] std::optional<wish::Wish> wish_for(std::string_view variant) const {
    return wish::variant_wish(wish_, first_, variant, caps_of(wish_).hardness_above_level);
  }

  /// Drops the loops whose independent stretch is too short, when that of the first loop isn't. False
  /// when none is left, or they lack what was asked for.
  [[nodiscard]] bool meets(FindResult& other) const {
    if (lacks_something(other.shortfall)) return false;
    if (!found_.shortfall)
      std::erase_if(other.loops, [&](const wish::Loop& loop) {
        return wish_.independent_minutes > 0 && !has_whole(loop);
      });
    return !other.loops.empty();
  }

  [[nodiscard]] bool has_whole(const wish::Loop& loop) const {
    return !loop.independent.empty() &&
           wish::seconds_of(loop, loop.independent.front()) >= 60.0 * wish_.independent_minutes;
  }

  /// What might be proved of a variant is of loops of its own hardness: nothing is bounded.
  [[nodiscard]] FindResult find(const wish::Wish& wish) const {
    FindWork work = work_of(effort_);
    work.bound.nodes = 0;
    return find_loops_by(roads_, wish, setting_, effort_, work);
  }

  void add(wish::Loop loop, std::string_view variant) {
    loop.id = static_cast<int>(found_.loops.size()) + 1;
    loop.variant = variant;
    loop.certificate.state = "searched";
    loop.certificate.bound.reset();
    found_.loops.push_back(std::move(loop));
  }

  void add_easier() {
    const auto easier = wish_for(wish::easier_variant);
    if (!easier) return say_none("no easier loop: loop 1 passes nothing above hardness 1");
    FindResult other = find(*easier);
    if (!meets(other)) return say_none("no easier loop: " + in_its_way(*easier, other));
    add(std::move(other.loops.front()), wish::easier_variant);
  }

  void add_harder() {
    wish::Wish harder = *wish_for(wish::harder_variant);
    harder.alternatives = harder_alternatives;
    FindResult other = find(harder);
    if (!meets(other)) return say_none("no harder loop: none was found that meets the wish");
    const auto hardest = std::max_element(other.loops.begin(), other.loops.end(),
                                          [](const wish::Loop& a, const wish::Loop& b) {
                                            return wish::hardness_of(a) < wish::hardness_of(b);
                                          });
    if (wish::hardness_of(*hardest) <= wish::hardness_of(first_))
      return say_none("no harder loop: none was found that is harder than loop 1");
    add(std::move(*hardest), wish::harder_variant);
  }

  const road::Roads& roads_;
  const wish::Wish& wish_;
  const hours::Setting& setting_;
  const Effort effort_;
  FindResult& found_;
  wish::Loop first_ = {};
};

}  // namespace

void add_variants(const road::Roads& roads, const wish::Wish& wish, const hours::Setting& setting,
                  Effort effort, FindResult& found) {
  VariantSearch(roads, wish, setting, effort, found).run();
}

}  // namespace loopwright::find
