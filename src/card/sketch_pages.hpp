// The sketches for the briefings, four to a sheet of A4, one to a sheet of A5.
#pragma once

#include <functional>
#include <vector>

#include "card/flow.hpp"
#include "card/sections.hpp"

namespace loopwright::card {

/// At most `most`, of the hardest places; the first sheet says so when there are more.
std::vector<draw::Picture> sketch_pages(const Subject& subject, const PageStyle& style,
                                        std::size_t most,
                                        const std::function<Flow::Room()>& new_page);

}  // namespace loopwright::card
