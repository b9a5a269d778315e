#include "sheets/facts/day_strips.h"

#include "sheets/facts/day_people.h"
#include "sheets/facts/day_work.h"

#include <algorithm>

namespace sheets {
namespace {

/// '0.6'; a narrow last strip may take less than the smallest step that is printed: '<0.1'.
std::string stripAmount(std::int64_t steps, const Formatter& w) {
  return steps > 0 ? w.volumeNumber(steps) : "<" + w.volumeNumber(1);
}

std::string standText(const model::Stand& stand, const Formatter& w) {
  switch (stand.on) {
    case model::Stand::On::Ground:
      return w("strips.from_ground");
    case model::Stand::On::Deck:
      return w("strips.from_deck", {{"deck", deckLetter(stand.deck)}});
    case model::Stand::On::Strip:
      return w("strips.at_once");
    case model::Stand::On::Boards:
      break;
  }
  return {};
}

/// Strips that are wiped in one piece, or one soon after the other from the same side.
struct WipeRun {
  std::vector<int> numbers;
  int from = 0, until = 0;
  std::string stand;
};

std::vector<WipeRun> wipeRuns(const DayCoat& coat, const Formatter& w) {
  constexpr int pause = 15;  // minutes
  std::vector<const model::BoardStrip*> strips;
  for (const auto& s : coat.strips)
    if (s.strip->wipe) strips.push_back(s.strip);
  std::stable_sort(strips.begin(), strips.end(),
                   [](const auto* a, const auto* b) { return a->wipe->start < b->wipe->start; });
  std::vector<WipeRun> runs;
  for (const auto* strip : strips) {
    const int from = strip->wipe->start.minutes, until = strip->wipe->end.minutes;
    const auto stand = standText(strip->wipe->from, w);
    const bool goesOn = !runs.empty() && runs.back().stand == stand && from <= runs.back().until + pause;
    if (!goesOn) runs.push_back({{}, from, until, stand});
    runs.back().numbers.push_back(strip->number);
    runs.back().until = std::max(runs.back().until, until);
  }
  return runs;
}

/// 'wipe 1–4 11:35–12:10 from the ground, 5 12:30–12:40'
std::string stepsText(const DayCoat& coat, const Formatter& w) {
  std::string text;
  const auto runs = wipeRuns(coat, w);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const auto& run = runs[i];
    const bool isSaid = i + 1 < runs.size() && runs[i + 1].stand == run.stand;  // with the last of its kind
    text += i > 0 ? ", " : w("strips.wipe") + "\u00A0";
    text += numberRanges(run.numbers, w) + "\u00A0\u00A0" + span(run.from, run.until, w) +
            (isSaid || run.stand.empty() ? "" : " " + run.stand);
  }
  return text;
}

std::string nameOf(const DayCoat& coat, const Day& day, const model::JobResult& x, const Formatter& w) {
  const auto name = deckName(x, coat.deck);
  const bool isAlone = std::count_if(day.coats.begin(), day.coats.end(),
                                     [&](const auto& c) { return c.deck == coat.deck; }) == 1;
  return isAlone
             ? name
             : w("day.deck_coat", {{"deck", name}, {"coat", w("coats.names." + std::to_string(coat.coat))}});
}

}  // namespace

std::vector<CoatText> coatTexts(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::vector<CoatText> texts;
  for (const auto& coat : day.coats) {
    CoatText text{&coat, nameOf(coat, day, x, w), stripsText(coat, x, w), stepsText(coat, w), {}};
    if (coat.goesOn)
      text.note += (text.note.empty() ? "" : "; ") + w("day.goes_on", {{"day", w.shortDate(*coat.goesOn)}});
    for (const auto& s : coat.strips) {
      const auto at = [&](const std::optional<model::StripWork>& step) {
        return step ? w.shortClock(step->start.minutes) : "";
      };
      text.strips.push_back({std::to_string(s.strip->number), w.shortClock(s.start), stripAmount(s.litres, w),
                             at(s.strip->cutIn), at(s.strip->wipe)});
    }
    texts.push_back(std::move(text));
  }
  return texts;
}

std::vector<std::vector<std::size_t>> pagesOfCoats(const Day& day) {
  constexpr std::size_t most = 90;  // strips on a page
  std::vector<std::vector<std::size_t>> pages;
  std::size_t strips = 0;
  for (std::size_t i = 0; i < day.coats.size(); ++i) {
    strips += day.coats[i].strips.size();
    const bool isSecondCoat = i > 0 && day.coats[i].deck == day.coats[i - 1].deck;
    if (pages.empty() || (strips > most && !isSecondCoat)) {
      pages.emplace_back();
      strips = day.coats[i].strips.size();
    }
    pages.back().push_back(i);
  }
  return pages;
}

}  // namespace sheets
