// Drawings made from a job's figures: vectors, to scale, readable in black and white.
#pragma once

#include "base/language.h"
#include "base/money.h"
#include "model/plan.h"
#include "typeset/fonts.h"

#include <optional>

namespace drawings {

/// What every drawing needs: the look, the number form of the place, and the words of the reader.
struct Pen {
  const model::Theme& theme;
  const typeset::Fonts& fonts;
  const model::Region& region;
  const base::Language& language;
  std::string signs = {};  // folder the pictures of a timeline are read from
};

/// Plan of the decks to scale: outlines, cut-outs, boards along their run, stairs, dimensions, letters A, B,
/// C with name and area, north when given, scale bar. The largest of the usual scales that fits the box; the
/// drawing is no larger than its content. What has no place on a plan (strips, screens, measured areas) is
/// named in a line below; a job of nothing else gives a drawing without height. 'isKey' leaves only outlines,
/// letters and names (for the aftercare sheet), and nothing where even 1:750 does not fit.
typeset::Drawing deckPlan(const model::JobInputs& c, const model::Estimate& e, const Pen& pen,
                          typeset::Size box, bool isKey);

/// The words of a strip: '09:30', '1.6', '09:10' to cut in, '10:50' to wipe; 'lay' empty: laid another day.
struct StripWords {
  std::string number, lay, amount, cutIn, wipe;
};
/// A coat of a deck, strip by strip.
struct StripDeck {
  model::WetEdge edge;
  std::vector<StripWords> strips;  // of the edge's
  std::string name, note;          // 'A Landing', '6 strips of 4 to 9 boards'
  std::string steps;               // when it is wiped, for where the strips have no room to say it
  std::string unit = {};           // of the amounts; empty: they say it themselves

