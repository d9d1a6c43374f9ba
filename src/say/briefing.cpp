// Method:
// 1. Each pass belongs to the row whose moment it is, else to the last row before it begins: what
// is
//    met after a row, and before the next, is briefed with it.
// 2. Passes of one kind in one row are counted together, in order of the first; what the map only
//    lets us infer is named as such.
//    A planned stop is named by itself, with its minutes.
// 3. A limit that changes at a row is the row's own; one that changes between rows is listed with
//    what is met. Rings have no sign of their own and don't count. Of a service road whose limit
//    isn't mapped only that is told.
#include "say/briefing.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "loopwright/say/limit_told.hpp"

namespace loopwright::say {
namespace {

/// Something met after a row, with the joint it begins at.
struct Ahead {
  std::size_t joint = 0;
  std::string text;
};

class Briefing {
 public:
  Briefing(const Drive& drive, const std::vector<Moment>& moments, const Words& words)
      : drive_(drive), moments_(moments), words_(words), ahead_(moments.size()) {}

  void fill(std::vector<Row>& rows) {
    for (std::size_t i = 0; i < drive_.loop().passes.size(); ++i) add_pass(i, rows);
    add_groups();
    for (std::size_t k = 0; k < moments_.size(); ++k) add_limits(k, rows[k]);
    for (std::size_t k = 0; k < moments_.size(); ++k) {
      std::stable_sort(ahead_[k].begin(), ahead_[k].end(),
                       [](const Ahead& a, const Ahead& b) { return a.joint < b.joint; });
      for (Ahead& met : ahead_[k]) rows[k].hazards.push_back(std::move(met.text));
    }
  }

 private:
  /// A kind met after a row, as sure as the map is of it.
  using Group = std::tuple<std::size_t, road::Kind, road::Confidence>;
  struct Members {
    std::size_t first_joint = 0, count = 0;
  };

  void add_pass(std::size_t index, std::vector<Row>& rows) {
    const wish::Pass& pass = drive_.loop().passes[index];
    const auto own = std::find_if(moments_.begin(), moments_.end(),
                                  [&](const Moment& m) { return m.pass == &pass; });
    const std::size_t joint = first_joint(pass);
    const bool at_start = begins_on_stretch(pass.kind) && pass.first == 0;
    const std::size_t k = own != moments_.end() ? static_cast<std::size_t>(own - moments_.begin())
                                                : (at_start ? 0 : row_of(joint));
    rows[k].passes.push_back(index);
    rows[k].hardness = std::max(rows[k].hardness, pass.hardness);
    const std::string kind(road::name(pass.kind));
    if (pass.stop_s > 0) {
      ahead_[k].push_back({joint, words_for_stop(pass)});
    } else if (own != moments_.end()) {
      if (words_.has("brief." + kind)) rows[k].briefs.emplace_back(words_.at("brief." + kind));
    } else if (words_.has("hazard." + kind)) {
      const Group group{k, pass.kind, pass.confidence};
      ++groups_.try_emplace(group, Members{joint, 0}).first->second.count;
    }
  }

  /// Runs of road, and what lies beside a stretch: met on it, not at its end.
  static bool begins_on_stretch(road::Kind kind) {
    return road::form_of(kind) != road::KindForm::junction;
  }

  /// The joint at which a pass begins: that of its entry, or that by which its stretch is entered.
  static std::size_t first_joint(const wish::Pass& pass) {
    return begins_on_stretch(pass.kind) && pass.first > 0 ? pass.first - 1 : pass.first;
  }

  void add_groups() {
    for (const auto& [group, members] : groups_) {
      const auto& [k, kind, confidence] = group;
      ahead_[k].push_back({members.first_joint, words_for({kind, confidence}, members.count)});
    }
  }

