// The words of the YAML files for what the model knows as enumerations.
#pragma once

#include "input/yaml/cursor.h"
#include "model/content.h"
#include "model/job.h"

namespace input {

inline constexpr Word<model::State> stateWords[] = {{"new", model::State::New},
                                                    {"weathered", model::State::Weathered},
                                                    {"sanded", model::State::Sanded},
                                                    {"oiled", model::State::Oiled},
                                                    {"film", model::State::Film}};

inline constexpr Word<model::Uptake> uptakeWords[] = {{"tight", model::Uptake::Tight},
                                                      {"medium", model::Uptake::Medium},
                                                      {"open", model::Uptake::Open},
                                                      {"thirsty", model::Uptake::Thirsty}};

inline constexpr Word<model::Exposure> exposureWords[] = {{"sheltered", model::Exposure::Sheltered},
                                                          {"open", model::Exposure::Open},
                                                          {"coastal", model::Exposure::Coastal}};

inline constexpr Word<model::Work> workWords[] = {{"wash", model::Work::Wash},
                                                  {"fix", model::Work::Fix},
                                                  {"sand", model::Work::Sand},
                                                  {"oil", model::Work::Oil}};

inline constexpr Word<model::Run> runWords[] = {{"long side", model::Run::LongSide},
                                                {"short side", model::Run::ShortSide}};

inline constexpr Word<model::BoardFace> boardFaceWords[] = {{"smooth", model::BoardFace::Smooth},
                                                            {"reeded", model::BoardFace::Reeded}};

inline constexpr Word<model::Wetted> wettedWords[] = {{"top", model::Wetted::Top},
                                                      {"top and edges", model::Wetted::TopAndEdges},
                                                      {"all faces", model::Wetted::AllFaces}};

inline constexpr Word<int> dayWords[] = {{"mon", 0}, {"tue", 1}, {"wed", 2}, {"thu", 3},
                                         {"fri", 4}, {"sat", 5}, {"sun", 6}};

inline constexpr Word<model::ProductKind> productKindWords[] = {
    {"penetrating oil", model::ProductKind::PenetratingOil},
    {"water-borne oil", model::ProductKind::WaterborneOil},
    {"film stain", model::ProductKind::FilmStain}};

inline constexpr Word<model::Measure> measureWords[] = {
    {"job", model::Measure::Job},         {"day", model::Measure::Day},
    {"surface", model::Measure::Surface}, {"wetted", model::Measure::Wetted},
    {"cut_in", model::Measure::CutIn},    {"boards", model::Measure::BoardLength},
    {"fixings", model::Measure::Fixings}};
inline constexpr Word<model::PriceShow> priceShowWords[] = {
    {"areas", model::PriceShow::Areas}, {"work", model::PriceShow::Work}, {"lump", model::PriceShow::Lump}};

/// Protective equipment, by the ids of its signs.
inline constexpr Word<const char*> wearWords[] = {
    {"boots", "boots"}, {"gloves", "gloves"},     {"eyes", "eyes"},      {"ears", "ears"},
    {"mask", "mask"},   {"gas_mask", "gas_mask"}, {"sleeves", "sleeves"}};

inline constexpr Word<base::Round> roundWords[] = {{"half up", base::Round::HalfUp},
                                                   {"half down", base::Round::HalfDown},
                                                   {"half even", base::Round::HalfEven},
                                                   {"up", base::Round::Up},
                                                   {"down", base::Round::Down}};

inline constexpr Word<model::Paper> paperWords[] = {{"a4", model::Paper::A4},
                                                    {"letter", model::Paper::Letter}};

inline constexpr Word<model::UnitSystem> unitWords[] = {{"metric", model::UnitSystem::Metric},
                                                        {"us", model::UnitSystem::UsCustomary}};

inline constexpr Word<model::Face> faceWords[] = {
    {"text", model::Face::Text},          {"text-italic", model::Face::TextItalic},
    {"text-bold", model::Face::TextBold}, {"display", model::Face::Display},
    {"sans", model::Face::Sans},          {"sans-italic", model::Face::SansItalic},
    {"sans-bold", model::Face::SansBold}};

// ---------------------------------------------------------------- limits used in more than one place

inline constexpr Limits<base::Length> anyLength = {base::Length{1000}, base::metres(10'000),
                                                   "from 1 um to 10 km", base::millimetres(300),
                                                   base::metres(100)};
inline constexpr Limits<base::Length> anyPlace = {base::metres(-10'000), base::metres(10'000),
                                                  "from -10 km to 10 km", base::millimetres(300),
                                                  base::metres(100)};
/// Sides of decks and of what is cut out of them.
inline constexpr Limits<base::Length> deckSides = {base::Length{1000},   base::metres(10'000),
                                                   "from 1 um to 10 km", base::millimetres(300),
                                                   base::metres(100),    "from 0.3 m to 100 m (1 to 330 ft)"};
inline constexpr Limits<base::Length> cutOutSides = {
    base::Length{1000},    base::metres(10'000), "from 1 um to 10 km",
    base::millimetres(40), base::metres(30),     "from 40 mm to 30 m (1 1/2 in to 100 ft)"};
inline constexpr Limits<base::Area> anyArea = {
    base::Area{1'000'000},       base::squareMetres(100'000), "above 0 m2, to 100000 m2",
    base::Area{100'000'000'000}, base::squareMetres(500),     "from 0.1 m2 to 500 m2 (1 to 5400 ft2)"};
inline constexpr Limits<base::Volume> tinSizes = {
    base::millilitres(10),  base::litres(1000), "from 10 mL to 1000 L",
    base::millilitres(100), base::litres(210),  "from 100 mL to 210 L (3 fl oz to 55 gal)"};
inline constexpr Limits<int> tinCounts = {0, 1000, "from 0 to 1000", 1, 60, "from 1 to 60"};
inline constexpr Limits<base::Share> toWhole = {{0}, base::Share::whole(100), "from 0 % to 100 %"};
inline constexpr Limits<base::Share> margins = {{0},
                                                base::Share{94'999'999},
                                                "from 0 % to below 95 %",
                                                base::Share::whole(5),
                                                base::Share::whole(70),
                                                "from 5 % to 70 %"};
inline constexpr Limits<base::Share> raises = {{0},
                                               base::Share::whole(100),
                                               "from 0 % to 100 %",
                                               base::Share{500'000},
                                               base::Share::whole(25),
                                               "from 0.5 % to 25 %"};
inline constexpr Limits<base::Hours> anyTime = {{0}, base::Hours::whole(24 * 366), "from 0 h to 366 d"};

/// Degrees as millionths, up to 90 or 180 either way; nothing, and an error, where they are none.
std::optional<std::int64_t> degrees(const Field& f, int most);

/// A spreading rate between 0.5 and 100 m2/L.
base::Spread spread(const Field& f);

}  // namespace input
