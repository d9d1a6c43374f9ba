// The list of commands, in the order in which `--help` shows them.
#include <array>

#include "loopwright/command/command.hpp"

namespace loopwright::command {
namespace {

constexpr std::array all_verbs{
    Verb{"build", "make an area file from a map extract", build},
    Verb{"loops", "find lesson loops from the door and back", loops},
    Verb{"near", "find the nearest places to practise something", near},
    Verb{"card", "write a loop as a route card, GPX or GeoJSON", card},
    Verb{"lanes", "tell which bus lanes may be used when we pass, and what else has hours", lanes},
    Verb{"hours", "tell whether a text of hours is in force at a time, and why", hours},
    Verb{"proof", "check every claim of a loop file against the area", proof},
    Verb{"look", "tell what the map says at a place, and why", look},
    Verb{"note", "keep what you know better than the map", note},
    Verb{"pupil", "keep pupils and their progress in a book of your own", pupil},
    Verb{"lesson", "plan, print and log a pupil's lessons", lesson},
    Verb{"day", "plan the lessons of a day, in order", day},
    Verb{"centre", "keep the surroundings of test centres, which mock tests keep off", centre},
    Verb{"school", "keep one book for many instructors, on a server", school},
    Verb{"streets", "show which quiet streets your drives use most", streets},
    Verb{"kinds", "list the kinds of practice: how hard, after what, how sure", kinds},
    Verb{"page", "open the area and its lessons in the browser of this computer", page},
};

}  // namespace

std::span<const Verb> verbs() {
  return all_verbs;
}

}  // namespace loopwright::command
