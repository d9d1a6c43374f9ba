// Method:
// 1. Both lists, the file's and the drive's own, are put in order of (first, last, kind, movement)
//    and walked side by side: a pass on one side only is an extra or a missing one.
// 2. Of a pair every field is compared.
// 3. At rings and minis the exit is counted again: from the arm one came in by, in driving order,
//    those public arms by which one may leave, the one taken included. Where an arm has several
//    ways in or out only one is in its row; then the area's number stands.
// 4. Bus lanes are judged again by room lanes from the drive's own times.
#include <algorithm>
#include <tuple>

#include "loopwright/lanes/lanes.hpp"
#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

using road::Kind;
using wish::Pass;

std::string span_text(std::size_t first, std::size_t last) {
  return "stretches " + std::to_string(first) + " to " + std::to_string(last);
}

std::string pass_text(const Pass& pass) {
  std::string text(road::name(pass.kind));
  if (pass.movement != road::Movement::none) text.append(":").append(road::name(pass.movement));
  return text + " (" + words_for(pass.source) + ") on " + span_text(pass.first, pass.last);
}

auto place_in_order(const Pass& pass) {
  return std::tuple(pass.first, pass.last, pass.kind);
}

/// A pass of the file with its number there.
struct Claimed {
  const Pass* pass = nullptr;
  std::size_t number = 0;
};

std::vector<Claimed> in_order(const std::vector<Pass>& passes) {
  std::vector<Claimed> claimed;
  for (std::size_t i = 0; i < passes.size(); ++i) claimed.push_back({&passes[i], i});
  std::stable_sort(claimed.begin(), claimed.end(), [](const Claimed& a, const Claimed& b) {
    return place_in_order(*a.pass) < place_in_order(*b.pass);
  });
  return claimed;
}

std::vector<const FoundPass*> in_order(const std::vector<FoundPass>& passes) {
  std::vector<const FoundPass*> found;
  for (const FoundPass& one : passes) found.push_back(&one);
  std::stable_sort(found.begin(), found.end(), [](const FoundPass* a, const FoundPass* b) {
    return place_in_order(a->pass) < place_in_order(b->pass);
  });
  return found;
}

std::string at_pass(const Drive& drive, const Claimed& claimed) {
  return at_loop(drive) + ", pass " + std::to_string(claimed.number) + " (" +
         words_for(claimed.pass->source) + ")";
}

bool has_arms(Kind kind) {
  return road::meets(kind, Kind::roundabout) || road::meets(kind, Kind::mini_roundabout);
}

/// The exit as the signs count it, by the arms of the place; none when the arms can't tell.
std::optional<int> counted_exit(const Drive& drive, const FoundPass& found) {
  const road::Place& place = drive.roads.places[found.place.index()];
  const auto arms = drive.roads.arms.subspan(place.arm_first, place.arms);
  const auto entered = std::find_if(arms.begin(), arms.end(), [&](const road::Arm& arm) {
    return arm.in == drive.stretches[found.pass.first];
  });
  const auto left = std::find_if(arms.begin(), arms.end(), [&](const road::Arm& arm) {
    return arm.out == drive.stretches[found.pass.last];
  });
  if (entered == arms.end() || left == arms.end()) return {};
  const auto counts = [](const road::Arm& arm) { return arm.is_public != 0 && arm.can_leave != 0; };
  if (!counts(*left)) return 0;
  // From the arm after the entry's, round to the one taken; the same arm again is a full round.
  if (left > entered) return static_cast<int>(std::count_if(entered + 1, left + 1, counts));
  return static_cast<int>(std::count_if(entered + 1, arms.end(), counts) +
                          std::count_if(arms.begin(), left + 1, counts));
}

bool exit_holds(const Drive& drive, const Claimed& claimed, const FoundPass& found,
                Claims& claims) {
  const std::string where = at_pass(drive, claimed) + ", exit";
  if (!claims.agree(where, std::to_string(claimed.pass->exit), std::to_string(found.pass.exit)))
    return false;
  if (!has_arms(found.pass.kind)) return true;
  const auto counted = counted_exit(drive, found);
  return claims.hold(!counted || *counted == claimed.pass->exit, [&] {
    return where + ": the file says " + std::to_string(claimed.pass->exit) +
           ", counting the arms gives " + std::to_string(*counted);
  });
}

