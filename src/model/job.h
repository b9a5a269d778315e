// One job as the contractor wrote it, checked: every id is known and every size is above zero.
#pragma once

#include "model/content.h"
#include "model/weather.h"

#include <variant>

namespace model {

struct Place {
  base::Length x, y;  // x to the right, y down the page, from the deck's own corner
  friend constexpr bool operator==(const Place&, const Place&) = default;
};

struct Rectangle {
  base::Length x, y;
};  // 'rectangle: [12.4 m, 6.2 m]'
struct Polygon {
  std::vector<Place> points;
};  // 'points: [[0 m, 0 m], ...]', at least three, not crossing itself
struct Circle {
  base::Length diameter;
};
struct Ring {
  base::Length outer, inner;
};  // diameters
struct Triangle {
  base::Length a, b, c;
};  // three sides
struct Stairs {
  int steps = 0;
  base::Length width, going, rise;
};
struct Strip {
  base::Length length, girth;
};  // fascia, rails, posts
struct Screen {
  base::Length width, height;
  int sides = 2;
  base::Share solid;
};
struct Measured {
  base::Area area;
  std::optional<base::Length> perimeter;
};  // by someone else
using Shape = std::variant<Rectangle, Polygon, Circle, Ring, Triangle, Stairs, Strip, Screen, Measured>;

/// A shape cut out of a deck. 'at' is the centre of circles and rings and the upper left corner of the rest.
struct CutOut {
  Shape shape;
  Place at;
  std::string name;  // 'tree'; may be empty
};

enum class Run { LongSide, ShortSide };
enum class BoardFace { Smooth, Reeded };
enum class Wetted { Top, TopAndEdges, AllFaces };

struct Boards {
  base::Length width, gap, thickness;
  Run run = Run::LongSide;
  BoardFace face = BoardFace::Smooth;
  base::Share reededFactor = base::Share::whole(125);  // of the flat surface; from memory 115 to 140 %
  Wetted wetted = Wetted::Top;
};

struct Fixings {
  std::string kind;  // 'nails', 'screws', 'clips'
  int perCrossing = 2;
  std::optional<base::Share> raised = {};  // nothing = as usual for the state of the boards
};

struct TestPatch {
  base::Area area;
  base::Volume used;
};

/// Clock minutes of a day, 'until' not included.
struct ClockSpan {
  int from = 0, until = 0;
};

enum class Compass { North, East, South, West };

/// What lies beside an edge.
enum class EdgeKind {
  Open,  // ground to stand on
  Drop,  // ground, but nobody steps down
  Water,
  Wall
};

struct DeckEdge {
  Compass side = Compass::North;
  EdgeKind kind = EdgeKind::Open;
};

struct Deck {
  std::string name;
  Shape shape;
  std::optional<Place> at;  // where it lies on the plan; nothing = beside the one before
  std::vector<CutOut> without;
  std::optional<Boards> boards;
  std::optional<base::Length> joists;
  std::optional<Fixings> fixings;
  std::string timber;
  State state = State::Weathered;
  int coats = 2;
  std::vector<base::Spread> rates;     // beats the product's table
  std::optional<TestPatch> testPatch;  // beats the first-coat rate, scales the later ones
  std::string note;                    // a sentence for the quote
  std::string officeNote;              // never printed for the customer
  std::string crewNote;                // a sentence for the crew
  bool isCovered = false;              // a roof above it
  bool isEnclosed = false;             // walls or screens too, so that vapour stays
  bool isTreated = false;              // known to hold a preservative
  std::optional<ClockSpan> sun;        // when the sun reaches the boards; 0 to 0 = never; nothing = all day
  std::optional<base::Length> edgeHeight;  // drop beside the deck
  bool hasRail = false;                    // along that drop
  std::optional<Place> wayOut;             // where the crew leaves the deck, from its own corner
  std::vector<DeckEdge> edges;             // sides that are told; others are taken to be open
  base::SourcePos pos;
};

enum class Surrounding { House, Wall, Water, Tree, Path };

/// What lies around the decks, for who looks at the plan.
struct Around {
  Surrounding kind = Surrounding::House;
  Shape shape;       // a rectangle, points or a circle
  Place at;          // on the plan, as of a cut-out
  std::string name;  // may be empty
};

/// A picture of the place, for the customer.
struct Photo {
  std::string file;   // path
  std::string shows;  // in words
  base::SourcePos pos;
};

struct Site {
  std::vector<std::string> address;
  std::string region;
  std::string state;                                   // id, of the region's; empty = not given
  std::int64_t latitudeMicro = 0, longitudeMicro = 0;  // millionths of a degree, north and east
  std::string timezone;                                // of the tz database
  Exposure exposure = Exposure::Open;
  std::optional<int> north;          // degrees clockwise from the top of the plan
  std::string access, water, power;  // notes for the crew
  std::string hospital, meetingPoint, firstAider, sdsPlace, extinguisher;
  std::string eyeWash, pails;        // where they stand
  std::vector<std::string> hazards;  // words of content/hazards.yaml: 'vehicles', 'no signal'
  std::optional<int> yearBuilt;
  bool isNearWater = false;      // pool, pond, river, sea
  std::optional<bool> isPublic;  // people pass by; nothing = not told
  bool hasChildren = false;      // or pets
};

struct Crew {
  int people = 1;
  int startMinutes = 450, endMinutes = 960;  // of the working day
  int breakMinutes = 30;
  bool works[7] = {true, true, true, true, true, false, false};  // Monday first
  std::vector<base::Date> off;
  bool worksOnHolidays = false;             // on all public holidays
  std::vector<std::string> workedHolidays;  // on these, by name
  std::vector<std::string> names;
  std::string leader;
};

struct StockTin {
  std::string product;
  base::Volume size;
  int count = 0;
  std::optional<base::Volume> holds = {};  // of an opened tin; nothing = full
  bool isWithCustomer = false;             // stays at the house
};

struct Option {
  std::string text;
  base::Money price;  // before tax
  bool isTaken = false;
};

struct Stage {
  base::Share share;
  std::string when;
};

struct Pricing {
  std::optional<base::Share> margin;  // nothing = the firm's
  base::Share raise;                  // on every line, since the prices of an earlier year
  base::Share discount;
  std::string discountReason;
  base::Share deposit;
  base::SourcePos depositPos;
  base::Money specialOrders;  // cost of materials made to order for this job
  std::vector<Stage> stages;  // after the deposit; the rest is due on hand-over
  std::vector<Option> options;
  std::optional<base::Share> tax;  // replaces the region's rate
  std::optional<PriceShow> show;   // nothing = the firm's
  bool asksTenYears = false;       // the quote tells what ten years cost
  base::SourcePos tenYearsPos;
};

/// One of several ways to do a job, side by side on its quote.
struct Choice {
  std::string name;
  std::string looks;  // 'Even light walnut, smooth to bare feet'; may be empty
  std::vector<std::string> leftOut;  // names of areas
};

/// A coat, or a part of one, as it was laid, from the job's 'done:'.
struct DoneCoat {
  std::size_t deck = 0;
  int coat = 1;
  base::LocalTime start, end;
  std::optional<base::Volume> used;  // out of the tins, by all the coats of this entry together
  std::size_t entry = 0;             // of the job's list, from 0; an entry may hold for several decks
  std::vector<std::string> batches;
  std::optional<base::Temperature> air, surface;  // as measured on site
  std::optional<base::Share> humidity, moisture;
  std::string remark;  // for the office and the next visit
  base::SourcePos pos, fromPos, toPos, usedPos;
};

/// A spreading rate learned from finished jobs; see 'planksheaf rates'.
struct LearnedRate {
  std::string product, timber;
  State state = State::Weathered;
  bool isSanded = false;  // new or weathered boards that were sanded before the coat
  int coat = 1;
  base::Spread rate;
  std::optional<base::Share> spread;  // how far one job lies from the mean
  int jobs = 0;
};

/// How far a job has come.
enum class Progress { Done, Quoted, Accepted, Declined };

struct Job {
  std::string ref;
  std::string after;     // number of the job this one follows; empty = none
  std::string firstJob;  // number of the first of such a row of jobs; empty = 'after'
  int revision = 0;      // of the papers, counted up by whoever changes a job that has gone out
  base::SourcePos refPos, afterPos;
  base::Date quoted{};
  int validDays = 30;
  std::optional<base::Date> accepted, declined;
  std::optional<base::Date> doneOn;  // 'done:' as a day alone, of a job without records
  Customer customer;
  Site site;
  base::Date start{};
  base::SourcePos startPos;
  std::string firmFolder;  // that of 'firm:'; empty = the nearest
  std::string product;
  std::string colour;
  base::Share loss;       // left in rollers, tins and cloths
  base::Share allowance;  // bought on top of the likely need
  std::vector<Deck> areas;
  std::vector<Around> around;
  std::vector<Photo> photos;  // at most two
  std::vector<Work> work;
  std::vector<int> sanding;  // grits in order
  Crew crew;
  int coatingFrom = 0, coatingUntil = 0;  // clock minutes; 0 = the usual for the exposure
  std::vector<StockTin> inStock;
  Pricing price;
  std::map<std::string, base::Count> taskRates;               // replaces a task's rate per hour
  std::vector<std::string> included, excluded, beforeWeCome;  // lines of the quote, added to the usual
  std::string title;  // of the quote; empty = made from the decks and the work
  std::string officeNote;
  std::vector<std::string> batches;
  std::vector<std::string> licensedFor;  // hazards the crew has papers for: 'treated'
  Forecast forecast;
  Normals normals;                   // the job's own, or the region's; may be empty
  std::vector<DoneCoat> done;        // in order of deck, coat and time
  std::vector<StockTin> left;        // full and opened tins after the job, as counted
  std::vector<base::Date> invoices;  // days on which they went out, one for each stage of the price in order
  std::vector<Choice> choices;       // of 'choices:', in order; none = there is but one way
  std::size_t choice = 0;            // of them, the one that everything else here is read with
  bool isChosen = false;             // by the customer
  std::string ratesFile;             // path of 'spreading_rates:'; empty = the firm's, or none
  std::map<std::string, std::vector<std::string>> languages;  // by document; none = the region's
  base::Places places;  // of its keys, the keys of their groups and the items of their lists
};

/// A job with all it refers to.
struct JobInputs {
  Job job;
  const Product* product = nullptr;  // these point into Content and outlive the case
  const Region* region = nullptr;
  Firm firm;
  Rates rates;
  std::vector<LearnedRate> learnedRates;  // from the job's file of spreading rates, or the firm's
  Theme theme;
};

}  // namespace model
