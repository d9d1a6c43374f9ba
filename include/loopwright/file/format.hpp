// The number of the loop file's format: this program writes it and reads no other.
#pragma once

namespace loopwright::file {

/// The member `version` of a loop file. What is only added doesn't raise it.
int loop_file_format();

}  // namespace loopwright::file