bool fields_hold(const Drive& drive, const Claimed& claimed, const FoundPass& found,
                 Claims& claims) {
  const Pass& said = *claimed.pass;
  const Pass& own = found.pass;
  const auto agree = [&](std::string_view field, std::string_view file, std::string_view area) {
    return claims.agree(at_pass(drive, claimed) + ", " + std::string(field), file, area);
  };
  return agree("movement", road::name(said.movement), road::name(own.movement)) &&
         exit_holds(drive, claimed, found, claims) &&
         agree("hardness", std::to_string(said.hardness), std::to_string(own.hardness)) &&
         agree("confidence", road::name(said.confidence), road::name(own.confidence)) &&
         agree("source", words_for(said.source), words_for(own.source)) &&
         agree("tag", said.tag, own.tag) &&
         claims.agree(at_pass(drive, claimed) + ", stop",
                      {said.stop_s, own.stop_s, time_tolerance_s, "s"}) &&
         // A file of an older version says nothing.
         (!said.verdict || agree("verdict", wish::name(*said.verdict),
                                 own.verdict ? wish::name(*own.verdict) : "none"));
}

}  // namespace

bool passes_hold(const Drive& drive, Claims& claims) {
  const std::vector<Claimed> said = in_order(drive.loop.passes);
  const std::vector<const FoundPass*> own = in_order(drive.passes);
  for (std::size_t i = 0; i < std::max(said.size(), own.size()); ++i) {
    const bool extra = i >= own.size() || (i < said.size() && place_in_order(*said[i].pass) <
                                                                  place_in_order(own[i]->pass));
    if (!claims.hold(!extra, [&] {
          return at_loop(drive) + ", pass " + std::to_string(said[i].number) +
                 ": the drive makes no pass of " + pass_text(*said[i].pass);
        }))
      return false;
    const bool missing =
        i >= said.size() || place_in_order(own[i]->pass) < place_in_order(*said[i].pass);
    if (!claims.hold(!missing, [&] {
          return at_loop(drive) + ": the drive passes " + pass_text(own[i]->pass) +
                 ", which the file doesn't list";
        }))
      return false;
    if (!fields_hold(drive, said[i], *own[i], claims)) return false;
  }
  return true;
}

bool bus_lanes_hold(const Drive& drive, Claims& claims) {
  wish::Loop resolved = drive.loop;
  for (std::size_t i = 0; i < resolved.stretches.size(); ++i)
    resolved.stretches[i].stretch = drive.stretches[i];
  const auto own = lanes::bus_lanes_on(drive.roads, resolved, drive.setting);
  const auto& said = drive.loop.bus_lanes;
  if (!claims.agree(at_loop(drive) + ", bus lanes", std::to_string(said.size()),
                    std::to_string(own.size())))
    return false;
  for (std::size_t i = 0; i < own.size(); ++i) {
    const auto agree = [&](std::string_view field, std::string_view file, std::string_view area) {
      return claims.agree(at_loop(drive) + ", bus lane " + std::to_string(i) + " (" +
                              words_for(own[i].source) + "), " + std::string(field),
                          file, area);
    };
    const auto time = [](const wish::BusLanePass& lane) {
      return lane.arrive_from + " to " + lane.arrive_to;
    };
    const bool holds =
        agree("place", span_text(said[i].first, said[i].last),
              span_text(own[i].first, own[i].last)) &&
        agree("side", said[i].side, own[i].side) &&
        agree("hours", said[i].hours.value_or("not mapped"), own[i].hours.value_or("not mapped")) &&
        agree("times", time(said[i]), time(own[i])) &&
        agree("verdict", wish::name(said[i].verdict), wish::name(own[i].verdict)) &&
        agree("why", said[i].why, own[i].why) &&
        agree("source", words_for(said[i].source), words_for(own[i].source)) &&
        agree("tag", said[i].tag, own[i].tag);
    if (!holds) return false;
  }
  return true;
}

}  // namespace loopwright::proof
