// What varies by trade, place and firm, as read from content/ and the firm's folder: products, timbers,
// tasks, consumables, tools, regions, the firm's rates and its letterhead.
#pragma once

#include "base/date.h"
#include "base/diagnostic.h"
#include "base/holidays.h"
#include "base/money.h"
#include "base/units.h"
#include "model/hazard.h"
#include "model/theme.h"
#include "model/weather.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace model {

/// How thirsty the boards are.
enum class Uptake { Tight, Medium, Open, Thirsty };

/// What the surface is now.
enum class State { New, Weathered, Sanded, Oiled, Film };

enum class Exposure { Sheltered, Open, Coastal };

/// What the customer may ask for, in the order it is done.
enum class Work { Wash, Fix, Sand, Oil };

// ---------------------------------------------------------------- products

struct Tin {
  base::Volume size;
  base::Money price;      // before tax, in the region's currency
  std::string code = {};  // the supplier's; may be empty
};

enum class ProductKind { PenetratingOil, WaterborneOil, FilmStain };

/// Times after a coat, in hours, as the data sheet gives them for 20 C.
struct ProductTimes {
  base::Hours touchDry;
  base::Hours recoatMin, recoatIdealFrom, recoatIdealTo, recoatMax;  // in this order, checked
  base::Hours walk, furniture, rugs, firstWash;
  int maintenanceMonths = 12;
  base::Hours wipeOff;        // what stands on the surface after this is wiped off; 0 = does not apply
  base::Hours rainSafe = {};  // rain does no more harm; never before it is touch dry
};

struct ProductLimits {
  base::Temperature airMin, airMax, surfaceMax;
  base::Share humidityMax;
  base::Share moistureMax;                  // of the timber
  std::optional<base::Count> windMax = {};  // m/s
};

/// What evaporates from a product. Molar mass and limits are those of its SDS, sections 3, 8 and 9.
struct Vapour {
  std::string substance;                        // 'white spirit'
  int exposureLimit = 0;                        // mg/m3, average of 8 hours
  base::Share lowerExplosiveLimit;              // of the air's volume
  int molarMass = 0;                            // g/mol
  bool isInPpm = false;                         // the limit is so many parts in a million
  base::Share share = base::Share::whole(100);  // of what evaporates
};

/// Facts from the safety data sheet. A product without them cannot be briefed.
struct SafetyData {
  std::string signalWord;                // 'Danger', 'Warning' or empty
  std::vector<std::string> statements;   // 'H226' ...
  std::vector<std::string> precautions;  // 'P210' ...
  std::vector<std::string> pictograms;   // 'GHS02' ...
  std::vector<Vapour> vapours;           // empty: no solvent that matters
  std::optional<base::Temperature> flashPoint;
  std::string skin, eyes, inhaled, swallowed, spill;  // first aid and spill in one sentence each
  std::string mix;                                    // how it is thinned before use; may be empty
};

struct Product {
  std::string id;
  std::string name;      // 'penetrating oil for outdoor timber'
  std::string supplier;  // may be empty
  ProductKind kind = ProductKind::PenetratingOil;
  bool isDryingOil = false;  // rags wet with it heat up by themselves
  bool isWaterborne = false;
  std::vector<NamedColour> colours;              // as a screen shows them; may be empty
  std::map<std::string, std::vector<Tin>> tins;  // by region id, smallest first
  std::map<Uptake, std::vector<base::Spread>>
      rates;                    // one spreading rate per coat; the last serves all later coats
  base::Share lowUse, highUse;  // how far below and above the likely need a job may fall
  base::Share openedLoss = {};  // of what stays in an opened tin: skin, thickened oil
  ProductTimes times;
  ProductLimits limits;
  base::Hours openTime;
  int vocGramsPerLitre = 0;
  int gramsPerLitre = 0;  // density; 0 = not given
  std::optional<SafetyData> sds;
  std::string remark;  // 'demo figures, invented'
};

// ---------------------------------------------------------------- timbers

