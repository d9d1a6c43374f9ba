#include "course/pupils.hpp"

#include <array>

namespace loopwright::test {

std::span<const CoursePupil> course_pupils() {
  static constexpr std::array<CoursePupil, 20> all{{
      {"WREN", "4 Lantern Row", 1.0, 0, "", true},
      {"FINCH", "19 Cooper's Reach", 0.6, 60, "", false},
      {"PIPIT", "Tarrowby", 0.45, 0, "", false},
      {"DUNNOCK", "2 Mill Orchard", 0.7, 0, "level-crossing", false},
      {"SISKIN", "61 Ostler Street", 0.5, 120, "", true},
      {"LINNET", "8 Signal Terrace", 0.8, 0, "", false},
      {"PLOVER", "Plover Way", 0.65, 0, "", false},
      {"ROWAN", "Rowan Crescent", 0.9, 30, "", true},
      {"BEACON", "Lookout Road", 0.55, 0, "signal-roundabout", false},
      {"WEAVER", "Weaver Street", 0.75, 0, "", false},
      {"KESTREL", "Kestrel Rise", 0.5, 0, "", false},
      {"HARRIER", "Harrier Road", 0.85, 90, "", false},
      {"ALDER", "Alder Crescent", 0.6, 0, "", true},
      {"REED", "Nether Osk", 0.7, 0, "", false},
      {"MARSH", "Pellmarsh", 0.55, 60, "", false},
      {"WITHY", "Withy Cross", 0.95, 0, "", false},
      {"BRINDLE", "Brindlemere", 0.65, 0, "tram", false},
      {"STAVEN", "Stavenhoe", 0.5, 45, "", false},
      {"CARDER", "Carder Street", 0.6, 0, "", true},
      {"CURLEW", "Curlew Close", 0.8, 0, "", false},
  }};
  return all;
}

}  // namespace loopwright::test