  std::string amountOf(const StripWords& s) const {
    return unit.empty() ? s.amount : s.amount + "\u00A0" + unit;
  }
};
/// Plan of the decks that are coated on one day, every strip numbered in its order, from the black corner
/// where it starts towards the arrow where the crew leaves, with what stands beside the edges. Where the
/// strips are wide enough each tells its times and litres; the list below tells those of the others, of
/// second coats, and of what has no place on a plan. The largest scale that fits the box. Without strips a
/// drawing without height.
typeset::Drawing stripsPlan(const model::JobInputs& c, const std::vector<StripDeck>& decks, const Pen& pen,
                            typeset::Size box);

/// The hours of some decks that are fit alike.
struct HoursRow {
  std::string name;                // 'Fit for a coat', 'A, C'
  std::vector<model::Hour> hours;  // of one day, in order
};
/// What one person does, in minutes of the clock.
struct PersonBar {
  int from = 0, until = 0;
  std::string words, word;  // 'lays 1–8', 'lays': what has room
  std::string note;         // '08:30 lays 1–8' beside the bars where the words have none; empty: not told
  bool isWork = true;
};
struct PersonLane {
  std::string name, text;       // the text tells the bars in full
  std::vector<PersonBar> bars;  // none: what all do alike, the text is printed
};
struct HoursDay {
  std::vector<HoursRow> rows;
  std::vector<PersonLane> people;
  std::optional<int> sunrise, sunset;        // minutes of the clock
  std::optional<int> lastStart, lastStroke;  // later is too late
  bool isWiped = false;                      // too late to be wiped, that is
  int from = 6, until = 20;                  // hours shown
  std::vector<std::string> clock;            // words of each hour from 'from' on: '6', or '6 am'
};
/// The hours of a day: those fit for a coat white in a heavy frame, the others dark with the reason in words;
/// under the same clock a row for each person. Empty without both.
typeset::Drawing hoursChart(const HoursDay& day, const Pen& pen, typeset::Dim width);

/// One day of a job at a glance.
struct GlanceDay {
  enum class Kind { Work, Coat, Drying, Off, Walk };
  Kind kind = Kind::Work;
  std::string weekday, number;  // 'Tue', '16'
  std::string month;            // 'March 2027' where a month begins, and on the first day
  std::vector<std::string>
      what;           // the longest words first: 'Reset fixings', 'fixings'; drying and off: told once
  std::string where;  // 'A, B' below
};
/// The days of a job from the first to the last as a strip: work white, coats dark, dots while boards dry,
/// slashes where nobody works. Days that find no room in one row make two or more. Empty without days.
typeset::Drawing glanceChart(const std::vector<GlanceDay>& days, const Pen& pen, typeset::Dim width);

/// One station of the timeline: when the customer may do something again.
struct Milestone {
  std::string picture;                    // name of a sign: 'care-walk'
  std::string weekday, date, what, note;  // 'Saturday' '14 Feb' 'Walk on it' 'from noon, in soft soles'
  std::string gap;                        // to the next station: '2 days'; empty for the last
};
/// Two to seven stations. Without pictures it is a plain strip. 'alt' begins what those hear who cannot see
/// it. Throws std::runtime_error for a picture that Pen::signs does not hold.
typeset::Drawing timeline(const std::vector<Milestone>& stations, const Pen& pen, typeset::Dim width,
                          const std::string& caption, const std::string& alt);

/// A QR code (ISO/IEC 18004) of an address, level M, with its quiet zone of four modules, for a telephone's
/// camera; 'alt' tells what it opens. Empty for an address too long for one.
typeset::Drawing qrCode(const std::string& address, const std::string& alt, const Pen& pen,
                        typeset::Dim width);

/// Colours to choose from: boards in each, below them a box to tick and the name. Empty without colours.
typeset::Drawing swatches(const std::vector<model::NamedColour>& colours, const Pen& pen,
                          typeset::Dim width);
/// One of them as a square among words.
typeset::Drawing swatch(const model::NamedColour& colour, const Pen& pen);

struct Photograph {
  std::shared_ptr<const typeset::Image> image;
  std::string shows;  // in words
};
/// Photographs side by side, of one height, what they show below each. Empty without any.
typeset::Drawing photographs(const std::vector<Photograph>& photos, const Pen& pen, typeset::Size most);

/// Squared paper to sketch on, in whole squares that fit 'most': of 5 mm, each second line stronger, or of a
/// quarter inch, each fourth, where sizes are in feet.
typeset::Drawing squaredPaper(const std::string& alt, const Pen& pen, typeset::Size most);

/// What one deck takes, coat by coat, in litres (US customary: gallons) as they are printed elsewhere.
struct LitreRow {
  std::string name;  // 'A  Landing'
  std::vector<base::Count> coats;
};
/// Where the litres go: a bar for each deck, split by coat, all on one scale, and their sum. Empty without
/// rows.
typeset::Drawing litresChart(const std::vector<LitreRow>& rows, const Pen& pen, typeset::Dim width);

/// A part of a price as the customer sees it. 'about' chooses the hatch, so that a part looks alike in every
/// quote.
struct PricePart {
  enum class About { Wash, Fix, Sand, Oil, Cover, Product, Materials, Travel, Disposal, Tax };
  About about = About::Wash;
  std::string name;
  base::Money amount;  // zero or above
  std::string words;   // of the amount
};
struct PriceTotal {
  std::string name, words;  // 'Total' '$12,197.27'
};
/// What the price is made of: one bar and a legend.
typeset::Drawing priceChart(const std::vector<PricePart>& parts, const PriceTotal& total, const Pen& pen,
                            typeset::Dim width);

/// A value on a scale with marks, both in thousandths of its length, the marks in order.
struct Gauge {
  int value = 0;
  std::vector<int> marks;
};
/// A bar as high as a line of notes: solid up to the first mark, hatched beyond it.
typeset::Drawing gauge(const Gauge& gauge, const Pen& pen, typeset::Dim width);

/// A sign or pictogram, as wide as its file says, by name ('must-ears', 'warn-fire', 'care-walk'); nothing
/// for an unknown name. Signs are SVG files below 'folder', in a small strict part of SVG; the file's title
/// becomes the drawing's alt. Throws std::runtime_error with file and line for anything else in them.
std::optional<typeset::Drawing> sign(const std::string& folder, const std::string& name, typeset::Dim height);

/// The diamonds a product's data sheet calls for, by their codes ('GHS02'), and their words. A code nobody
/// has drawn is an empty diamond. Empty without codes.
typeset::Drawing hazardDiamonds(const std::vector<std::string>& codes, const Pen& pen, typeset::Dim width);

}  // namespace drawings