struct Timber {
  std::string id;
  std::string name;  // common name
  bool isHardwood = false;
  bool mayBeTreated = false;  // may hold copper-chrome-arsenic or another preservative
  int densityKgPerM3 = 0;
  std::map<State, Uptake> uptake;  // one for each state
};

// ---------------------------------------------------------------- tasks

/// What the work of a task is counted in.
enum class Measure {
  Job,          // once
  Day,          // once a crew day on site
  Surface,      // measured area, m2
  Wetted,       // surface that takes product, m2
  CutIn,        // perimeter and edges of cut-outs, m
  BoardLength,  // metres of board
  Fixings       // pieces
};

struct ConsumableUse {
  std::string consumable;  // id in content/consumables.yaml
  base::Count per;         // used for each unit of the task's measure
};

struct Task {
  std::string id;
  std::string name;          // 'sand', as the crew says it
  std::string offer;         // what the customer reads; may be empty (not shown to him)
  std::optional<Work> work;  // done only when the job asks for this work; nothing = always
  Measure measure = Measure::Surface;
  base::Count ratePerHour;                // units one person does in an hour; for Job and Day unused
  base::Hours hoursEach;                  // for Job and Day: person-hours each time
  bool soilsWetCoats = false;             // throws dust or water: waits until coats beside it are touch dry
  bool isPerPass = false;                 // repeated for each grit of the sanding
  bool isPerCoat = false;                 // repeated for each coat
  bool isWiping = false;                  // of a coat, a while after it is laid; only what is wiped off
  bool isForLateCoat = false;             // only before a coat that comes later than it may
  std::map<int, base::Count> rateByGrit;  // replaces ratePerHour for a pass
  std::map<State, base::Share> timeByState;    // time against the usual: 130 % for weathered boards
  std::map<State, base::Share> raisedByState;  // of the fixings, those it is done to; empty: all of them
  base::Count checkedPerHour;                  // all fixings are looked over first; zero: they are not
  base::Hours dryAfter;                        // nothing that needs dry boards starts sooner
  std::vector<ConsumableUse> uses;
  std::vector<std::string>
      wears;  // protective equipment, ids of signs: 'boots' 'gloves' 'eyes' 'ears' 'mask' 'sleeves'
};

struct Consumable {
  std::string id, name;
  std::string unit;                          // 'sheet', 'L', 'roll'
  std::map<std::string, base::Money> price;  // by region, before tax, per unit
  bool boughtWhole = true;
  bool soaksOil = false;               // wet with the product after use: rags, pads, brushes
  std::optional<SafetyData> sds = {};  // of a chemical: a cleaner
  bool isLiquid = false;               // in litres; by the quart in a region with US customary units
  std::string fixing = {};  // used up only where the boards have this kind of fixings; empty: anywhere
};

struct Tool {
  std::string id, name;
  std::vector<std::string> tasks;
  std::optional<int> soundDb;                 // at the ear, dB(A)
  std::optional<base::Count> vibration;       // m/s2
  base::Share use = base::Share::whole(100);  // of a task's time it runs in one person's hands
  bool isElectric = false;
  bool isExample = true;     // not the maker's value: to be replaced
  bool isForTreated = true;  // false: not used on boards that are treated or may be
  int kilograms = 0;         // 0 = not given
};

// ---------------------------------------------------------------- places

enum class UnitSystem { Metric, UsCustomary };

struct TaxRule {
  std::string name;  // 'GST', printed
  base::Share rate;
  base::Round rounding = base::Round::HalfUp;
  bool onLines = false;  // true: round each line, then add; false: round once on the sum
  std::string source;    // the rule's title and section, or that it is from memory
};

struct NumberForm {
  std::string decimal = ".", group = ",";
  std::string currencyBefore, currencyAfter;  // '$', or a no-break space and the euro sign
};

/// The form in which a place counts noise at work.
enum class NoiseRule {
  Average8h,  // L_EX,8h, 3 dB for half the time: EU, GB, IE, AU, NZ
  Osha        // 5 dB for half the time, with NIOSH's 3 dB beside it
};

