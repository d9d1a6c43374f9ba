// One pupil copied from one book into another, row by row, and held against what was read.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "book/database.hpp"

namespace loopwright::book {

/// What a pupil's rows became in the second book. In a file a pupil and a lesson may both be row 1.
struct CopiedPupil {
  Value pupil;
  std::map<Value, Value> lessons;  ///< by their keys in the first book
  int rows = 0;                    ///< of all tables
};

/// All of the pupil, with keys that the second book gives. Throws InputError when a row can't be kept there, and says which,
/// and when what was written isn't what was read.
CopiedPupil copy_pupil(Database& from, const RowKey& pupil, Database& to);

/// What was seen on the ground; of two sightings of a fact the later one stays. How many rows.
int copy_seen(Database& from, Database& to);
/// Test centres; one that the second book keeps by that name stays there. How many rows.
int copy_centres(Database& from, Database& to);

}  // namespace loopwright::book
