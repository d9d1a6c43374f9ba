// What a build found, what it only infers, what the map doesn't tell, and what to mend in the open
// map, as a page the instructor can read.
//
//   store::write_whole("report.html", write_area_report(roads, report, DocumentForm::html));
#pragma once

#include <cstdint>
#include <string>

#include "loopwright/road/report.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::card {

enum class DocumentForm : std::uint8_t { text, html };

/// Rules: `report` is that of the build the roads came from. Everything inferred is called so.
std::string write_area_report(const road::Roads& roads, const road::Report& report,
                              DocumentForm form);

}  // namespace loopwright::card