/// How an ear protector is chosen.
enum class ProtectorRule {
  Class,  // 1 to 5: AS/NZS 1269.3:2005 by the day, AS/NZS 1270:2002 by the class's least SLC80
  Snr,    // a range of SNR, EN 458: 70 to 80 dB(A) at the ear
  Nrr     // the least NRR, halved: 29 CFR 1910.95, appendix B
};

struct NoiseLimits {
  NoiseRule rule = NoiseRule::Average8h;
  std::optional<int> lower, upper, limit;  // dB(A) of the day; the limit counts the protector
  ProtectorRule protector = ProtectorRule::Snr;
  int realWorldLoss = 0;  // dB that a protector takes off less than its label says
  std::string source;
};

struct VibrationLimits {
  std::optional<base::Count> action, limit;  // m/s2, A(8)
  std::string source;
};

struct DustLimits {
  std::optional<base::Count> hardwood, softwood;  // mg/m3, average of 8 hours, inhalable
  std::string source, protection;                 // 'P2 or better'
};

struct HeatLimits {
  bool usesHeatIndex = false;  // else apparent temperature
  std::string source;
};

/// What a region says about health at work. Every number with its rule and year, or nothing.
struct WorkLimits {
  NoiseLimits noise;
  VibrationLimits vibration;
  DustLimits dust;
  HeatLimits heat;
};

/// What materials made to order for one job do to the most a deposit may be.
enum class SpecialOrders { Ignored, Added, Instead };  // Instead: where they cost more than the share

/// The most a deposit may be for some of a region's states and totals.
struct DepositCap {
  std::vector<std::string> states;      // ids; none = the whole region
  std::optional<base::Money> from, to;  // of the total with tax, both included
  std::int64_t part = 1, whole = 1;     // of that total: 10 of 100, 1 of 3
  std::optional<base::Money> amount;    // the most where the share comes to more
  SpecialOrders specialOrders = SpecialOrders::Ignored;
  bool isAdvice = false;  // of an authority; else the law
  std::string source;
};

enum class CountedDays { All, Working, WorkingAndSaturdays };

/// A customer's right to cancel, counted from the day after he agrees.
struct Cancellation {
  std::string text;  // the notice printed on a quote; empty = no such right known
  std::string source;
  int days = 0;
  std::optional<int> uninvitedDays;  // where the firm called unasked; nothing = the same
  CountedDays counted = CountedDays::All;
  bool isStandstill = false;  // where the firm called unasked: no payment and no work in these days
};

/// From which drop on the place asks for protection against a fall.
struct FallRule {
  base::Length from;  // 0 = from any height that can hurt
  std::string source;
};

struct Authority {
  std::string about;  // 'safety' 'waste' 'lead' 'treated' 'rights'
  std::string name;
};

/// How telephones are dialled there: ITU-T E.164.
struct Dialling {
  std::string country;  // '64'; empty = not known, numbers stay as they are written
  std::string trunk;    // before a number of the country, and left out behind its code
  std::string abroad;   // before the code of another country
  int digits = 0;  // of a whole number without the trunk prefix, where people write it so; 0 = nobody does
};

struct Region {
  std::string id, name;
  std::string language = "en";  // BCP 47, of the documents
  std::string currency;         // ISO 4217
  int currencyDigits = 2;
  std::string currencyName;  // 'New Zealand dollars'
  TaxRule tax;
  UnitSystem units = UnitSystem::Metric;
  Paper paper = Paper::A4;
  bool monthFirst = false;  // 'March 16, 2027' against '16 March 2027'
  NumberForm numbers;
  std::string emergencyNumber;
  Dialling dialling;
  std::string powerCutout;  // 'RCD' or 'GFCI', as said there
  std::vector<Authority> authorities;
  WorkLimits limits;
  std::map<base::Date, WorkLimits> laterLimits;  // all of them, by the day on which one changes
  std::optional<int> leadUntil;  // coatings on buildings from this year on are not expected to hold lead
  std::string leadSource;
  std::map<std::string, std::string> equipment;  // grade by sign: ears -> 'EN 352, SNR as printed'
  FallRule falls;
  std::string poisonLine, poisonSource;       // whom to ring when something was swallowed
  Normals normals;                            // usual weather of its months; may be empty
  std::map<std::string, std::string> states;  // names by id, where its rules differ by state
  std::vector<base::HolidayRule> holidays;
  std::vector<DepositCap> depositCaps;  // the first that fits counts
  Cancellation cancellation;
  std::map<std::string, std::string> newJob;  // what 'new' writes for this place: phone, timezone, start ...
};

