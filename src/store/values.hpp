// Whether the rows of an area hold only values that mean something: a table looked up by a class of
// road that no road has would be read outside its rows.
#pragma once

#include <optional>
#include <string>

#include "loopwright/road/roads.hpp"

namespace loopwright::store {

/// What is wrong with the rows' values ("row 7 of 'turns' holds a number that stands for nothing");
/// empty when every enumeration has one of its values, every set of kinds only kinds, and every
/// length is a finite number. Reads all rows that hold some.
std::optional<std::string> value_fault(const road::Columns<road::View>& columns);

}  // namespace loopwright::store
