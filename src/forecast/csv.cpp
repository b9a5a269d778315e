#include "forecast/csv.h"

#include "forecast/clock.h"
#include "forecast/csv_header.h"
#include "forecast/open_meteo.h"
#include "forecast/steps.h"
#include "forecast/times.h"

#include <algorithm>
#include <charconv>

namespace forecast {
namespace {

using std::chrono::seconds;

constexpr auto timeHint =
    "write it by the clock on site, like 2027-03-16T06:00, or with its zone, like 2027-03-16T06:00+13:00";
constexpr auto tableHint =
    "its first line is like time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm; the columns stand in any order";

bool isMissing(const std::string& s) {
  return s.empty() || s == "NaN" || s == "nan" || s == "NA" || s == "null";
}

std::optional<double> parseNumber(std::string s, bool hasDecimalComma) {
  if (hasDecimalComma) std::replace(s.begin(), s.end(), ',', '.');
  double value = 0;
  const auto [end, problem] = std::from_chars(s.data(), s.data() + s.size(), value, std::chars_format::fixed);
  return problem == std::errc{} && end == s.data() + s.size() ? std::optional(value) : std::nullopt;
}

/// What Open-Meteo writes in front: latitude, longitude, elevation, utc_offset_seconds, ...
struct Front {
  std::optional<model::Coordinates> place;
  std::optional<seconds> offset;
};

class Reader {
 public:
  Reader(const Table& table, const std::string& file, const std::string& zone, base::Diagnostics& messages)
      : table_(table), file_(file), zone_(zone), messages_(messages) {}

  std::optional<Series> run() {
    std::size_t first = 0;
    if (!table_.sections.empty() && isFront(table_.sections[0])) {
      readFront(table_.sections[0]);
      first = 1;
    }
    const Section* best = nullptr;
    Header header;
    for (std::size_t i = first; i < table_.sections.size(); ++i) {
      base::Diagnostics told;
      const Header h = readHeader(table_.sections[i][0], front_.has_value(), file_, told);
      if (!h.time || isDaily(table_.sections[i], *h.time)) continue;
      if (best != nullptr && h.columns.size() <= header.columns.size()) continue;
      best = &table_.sections[i];
      header = h;
    }
    if (best == nullptr) return noTable();
    readHeader((*best)[0], front_.has_value(), file_, messages_);
    if (!front_ && isOpenMeteoName((*best)[0])) {
      error((*best)[0], 1, "", "the lines in front are missing that tell place and clock",
            "save Open-Meteo's file again, whole");
      return {};
    }
    readSection(*best, header);
    if (!messages_.ok()) return {};
    return std::move(series_);
  }

 private:
  void error(const Row& row, int column, const char* path, std::string message, std::string hint) {
    messages_.error({file_, row.line, column}, path, std::move(message), std::move(hint));
  }

  static bool isFront(const Section& section) {
    const std::string& name = section[0].cells[0].text;
    return section.size() > 1 && (name == "latitude" || name == "location_id");
  }
  /// Stamps without a clock.
  static bool isDaily(const Section& section, std::size_t time) {
    return section.size() > 1 && section[1].cells.size() > time && section[1].cells[time].text.size() == 10;
  }
  static bool isOpenMeteoName(const Row& header) {
    for (const Cell& cell : header.cells) {
      if (cell.text.starts_with("temperature_2m")) return true;
    }
    return false;
  }

  std::optional<Series> noTable() {
    messages_.error({file_, 1, 1}, "", "no line names a column 'time' and the weather at these times",
                    tableHint);
    return {};
  }

  void readFront(const Section& section) {
    front_ = Front{};
    std::optional<double> north, east;
    if (section[0].cells[0].text == "location_id" || section.size() > 2)
      error(section[0], 1, "", "it holds several places", "ask for one");
    for (std::size_t i = 0; i < std::min(section[0].cells.size(), section[1].cells.size()); ++i) {
      const std::string& name = section[0].cells[i].text;
      const auto value = parseNumber(section[1].cells[i].text, table_.separator == ';');
      if (name == "latitude") north = value;
      if (name == "longitude") east = value;
      if (name == "utc_offset_seconds" && value && *value >= -14 * 3600 && *value <= 14 * 3600)
        front_->offset = seconds{static_cast<int>(*value)};
    }
    front_->place = placeAt(north, east);
    if (!front_->offset)
      error(section[1], 1, "utc_offset_seconds", "is missing", "save Open-Meteo's file again, whole");
  }

  void readSection(const Section& section, const Header& header) {
    series_.service = front_ ? "Open-Meteo" : "";
    series_.fetch = front_ ? openMeteoFetch : tableHint;
    if (front_) series_.place = front_->place;
    for (std::size_t i = 1; i < section.size(); ++i) readRow(section[i], section[0].cells.size(), header);
    if (!messages_.ok()) return;
    const auto times = moments();
    if (!messages_.ok()) return;
    for (std::size_t i = 0; i < times.size(); ++i) series_.instants[i].at = times[i];
    checkOrder(times);
    addRain(times, header);
  }