// ---------------------------------------------------------------- the firm

/// Costs and rates of the firm in one region's currency; never printed for the customer.
struct Rates {
  base::Money labourCostPerHour;
  base::Money travelPerDay, disposalPerJob;
  base::Share overhead, contingency;
  base::Money extraHour;  // charged for extra work, before tax; printed on the quote
  base::Share margin;     // of the price; a job may set its own
};

/// How much of the price the customer sees: a price for each area, each kind of work with its quantity, or
/// one sum.
enum class PriceShow { Areas, Work, Lump };

/// Where materials are brought to, and how long that takes.
struct Delivery {
  std::vector<std::string> to;  // empty: the firm's own address
  std::string hours;            // 'yard gate, 7 am to 3 pm'
  int workingDays = 3;          // from the order to the yard
};

/// What a firm reckons with where a quote looks ten years ahead; all of it stands on the quote.
struct TenYearsBasis {
  base::Share discountRate;        // a year; real where prices do not rise, else nominal
  base::Share priceRise;           // a year
  std::map<State, int> sandAfter;  // years from a coat on boards of each state until they are sanded
  std::vector<int> grits;          // of that sanding, where the job does not sand today
  int coats = 2;                   // after it
};

struct Customer {
  std::string name;
  std::vector<std::string> address;
  std::string phone, email;
  bool isUninvited = false;  // the firm called unasked
};

/// A customer of the firm's book, who can be named in a job.
struct KnownCustomer {
  std::string key;  // a short name; may be empty
  Customer customer;
  base::SourcePos pos;
};

struct Firm {
  std::string name, tagline;
  std::vector<std::string> address;
  std::string phone, email, web;
  /// 'GST 000-000-000', as printed; by region, those of "" in every one.
  std::map<std::string, std::vector<std::string>> registrations;
  std::string contact;                    // a person
  std::string logoFile;                   // absolute; empty = none
  std::map<std::string, Colour> colours;  // replace the theme's
  FaceFiles fonts;                        // replace the theme's
  std::string theme;                      // name of a theme; empty = the default
  std::string region;                     // that of new jobs; empty = none is named
  std::map<std::string, Rates> rates;     // by region
  base::SourcePos ratesPos;               // of 'rates'
  std::string spreadingRates;             // the file in the folder; empty = none
  std::vector<std::string> terms;         // further clauses of the quote
  PriceShow priceShow = PriceShow::Areas;
  std::string insurance, guarantee;   // sentences for the customer; empty: nothing is said
  std::vector<std::string> licences;  // 'Licensed building practitioner 000000'
  std::vector<std::string> bank;      // lines of the account that is paid into
  std::optional<int> paymentDays;     // from the invoice
  Delivery delivery;
  std::optional<TenYearsBasis> tenYears;
};

struct Content {
  std::map<std::string, Product> products;
  std::map<std::string, Timber> timbers;
  std::vector<Task> tasks;  // in the order they are done
  std::map<std::string, Consumable> consumables;
  std::vector<Tool> tools;
  std::map<std::string, Region> regions;
  std::vector<Hazard> hazards;  // in the order of the sheet, most severe first
  std::map<Condition, ConditionWords> conditionWords;
  LabelTexts labels;
  std::vector<KnownCustomer> customers;  // of the firm's book
  std::vector<std::string> languages;    // ids of the files in content/languages, in order
  std::vector<std::string> documents;    // names of the templates that are documents, those of a pack first
};

}  // namespace model
