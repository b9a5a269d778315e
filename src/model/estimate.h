// What a job comes to: sizes, product, tins, hours, costs and price. Exact; nothing here is printed rounding
// except the money lines, which are rounded once, where they are made.
#pragma once

#include "model/job.h"

namespace model {

struct Measures {
  base::Area area;         // flat, cut-outs taken off
  base::Length perimeter;  // outer edge
  base::Length cutIn;      // perimeter and the edges of cut-outs
  base::Area wetted;       // surface that takes product
  base::Length boardMetres;
  std::int64_t boards = 0;
  std::int64_t fixings = 0;
  base::Length across;  // width measured across the boards
  base::Length along;   // longest board line
};

/// Where the rate of a coat is from. Later coats of a test patch keep the proportion of the job's own rates
/// or of the product's table.
enum class RateSource { Job, Table, Learned, Patch, PatchByJob, PatchByProduct };

struct CoatNeed {
  std::size_t deck = 0;
  int coat = 1;
  base::Spread rate;
  std::string rateFrom;    // 'the job', 'test patch', 'product table, open', for the office
  base::Volume litres;     // without loss
  base::Volume low, high;  // where they may fall, without loss
  std::optional<Uptake>
      uptake;  // whose row of the product's table it is; nothing for the job's own rates and patches
  RateSource source = RateSource::Table;
  int learnedFrom = 0;                            // own jobs a learned rate is from
  std::optional<base::Share> learnedSpread = {};  // how far one of them lies from their mean
};

/// A coat as it was laid, beside what was planned.
struct ActualCoat {
  std::vector<std::size_t> records;  // of the job's 'done', one for each part, in order of time
  std::size_t deck = 0;
  int coat = 1;
  bool isShared = false;               // the litres are a share of what a record gives for several decks
  std::optional<base::Volume> litres;  // out of the tins, with what stayed in pads and tins
  std::optional<base::Spread> rate;    // surface by these litres
  base::Volume plannedLitres;          // with the job's loss
  base::Spread plannedRate;            // without
};

struct TinCount {
  Tin tin;
  std::int64_t count = 0;
};

struct TinSet {
  std::vector<TinCount> tins;  // largest first, only those with a count
  base::Money cost;
  base::Volume volume;
  std::int64_t number() const {
    std::int64_t n = 0;
    for (const auto& t : tins) n += t.count;
    return n;
  }
};

struct ProductNeed {
  base::Volume low, likely, high;  // with loss
  base::Volume wanted;             // likely and the allowance
  std::vector<StockTin> opened;    // full tins from the shed, each used wholly or in part
  std::vector<StockTin> shut;      // the others of the shed
  base::Volume fromStock;          // volume of those opened
  base::Volume drawn;              // of it, what the job is billed: wanted; the rest stays the firm's
  base::Volume toBuy;              // wanted less stock, never below zero
  TinSet bought;
  base::Volume leftOver;  // bought and opened less the likely need: goes back to the shed
};

struct LabourLine {
  std::string task;                 // id
  std::optional<std::size_t> deck;  // nothing = the whole job
  base::Count quantity;             // in the task's measure
  base::Hours hours;                // person-hours
  int pass = 0;                     // grit, or the coat's number; 0 = neither
  base::Count ratePerHour;          // one person's, in the task's measure; for Job and Day unused
  base::Share time;                 // against the usual
  base::Hours checking = {};        // of the hours, those in which all fixings are looked over
};

struct ConsumableLine {
  std::string consumable;
  int grit = 0;             // of a sanding pass; 0 = none
  base::Count used;         // in the consumable's unit
  std::int64_t bought = 0;  // whole units
  base::Money cost;
};

/// What a line of the quote is about; the words are made by sheets.
enum class LineKind {
  Work,         // one kind of work on one deck
  Preparation,  // covering, clearing and masking, for the whole job
  Product,      // oil or stain for all coats
  Consumables,
  Travel,  // travel and setting up, a day each
  Disposal
};

/// What the quantity of a line counts. Area is square metres and Volume litres or, in a region with US
/// customary units, square feet and gallons.
enum class LineUnit { Area, Volume, Days, Lot };

/// A line of the quote.
struct PriceLine {
  LineKind kind = LineKind::Work;
  std::optional<std::size_t> deck;  // nothing = the whole job
  std::optional<Work> work;         // for LineKind::Work
  base::Count quantity;             // a multiple of 0.01
  LineUnit unit = LineUnit::Area;
  base::Money amount;  // rounded once
  base::Money cost;    // office only
};

struct StageAmount {
  base::Share share;
  std::string when;
  base::Money amount;
};

struct Price {
  std::vector<PriceLine> lines;
  base::Money subtotal;  // of the lines
  base::Money discount;  // zero or above; taken off
  base::Money net, tax, total;
  base::Money deposit;
  const DepositCap* depositCap = nullptr;  // for this total, in Content; null = none known
  std::vector<StageAmount> stages;         // deposit first; add up to the total
  std::vector<base::Money> options;        // with tax, in the job's order
  // office only
  base::Money labourCost, productCost, consumableCost, otherCost, overheadCost, contingencyCost, cost;
  base::Share marginReached;  // of the net price
};

/// What is paid for the boards in ten years, tax included.
struct TenYears {
  enum class Kind { Today, Visit, Sanding };
  struct Outlay {
    Kind kind = Kind::Today;
    int year = 0;        // at whose end it is paid; 0 = today
    base::Money amount;  // at today's prices
  };
  std::vector<Outlay> outlays;  // in order of time, today's first
  base::Money sum;              // of them
  base::Money presentValue;     // prices rise and later amounts are discounted as the firm's basis says
  base::Money perYear;          // the same amount at the end of each year is worth as much
};

/// What the sizes and the boards ask for, before there is a plan.
struct Estimate {
  std::vector<Measures> decks;  // in the job's order
  Measures all;                 // sums
  std::vector<CoatNeed> coats;
  std::vector<LabourLine> labour;     // but for tasks that come every day, and the next
  std::vector<LabourLine> lateCoats;  // what has to be done before a coat that comes too late, for each that
                                      // might; 'pass' is the coat
};

/// What the job takes once its days are known.
struct Resources {
  int crewDays = 0;                // days on site
  std::vector<LabourLine> labour;  // all of it
  base::Hours labourHours;         // person-hours
  std::vector<ConsumableLine> consumables;
  ProductNeed product;
};

/// Whether the tins bought and opened will do. Chances are shares of all jobs like this one, in tenths of a
/// per cent.
struct Enough {
  base::Share chanceOfMore;  // that the coats take more
  Tin oneMore;               // one more tin
  bool isInShed = false;     // 'oneMore' is shut there, else to be bought
  base::Share chanceWithOneMore;
};

/// The coats that are recorded, beside the plan.
struct AsLaid {
  std::vector<ActualCoat> coats;               // in the records' order
  std::optional<base::Volume> leftByTheBooks;  // once every coat's litres are recorded
  std::optional<base::Volume> leftAsCounted;   // of the job's product
};

}  // namespace model
