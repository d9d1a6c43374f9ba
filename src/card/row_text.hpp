// The rows of a card as lines of text.
#pragma once

#include "card/sections.hpp"
#include "card/sheet.hpp"
#include "loopwright/card/pack.hpp"

namespace loopwright::card {

/// Each up to six lines; rows said in one breath are held together by a bracket at the left edge.
void add_rows(Sheet& sheet, const Subject& subject, Reader reader);
/// A section below them.
void add_section(Sheet& sheet, const Section& section);

}  // namespace loopwright::card
