// Towns for the rules about shape: hills as functions, and rows of houses.
//
//   const BuiltTown town = hilly_town(drawing, [](double east_m) { return 0.05 * east_m; });
//   is_run(town, "AB", road::Kind::downhill);
//
// Rules: metres east count from the drawing's left edge.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "support/built_town.hpp"

namespace loopwright::test {

/// Height in metres by how far east one is.
using Hill = std::function<double(double east_m)>;

mark::HeightSource heights_of(Hill hill);
BuiltTown hilly_town(std::string_view drawing, Hill hill, std::string_view region = "GB-ENG");

/// True when the stretch between two letters belongs to a run of the kind.
bool is_run(const BuiltTown& town, std::string_view ends, road::Kind kind);

/// What says so, and how sure that is: "incline=-9% certain"; empty when it doesn't belong.
std::string why_run(const BuiltTown& town, std::string_view ends, road::Kind kind);

/// Details of the oddities of one kind of trouble.
std::vector<std::string> details_of(const road::Report& report, std::string_view what);

}  // namespace loopwright::test
