// The steps of dress_streets, each for the whole county.
#pragma once

#include "county/drawing.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::county {

/// A name for every grown street that has none: roots by quarter, endings by shape and class. No name
/// is given twice, nor one that the plan has.
void name_streets(Drawing& county, Dice& dice);
/// No passing place is left where a later lane joined: nobody pulls in there.
void clear_junctions(Drawing& county);
/// Some streets that both join others become one-way, where every place stays within reach of all.
void make_one_way(Drawing& county, Dice& dice);
/// Humps and cushions, crossings on foot, give-way signs, bus stops and shops.
void furnish_streets(Drawing& county, Dice& dice);
/// House numbers and postcode-like codes on about a third of the grown streets.
void number_houses(Drawing& county, Dice& dice);
/// Cuts long roads, as ways of a map are: streets at junctions, main roads anywhere.
void cut_streets(Drawing& county, Dice& dice);
/// Bans on turning into some of the grown one-way streets against their order. Rules: after all else
/// that cuts or numbers lines.
void ban_turns(Drawing& county, Dice& dice);

}  // namespace loopwright::county
