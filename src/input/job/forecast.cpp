// A forecast file: comma-separated, one line a step. Written out here: the format has neither quotes nor
// escapes, and every cell has to know its line and column.
#include "input/read.h"
#include "input/yaml/quantity.h"
#include "input/yaml/sorted.h"
#include "input/yaml/tree.h"

#include <algorithm>
#include <map>

namespace input {
namespace {

constexpr std::string_view header = "time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm";

constexpr int mostLines = 10'000;  // a hundred days in steps of a quarter of an hour

struct Column {
  const char* name;
  base::Count least, most;
  const char* words;
};

constexpr base::Count n(std::int64_t whole) { return base::Count::whole(whole); }

/// Wider than weather on earth where people lay coats; dew point and moisture are defined in all of it.
const Column columns[] = {{"air_c", n(-40), n(55), "from -40 to 55"},
                          {"rh_pct", n(1), n(100), "from 1 to 100"},
                          {"cloud_pct", n(0), n(100), "from 0 to 100"},
                          {"wind_ms", n(0), n(80), "from 0 to 80"},
                          {"rain_mm", n(0), n(300), "from 0 to 300"}};

struct Cell {
  std::string_view text;
  int column = 1;
};

int letters(std::string_view s) {
  return static_cast<int>(std::count_if(s.begin(), s.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::vector<Cell> cellsOf(std::string_view line) {
  std::vector<Cell> cells;
  int column = 1;
  while (true) {
    const std::size_t comma = line.find(',');
    cells.push_back({line.substr(0, comma), column});
    if (comma == std::string_view::npos) return cells;
    column += letters(line.substr(0, comma + 1));
    line.remove_prefix(comma + 1);
  }
}

/// 'YYYY-MM-DDTHH:MM', seconds allowed when they are zero.
std::optional<base::LocalTime> parseTime(std::string_view s) {
  if (s.size() == 19 && s.substr(16) == ":00") s.remove_suffix(3);
  if (s.size() != 16 || s[10] != 'T') return {};
  const auto day = base::parseDate(s.substr(0, 10));
  const auto minutes = base::parseClock(s.substr(11));
  if (!day || !minutes) return {};
  return base::LocalTime{*day, *minutes};
}

std::int64_t minutesBetween(base::LocalTime a, base::LocalTime b) {
  return std::int64_t{(b.day - a.day).count()} * 24 * 60 + b.minutes - a.minutes;
}

/// '2 h', '90 min'.
std::string span(std::int64_t minutes) {
  return minutes % 60 == 0 ? std::to_string(minutes / 60) + " h" : std::to_string(minutes) + " min";
}

struct Reader {
  const std::string& file;
  base::Diagnostics& messages;
  std::vector<std::optional<base::LocalTime>> times;  // by line after the header
  model::Forecast forecast;

  void error(int line, int column, const char* path, std::string message, std::string hint) {
    messages.error({file, line, column}, path, std::move(message), std::move(hint));
  }

  std::optional<double> number(int line, const Cell& cell, const Column& column) {
    const Parsed<base::Count> p = parseNumber(cell.text);
    if (p.problem) {
      error(line, cell.column, column.name, p.problem->message, p.problem->hint);
    } else if (p.value < column.least || p.value > column.most) {
      error(line, cell.column, column.name, inQuotes(std::string(cell.text)) + " is out of range",
            std::string("allowed: ") + column.words);
    } else {
      return static_cast<double>(p.value.millionths) / 1e6;
    }
    return {};
  }

  void readLine(int line, std::string_view text) {
    times.push_back({});
    const std::vector<Cell> cells = cellsOf(text);
    if (cells.size() != 1 + std::size(columns)) {
      error(line, 1, "", "this line has " + std::to_string(cells.size()) + " values, not 6",
            "write " + std::string(header));
      return;
    }
    times.back() = parseTime(cells[0].text);
    if (!times.back())
      error(line, 1, "time", inQuotes(std::string(cells[0].text)) + " is not a time",
            "write the site's own clock like 2027-03-16T06:00, without a zone");
    double values[std::size(columns)] = {};
    bool isWhole = times.back().has_value();
    for (std::size_t i = 0; i < std::size(columns); ++i) {
      const auto value = number(line, cells[i + 1], columns[i]);
      isWhole = isWhole && value;
      values[i] = value.value_or(0);
    }
    if (isWhole)
      forecast.steps.push_back(
          {*times.back(), {values[0], values[1], values[2] / 100, values[3], values[4]}});
  }

  /// The step that most lines keep to; 0 where no line comes after another.
  std::int64_t commonStep() const {
    std::map<std::int64_t, int> counts;
    for (std::size_t i = 1; i < times.size(); ++i) {
      if (!times[i - 1] || !times[i]) continue;
      if (const auto minutes = minutesBetween(*times[i - 1], *times[i]); minutes > 0) ++counts[minutes];
    }
    std::int64_t best = 0;
    for (const auto& [minutes, count] : counts) {
      if (best == 0 || count > counts[best]) best = minutes;
    }
    return best;
  }

  void checkSteps() {
    if (times.size() < 2) {
      if (messages.ok()) error(1, 1, "", "a forecast has two lines at least", "one for each step");
      return;
    }
    const std::int64_t step = commonStep();
    if (step > 0 && (step < 15 || step > 180)) {
      error(3, 1, "time", "the steps are " + span(step) + " long", "allowed: from 15 min to 3 h");
      return;
    }
    forecast.stepMinutes = static_cast<int>(step);
    for (std::size_t i = 1; i < times.size(); ++i) {
      if (!times[i - 1] || !times[i]) continue;
      const std::int64_t here = minutesBetween(*times[i - 1], *times[i]);
      const std::int64_t jump = here - step;
      // A change of the clocks moves them by an hour, at Lord Howe by half of one. Whether there was one on
      // that day is checked by the tz database when the plan is made.
      const bool mayBeClocks = step > 0 && (jump == 60 || jump == -60 || jump == 30 || jump == -30);
      if (jump == 0 || mayBeClocks) continue;
      const int line = static_cast<int>(i) + 2;
      if (here <= 0)
        error(line, 1, "time", "this time is not after that of the line before", "sort the lines by time");
      else
        error(line, 1, "time",
              span(here) + " after the line before, and the other steps are " + span(step) + " long",
              "no step may be missing or shorter");
    }
  }
};

}  // namespace

model::Forecast readForecast(const std::string& bytes, const std::string& file, base::Diagnostics& out) {
  base::Diagnostics messages;
  Reader reader{file, messages, {}, {}};
  if (const auto text = cleanText(bytes, file, messages)) {
    int line = 0;
    for (std::size_t from = 0; from <= text->size();) {
      const std::size_t end = std::min(text->find('\n', from), text->size());
      const std::string_view here = std::string_view(*text).substr(from, end - from);
      from = end + 1;
      if (++line > mostLines) {
        reader.error(line, 1, "", "more than " + std::to_string(mostLines) + " lines",
                     "leave out what lies behind the job");
        break;
      } else if (line > 1) {
        reader.readLine(line, here);
      } else if (here != header) {
        reader.error(1, 1, "", "the first line does not name the columns", "write " + std::string(header));
        break;
      }
    }
    if (line > 1 || messages.ok()) reader.checkSteps();
  }
  if (!messages.ok()) reader.forecast.steps.clear();
  forwardSorted(messages, out);
  return reader.forecast;
}

}  // namespace input