  [[nodiscard]] std::string words_for_stop(const wish::Pass& pass) const {
    const std::string minutes = std::to_string(std::lround(pass.stop_s / 60));
    const std::string kind(words_.at("kind." + std::string(road::name(pass.kind))));
    const std::string street = spoken_name(drive_.loop().stretches[pass.first].street);
    if (street.empty()) return words_.fill("stop.here", {{"kind", kind}, {"n", minutes}});
    return words_.fill("stop.in", {{"street", street}, {"kind", kind}, {"n", minutes}});
  }

  struct Fact {
    road::Kind kind;
    road::Confidence confidence;
  };
  [[nodiscard]] std::string words_for(const Fact& fact, std::size_t count) const {
    const std::string name(road::name(fact.kind));
    const std::string hazard = words_.count("hazard." + name, count);
    if (fact.confidence == road::Confidence::certain) return hazard;
    if (fact.confidence == road::Confidence::noted) {
      return words_.fill("hazard.noted", {{"hazard", hazard}});
    }
    if (words_.has("perhaps." + name)) return words_.count("perhaps." + name, count);
    return words_.fill("hazard.inferred", {{"hazard", hazard}});
  }

  /// The row that what begins at this joint belongs to.
  [[nodiscard]] std::size_t row_of(std::size_t joint) const {
    std::size_t row = 0;
    for (std::size_t k = 1; k + 1 < moments_.size(); ++k) {
      const bool turns_here = moments_[k].entry == joint && moments_[k].kind != RowKind::warn;
      if (moments_[k].entry < joint || turns_here) row = k;
    }
    return row;
  }

  void add_limits(std::size_t k, Row& row) {
    const auto& stretches = drive_.loop().stretches;
    const Moment& moment = moments_[k];
    if (k == 0) tell_limit(k, row, 0);
    const bool counted_before = k > 0 && end_joint(moments_[k - 1]) == end_joint(moment) &&
                                moments_[k - 1].kind != RowKind::leave;
    if (k > 0 && !counted_before && moment.exit < stretches.size() &&
        !(stretches[moment.entry].limit == stretches[moment.exit].limit) &&
        !drive_.on_ring(moment.entry) && !drive_.on_ring(moment.exit))
      tell_limit(k, row, moment.exit);
    if (k + 1 == moments_.size()) return;
    const std::size_t first = k == 0 ? 0 : end_joint(moment) + 1;
    for (std::size_t joint = first; joint < moments_[k + 1].entry; ++joint) {
      const road::LimitOnDay& limit = stretches[joint + 1].limit;
      if (stretches[joint].limit == limit || drive_.on_ring(joint) || drive_.on_ring(joint + 1))
        continue;
      ahead_[k].push_back({joint, words_for(stretches[joint + 1])});
    }
  }

  void tell_limit(std::size_t k, Row& row, std::size_t stretch) {
    const wish::LoopStretch& driven = drive_.loop().stretches[stretch];
    if (tells_limit(drive_.roads(), driven))
      row.new_limit = driven.limit;
    else
      ahead_[k].push_back({stretch == 0 ? 0 : stretch - 1, words_for(driven)});
  }

  [[nodiscard]] std::string words_for(const wish::LoopStretch& driven) const {
    if (!tells_limit(drive_.roads(), driven)) return std::string(words_.at("hazard.service_road"));
    const road::LimitOnDay& limit = driven.limit;
    std::string text = limit.value == 0
                           ? std::string(words_.at("limit.none"))
                           : words_.fill("limit.value", {{"n", std::to_string(limit.value)}});
    if (road::is_sure(limit.confidence)) return text;
    return words_.fill("limit.look", {{"limit", text}});
  }

  const Drive& drive_;
  const std::vector<Moment>& moments_;
  const Words& words_;
  std::map<Group, Members> groups_;
  std::vector<std::vector<Ahead>> ahead_;
};

}  // namespace

void add_briefing(const Drive& drive, const std::vector<Moment>& moments, const Words& words,
                  std::vector<Row>& rows) {
  Briefing(drive, moments, words).fill(rows);
}

}  // namespace loopwright::say
