// The words for one moment of a drive: at most nine.
#pragma once

#include <string>

#include "loopwright/say/words.hpp"
#include "say/approach.hpp"
#include "say/exits.hpp"
#include "say/layout.hpp"

namespace loopwright::say {

/// The most words that are spoken at once (common practice, no source).
inline constexpr std::size_t most_words = 9;

inline bool fits(const std::string& text) {
  return spoken_words(text) <= most_words;
}

class Phrasing {
 public:
  /// Rules: drive and words outlive this.
  Phrasing(const Drive& drive, const Words& words, Sides sides)
      : drive_(drive), words_(words), sides_(sides) {}

  /// May move the place to speak (approach), so that what it counts is met after it.
  [[nodiscard]] std::string of(const Moment& moment, Approach& approach) const;
  /// Setting off from the door.
  [[nodiscard]] std::string leaving() const;

 private:
  [[nodiscard]] std::string round_ring(const Moment& moment) const;
  [[nodiscard]] std::string off_unlike_signs(const Moment& moment, const ExitSeen& seen) const;
  [[nodiscard]] std::string off_ring(const Moment& moment) const;
  [[nodiscard]] std::string at_lights(const Moment& moment, Approach& approach) const;
  [[nodiscard]] std::string at_crossroads(const Moment& moment, Approach& approach) const;
  [[nodiscard]] std::string at_junction(const Junction& junction, Approach& approach) const;
  [[nodiscard]] std::string slip_road(const Junction& junction, const Layout& layout,
                                      Approach& approach) const;
  [[nodiscard]] std::string small_road(const Junction& junction, const Layout& layout,
                                       Approach& approach) const;
  [[nodiscard]] std::string nth_road(const Junction& junction, const Layout& layout,
                                     Approach& approach) const;
  [[nodiscard]] std::string warning(const Moment& moment) const;
  [[nodiscard]] std::string at(std::string_view place, std::string_view turn) const;
  [[nodiscard]] std::string told_apart(const Junction& junction, const std::string& place,
                                       bool doubtful) const;
  [[nodiscard]] std::string short_named(const Junction& junction, const std::string& name) const;
  [[nodiscard]] std::string unmistakable_name(const Junction& junction,
                                              const std::vector<StretchId>& met) const;
  [[nodiscard]] std::string turn(road::Movement movement) const;
  [[nodiscard]] std::string turn_into_small(road::Movement movement) const;
  [[nodiscard]] bool leads_off(const Junction& junction) const;
  /// "left", or "my side" as the case may be.
  [[nodiscard]] std::string side(road::Movement movement) const;
  /// "the left", or "my side".
  [[nodiscard]] std::string the_side(road::Movement movement) const;
  [[nodiscard]] std::string_view side_key(road::Movement movement) const;

  const Drive& drive_;
  const Words& words_;
  Sides sides_;
};

}  // namespace loopwright::say
