#include "county/names.hpp"

#include <array>

namespace loopwright::county {
namespace {

using Word = std::string_view;

constexpr auto trees = std::to_array<Word>(
    {"Acorn",    "Almond",       "Blackthorn", "Bramble", "Catkin",   "Cherry",
     "Cobnut",   "Cypress",      "Dogwood",    "Elder",   "Filbert",  "Hawthorn",
     "Hornbeam", "Laurel",       "Lilac",      "Maple",   "Mulberry", "Myrtle",
     "Oakapple", "Pearmain",     "Pinecone",   "Poplar",  "Redwood",  "Rosehip",
     "Sapling",  "Service Tree", "Sweetbriar", "Walnut",  "Wildwood", "Yew Tree"});
constexpr auto birds = std::to_array<Word>(
    {"Avocet",    "Bittern",   "Blackcap",  "Bunting",   "Chaffinch", "Crossbill",
     "Dabchick",  "Dipper",    "Fieldfare", "Firecrest", "Goldcrest", "Grebe",
     "Jackdaw",   "Linnet",    "Martlet",   "Nightjar",  "Nuthatch",  "Oystercatcher",
     "Peregrine", "Pintail",   "Redstart",  "Ringdove",  "Sandpiper", "Shoveler",
     "Siskin",    "Stonechat", "Throstle",  "Turnstone", "Whinchat",  "Woodlark"});
constexpr auto crafts = std::to_array<Word>(
    {"Arkwright",  "Bellfounder", "Besom",      "Bodger",     "Brazier",   "Chairmaker",
     "Clockmaker", "Cutler",      "Dyer",       "Fellmonger", "Fletcher",  "Founder",
     "Glover",     "Hatter",      "Hooper",     "Joiner",     "Lacemaker", "Limeburner",
     "Lorimer",    "Maltster",    "Millwright", "Pargeter",   "Pewterer",  "Quilter",
     "Sawyer",     "Scrivener",   "Spurrier",   "Thatcher",   "Turner",    "Wheelwright"});
constexpr auto herbs =
    std::to_array<Word>({"Agrimony", "Angelica",    "Betony",   "Borage",  "Bryony",   "Burdock",
                         "Campion",  "Chervil",     "Chicory",  "Comfrey", "Cowslip",  "Fennel",
                         "Feverfew", "Foxglove",    "Harebell", "Hyssop",  "Lovage",   "Mallow",
                         "Marjoram", "Meadowsweet", "Melilot",  "Mugwort", "Orris",    "Pimpernel",
                         "Samphire", "Speedwell",   "Tansy",    "Teasel",  "Valerian", "Yarrow"});
constexpr auto cloth = std::to_array<Word>(
    {"Baize",   "Batten",  "Bolster", "Buckram",  "Cambric",  "Carding", "Dimity",   "Drugget",
     "Fustian", "Gingham", "Heddle",  "Holland",  "Jacquard", "Kersey",  "Lawn",     "Linsey",
     "Lisle",   "Muslin",  "Nankeen", "Osnaburg", "Russet",   "Sateen",  "Selvedge", "Serge",
     "Spindle", "Tabby",   "Ticking", "Twill",    "Velour",   "Worsted"});
constexpr auto stones = std::to_array<Word>(
    {"Agate",       "Alabaster", "Amber",     "Ashlar",   "Basalt",     "Bluestone",
     "Chalkpit",    "Cinnabar",  "Clinker",   "Cobble",   "Coral",      "Corbel",
     "Feldspar",    "Flint",     "Freestone", "Garnet",   "Greensand",  "Gritstone",
     "Hearthstone", "Ironstone", "Jasper",    "Keystone", "Marl",       "Ochre",
     "Onyx",        "Quoin",     "Ragstone",  "Sarsen",   "Touchstone", "Whetstone"});
constexpr auto stars = std::to_array<Word>(
    {"Almanac",  "Altair",    "Arcturus",      "Aurora",       "Capella",  "Cassiopeia",
     "Comet",    "Corona",    "Crescent Moon", "Daystar",      "Deneb",    "Eclipse",
     "Equinox",  "Evenstar",  "Gemini",        "Harvest Moon", "Lodestar", "Lyra",
     "Meridian", "Nightfall", "Orrery",        "Pleiades",     "Polestar", "Procyon",
     "Rigel",    "Sextant",   "Solstice",      "Sundial",      "Vega",     "Zenith"});
constexpr auto tools = std::to_array<Word>(
    {"Anvil",   "Axle",     "Ballast",  "Bellows", "Bobbin Mill", "Boiler",
     "Brazing", "Capstan",  "Caulker",  "Cinder",  "Cogwheel",    "Crucible",
     "Derrick", "Dynamo",   "Flywheel", "Furnace", "Gantry",      "Gasket",
     "Girder",  "Governor", "Ingot",    "Lathe",   "Mandrel",     "Pattern Shop",
     "Piston",  "Ratchet",  "Rivet",    "Smelter", "Tinplate",    "Trunnion"});
constexpr auto fields = std::to_array<Word>(
    {"Barley Mow", "Bellwether", "Buttercup",   "Cartwheel", "Clover",    "Cuckoo Pen",
     "Dewpond",    "Dovecote",   "Drover",      "Fallow",    "Gleaner",   "Granary",
     "Haywain",    "Headland",   "Hopfield",    "Lambing",   "Long Acre", "Oxbow",
     "Pightle",    "Pinfold",    "Ploughshare", "Rickyard",  "Saffron",   "Sheepfold",
     "Stackyard",  "Threshing",  "Tithe",       "Wagon",     "Wheatear",  "Winnow"});
constexpr auto old = std::to_array<Word>(
    {"Almoner", "Beadle",    "Bailey",     "Cloister",   "Constable", "Cresset",
     "Dragon",  "Falconer",  "Gatehouse",  "Herald",     "Jester",    "Knotgarden",
     "Lodger",  "Mummer",    "Pageant",    "Palfrey",    "Pilgrim",   "Postern",
     "Prebend", "Quintain",  "Rebec",      "Refectory",  "Sackbut",   "Sexton",
     "Tabard",  "Tinderbox", "Tournament", "Troubadour", "Verger",    "Waits"});
constexpr auto sea = std::to_array<Word>(
    {"Anchorage", "Barnacle",   "Binnacle",  "Boatswain", "Bowsprit",  "Breakwater",
     "Coble",     "Cockle",     "Coxswain",  "Cutter",    "Driftwood", "Fathom",
     "Ferryman",  "Figurehead", "Flotsam",   "Foresail",  "Halyard",   "Keelson",
     "Ketch",     "Lobsterpot", "Lugger",    "Mainsail",  "Mizzen",    "Nautilus",
     "Pinnace",   "Schooner",   "Spinnaker", "Starboard", "Tiller",    "Windlass"});

constexpr std::array<std::span<const Word>, 11> roots{trees, birds, crafts, herbs, cloth, stones,
                                                      stars, tools, fields, old,   sea};

constexpr auto inns = std::to_array<Word>(
    {"The Plough and Lantern", "The Tin Whistle",     "The Drovers' Rest",  "The Blue Kettle",
     "The Leaping Hare",       "The Odd Wheel",       "The Merry Tinker",   "The Two Magpies",
     "The Copper Kettle",      "The Fiddler's Elbow", "The Silver Thimble", "The Wandering Goose",
     "The Lame Duck",          "The Corn Dolly",      "The Sleeping Fox",   "The Ringing Anvil",
     "The Third Milestone",    "The Old Turnpike",    "The Hop Sack",       "The Paper Kite"});
constexpr auto saints = std::to_array<Word>(
    {"St Aldyth's", "St Brannoc's", "St Cuthmar's", "St Edburh's", "St Godwyn's", "St Ithamar's",
     "St Kenelm's", "St Modwen's", "St Oswin's", "St Tibba's", "St Walstan's", "St Wendreda's"});
constexpr auto shops =
    std::to_array<Word>({"Candle & Crumb", "Pennywhistle Stores", "Thimble Market", "Larder Lane",
                         "The Corner Basket", "Copperpot", "Quill News", "Marrow & Pear",
                         "Odd Socks", "Kettle & Twine", "Bright Pantry", "Acre Foods"});

constexpr auto schools =
    std::to_array<Word>({"Abacus Lane", "Beechmast", "Conker Tree", "Dandelion", "Fernleaf",
                         "Hopscotch", "Inkwell", "Kitefield", "Ladybird", "Marbles", "Oak Apple",
                         "Periwinkle", "Skipping Rope", "Slate Hill", "Sunflower", "Treehouse"});

}  // namespace

std::span<const std::span<const std::string_view>> street_roots() {
  return roots;
}
std::span<const std::string_view> inn_names() {
  return inns;
}
std::span<const std::string_view> saint_names() {
  return saints;
}
std::span<const std::string_view> shop_names() {
  return shops;
}
std::span<const std::string_view> school_names() {
  return schools;
}

}  // namespace loopwright::county
