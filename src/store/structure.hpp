// Whether the rows of an area fit together, so that following one never leads outside a column.
#pragma once

#include <optional>
#include <string>

#include "loopwright/road/roads.hpp"

namespace loopwright::store {

/// What is wrong with the columns' row counts ("'stretches' has 3 rows, not 4"); empty when they
/// agree. Reads no row.
std::optional<std::string> count_fault(const road::Columns<road::View>& columns);

/// What is wrong with the rows ("row 7 of 'turns' points outside the states"); empty when every
/// row number in every column lies inside the column it is for. Reads all rows that hold some.
std::optional<std::string> row_fault(const road::Columns<road::View>& columns);

}  // namespace loopwright::store
