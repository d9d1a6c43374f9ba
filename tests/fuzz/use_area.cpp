#include "use_area.hpp"

#include "trial.hpp"
#include "verbs.hpp"

namespace loopwright::fuzz {

void use_area(const std::filesystem::path& file) {
  const std::string area = file.string(), start = "2026-11-28T15:00", home = "54.2954,2.6015";
  run_verb({"look", area, home, "--start", start});
  run_verb({"look", area, "node/10", "--start", start});
  run_verb({"look", area, "--roundabouts"});
  run_verb({"near", area, "--home", "Mill Orchard", "--want", "level-crossing", "--start", start});
  run_verb({"lanes", area, "--all", "--at", start});
  run_verb({"loops", area, "--home", home, "--want", "roundabout=2", "--minutes", "15", "--start",
            start, "-o", scratch_path("damaged.json").string()});
}

}  // namespace loopwright::fuzz