  void readRow(const Row& row, std::size_t columns, const Header& header) {
    if (row.cells.size() != columns) {
      error(row, 1, "",
            "this line has " + std::to_string(row.cells.size()) + " values, and the first one names " +
                std::to_string(columns),
            "write one value for each column");
      return;
    }
    const Cell& time = row.cells[*header.time];
    const auto stamp = parseStamp(time.text);
    if (!stamp) error(row, time.column, "time", "'" + time.text + "' is not a time", timeHint);
    else if (!stamps_.empty() && stamp->offset.has_value() != stamps_[0].offset.has_value())
      error(row, time.column, "time", "some times have a zone and others have none", timeHint);
    if (stamp) stamps_.push_back(*stamp);
    rows_.push_back(&row);
    Instant instant;
    std::optional<double> rain;
    for (const Column& c : header.columns)
      (c.element == Element::Rain ? rain : instant[c.element]) = value(row, c);
    series_.instants.push_back(instant);
    amounts_.push_back(rain);
  }

  std::optional<double> value(const Row& row, const Column& c) {
    const Cell& cell = row.cells[c.index];
    if (isMissing(cell.text)) return {};
    const auto raw = parseNumber(cell.text, table_.separator == ';');
    if (!raw) {
      error(row, cell.column, "", "'" + cell.text + "' is not a plain number",
            "write digits with a point, like 12.5");
      return {};
    }
    const double value = c.unit.of(*raw);
    if (const auto range = rangeMissed(c.element, value))
      error(row, cell.column, "", "'" + cell.text + "' is out of range for " + nameOf(c.element),
            "allowed: " + *range);
    return value;
  }

  std::vector<Time> moments() {
    if (!stamps_.empty() && !stamps_[0].offset && !front_) {
      std::vector<ClockTime> times;
      for (std::size_t i = 0; i < stamps_.size(); ++i) times.push_back({rows_[i]->line, stamps_[i].clock});
      return momentsOf(times, zone_, file_, messages_);
    }
    std::vector<Time> times;
    for (const Stamp& s : stamps_)
      times.push_back(s.clock - (s.offset ? seconds{*s.offset} : *front_->offset));
    return times;
  }

  /// True where lines keep to the clock on site, and so are not evenly apart where it is changed.
  bool isEvenByClock(std::size_t i) const {
    if (stamps_[0].offset || front_) return false;
    return stamps_[i + 1].clock - stamps_[i].clock >= stamps_[i].clock - stamps_[i - 1].clock;
  }

  /// Steps may grow, as those of forecasts do; a step followed by a shorter one is a gap.
  void checkOrder(const std::vector<Time>& times) {
    for (std::size_t i = 1; i < times.size(); ++i) {
      const seconds here = times[i] - times[i - 1];
      const seconds next = i + 1 < times.size() ? times[i + 1] - times[i] : here;
      if (here <= seconds{0})
        error(*rows_[i], 1, "time", "this time is not after that of the line before",
              "sort the lines by time");
      else if (next > seconds{0} && next < here && !isEvenByClock(i))
        error(*rows_[i], 1, "time",
              spanWords(here) + " after the line before, but the next step is " + spanWords(next) + " long",
              "no step may be missing; later ones may be longer, not shorter");
    }
  }

  void addRain(const std::vector<Time>& times, const Header& header) {
    const bool isBefore = std::any_of(header.columns.begin(), header.columns.end(),
                                      [](const Column& c) { return c.isBefore; }) ||
                          front_;
    for (std::size_t i = 0; i < times.size(); ++i) {
      if (!amounts_[i] || times.size() < 2 || (isBefore && i == 0)) continue;
      const bool isLast = i + 1 == times.size();
      const Time from = isBefore ? times[i - 1] : times[i];
      const Time until = isBefore ? times[i] : isLast ? times[i] + (times[i] - times[i - 1]) : times[i + 1];
      series_.rain.push_back({from, until, *amounts_[i]});
    }
  }

  const Table& table_;
  const std::string& file_;
  const std::string& zone_;
  base::Diagnostics& messages_;
  std::optional<Front> front_;
  Series series_;
  std::vector<Stamp> stamps_;
  std::vector<const Row*> rows_;
  std::vector<std::optional<double>> amounts_;
};

}  // namespace

std::optional<Series> readCsv(const std::string& text, const std::string& file, const std::string& zone,
                              base::Diagnostics& messages) {
  const Table table = readRows(text, file, messages);
  return messages.ok() ? Reader(table, file, zone, messages).run() : std::nullopt;
}

}  // namespace forecast
