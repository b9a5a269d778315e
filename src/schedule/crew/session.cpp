#include "schedule/crew/session.h"

#include "model/lookup.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <numeric>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

model::Shift shiftOf(const Lay& lay, const CoatTask& task, const Part& part, int people) {
  return {task.task, lay.deck->deck, static_cast<int>(lay.coat) + 1, part.start, part.end, people};
}

const std::vector<CoatTask>& tasksOf(const Lay& lay) { return lay.deck->coats.at(lay.coat); }

/// The first task that lays product; the end where none does.
std::size_t firstWet(const std::vector<CoatTask>& tasks) {
  return static_cast<std::size_t>(
      std::find_if(tasks.begin(), tasks.end(), [](const auto& t) { return t.isWet; }) - tasks.begin());
}

/// Whether two guards meet that are not of one deck.
bool meet(const Guard& a, const Guard& b) {
  const bool isSame = a.deck && b.deck && *a.deck == *b.deck;
  return !isSame && a.from < b.until && b.from < a.until;
}

bool isAnyMet(const std::vector<Guard>& some, const std::vector<Guard>& others) {
  return std::any_of(some.begin(), some.end(), [&](const Guard& a) {
    return std::any_of(others.begin(), others.end(), [&](const Guard& b) { return meet(a, b); });
  });
}

/// Whether dust of the one falls on wet boards of the others, or theirs on its own.
bool isSpoiled(const Session& session, const Sessions& others) {
  return std::any_of(others.begin(), others.end(), [&](const Session& other) {
    return isAnyMet(session.dust, other.wet) || isAnyMet(session.wet, other.dust);
  });
}

int sumOf(const std::vector<int>& minutes) { return std::accumulate(minutes.begin(), minutes.end(), 0); }

/// What a day with so much room does of each task of a coat: cutting in goes along with the surface, so all
/// come equally far, to five minutes.
std::vector<int> partOf(const std::vector<int>& left, int room) {
  constexpr int step = 5;
  const int all = sumOf(left), today = std::min(room, all);
  int rest = today;
  std::vector<int> part;
  for (std::size_t i = 0; i < left.size(); ++i) {
    const int even = static_cast<int>(base::mulDiv(left[i], today, all * step, base::Round::Up)) * step;
    part.push_back(std::min({left[i], rest, i + 1 == left.size() ? rest : even}));
    rest -= part.back();
  }
  return part;
}

bool spoils(std::optional<std::size_t> deck, const Guard& wet) {
  return !deck || !wet.deck || *deck != *wet.deck;
}

}  // namespace

base::Date lastDayOf(const Sessions& sessions) {
  base::Date last{};
  for (const auto& session : sessions) last = std::max(last, session.shifts.back().end.day);
  return last;
}

LocalTime freeFrom(LocalTime t, const Sessions& sessions, std::optional<std::size_t> deck, bool isDusty) {
  for (bool isMoved = true; isMoved;) {
    isMoved = false;
    const auto wait = [&](LocalTime from, LocalTime until) {
      if (from <= t && t < until) t = until, isMoved = true;
    };
    for (const auto& session : sessions) {
      for (const auto& shift : session.shifts) wait(shift.start, shift.end);
      if (!isDusty) continue;
      for (const auto& wet : session.wet) {
        if (spoils(deck, wet)) wait(wet.from, wet.until);
      }
    }
  }
  return t;
}

std::optional<LocalTime> freeUntil(LocalTime t, const Sessions& sessions, std::optional<std::size_t> deck,
                                   bool isDusty) {
  std::optional<LocalTime> next;
  const auto see = [&](LocalTime at) {
    if (at > t && (!next || at < *next)) next = at;
  };
  for (const auto& session : sessions) {
    for (const auto& shift : session.shifts) see(shift.start);
    if (!isDusty) continue;
    for (const auto& wet : session.wet) {
      if (spoils(deck, wet)) see(wet.from);
    }
  }
  return next;
}

LocalTime SessionMaker::wipedOff(const Session& session) const {
  const LocalTime end = session.shifts.back().end;
  return session.lays.empty() ? end : after(c_.job.site.timezone, end, c_.product->times.wipeOff);
}

LocalTime SessionMaker::touchDry(LocalTime end) const {
  return drying_.dryAt(end, c_.product->times.touchDry);
}

/// The end of the crew's break where it would fall into the coat: a wet edge does not wait. 't' itself where
/// it does not, or where the day after the break is too short for the coat.
LocalTime SessionMaker::afterBreak(LocalTime t, const Lay& lay) const {
  const auto pause = model::breakOf(c_.job.crew);
  const auto& tasks = tasksOf(lay);
  int minutes = 0;
  for (std::size_t i = firstWet(tasks); i < tasks.size(); ++i) minutes += tasks[i].minutes;
  const bool isCut = t.minutes < pause.from && pause.from < pause.until && t.minutes + minutes > pause.from;
  return isCut && pause.until + minutes <= open_.bounds().until ? LocalTime{t.day, pause.until} : t;
}

/// One after the other from 't', whether the hours are open or not; nothing where the day is too short.
std::optional<Session> SessionMaker::laidFrom(LocalTime t, const std::vector<Lay>& lays) const {
  const Span bounds = open_.bounds();
  Session session;
  session.lays = lays;
  const auto lay = [&](Lay& one, const CoatTask& task) {
    const auto parts = calendar_.fill(t, task.minutes, bounds);
    if (parts.front().start.day != t.day || parts.size() > 1) return false;
    t = parts.front().end;
    session.shifts.push_back(shiftOf(one, task, parts.front(), c_.job.crew.people));
    return true;
  };
  for (auto& one : session.lays) {
    const auto& tasks = tasksOf(one);
    for (std::size_t i = 0; i < firstWet(tasks); ++i) {
      if (!lay(one, tasks[i])) return {};
      if (i == 0) one.begun = session.shifts.back().start;
      if (tasks[i].soilsWetCoats)
        session.dust.push_back({one.deck->deck, session.shifts.back().start, session.shifts.back().end});
    }
  }
  for (auto& one : session.lays) {
    const auto& tasks = tasksOf(one);
    one.strokes.clear();
    t = afterBreak(t, one);
    for (std::size_t i = firstWet(tasks); i < tasks.size(); ++i) {
      if (!lay(one, tasks[i])) return {};
      one.strokes.push_back(session.shifts.back());
    }
    if (one.strokes.empty()) one.strokes.push_back(session.shifts.back());
    if (firstWet(tasks) == 0) one.begun = one.start();
  }
  return session;
}

/// Where the session has to start instead of at 't' for the first thing that stands against it: 't' itself
/// where nothing does, nothing where no later start of the day helps.
std::optional<LocalTime> SessionMaker::shiftedFor(const Session& session, LocalTime t,
                                                  const Sessions& others) const {
  const auto later = [&](LocalTime is, LocalTime should) -> std::optional<LocalTime> {
    if (should.day != is.day) return {};
    return base::plusMinutes(t, should.minutes - is.minutes);
  };
  for (const auto& lay : session.lays) {
    if (lay.begun < lay.dryFrom) return later(lay.begun, lay.dryFrom);
    if (lay.start() < lay.earliest) return later(lay.start(), lay.earliest);
    const int from = lay.start().minutes, until = lay.end().minutes;
    const auto& spans = open_.on(t.day, lay.deck->deck, lay.heed);
    const bool isOpen = std::any_of(spans.begin(), spans.end(),
                                    [&](const Span& s) { return s.from <= from && until <= s.until; });
    if (isOpen) continue;
    const auto next = std::find_if(spans.begin(), spans.end(), [&](const Span& s) { return s.from > from; });
    if (next == spans.end()) return {};
    return later({t.day, from}, {t.day, next->from});
  }
  for (const auto& other : others) {
    for (const auto& shift : other.shifts) {
      if (shift.start < session.shifts.back().end && session.start() < shift.end)
        return later(session.start(), shift.end);
    }
  }
  for (const auto& other : others) {
    for (const auto& dust : session.dust) {
      for (const auto& wet : other.wet) {
        if (meet(dust, wet)) return later(dust.from, wet.until);
      }
    }
    for (const auto& wet : session.wet) {
      for (const auto& dust : other.dust) {
        if (meet(wet, dust)) return later(wet.from, dust.until);
      }
    }
  }
  return t;
}

void SessionMaker::addGuards(Session& session) const {
  for (const auto& lay : session.lays) {
    for (const auto& stroke : lay.strokes)
      session.wet.push_back({lay.deck->deck, stroke.start, touchDry(stroke.end)});
  }
}

std::optional<Session> SessionMaker::onOneDay(const std::vector<Lay>& lays, LocalTime from,
                                              const Sessions& others) const {
  LocalTime t = from;
  while (true) {
    t = calendar_.next(t, open_.bounds());
    if (t.day != from.day) return {};
    auto session = laidFrom(t, lays);
    if (!session) return {};
    addGuards(*session);
    const auto better = shiftedFor(*session, t, others);
    if (!better || better->day != t.day) return {};
    if (*better == t) return session;
    t = *better;
  }
}

std::optional<Session> SessionMaker::overDays(const Lay& lay, const Sessions& others) const {
  for (base::Date from = lay.earliest.day;;) {
    auto session = layOver(lay, from, others);
    if (!session || !isSpoiled(*session, others)) return session;
    from = session->start().day + days{1};
  }
}

/// The open span of a day with the most minutes to work from 'from' on, cut off before it; empty where there
/// is none.
Span SessionMaker::longestOpen(const Lay& lay, LocalTime from) const {
  Span longest;
  for (Span span : open_.on(from.day, lay.deck->deck, lay.heed)) {
    span.from = std::max(span.from, from.minutes);
    if (calendar_.workable(span) > calendar_.workable(longest)) longest = span;
  }
  return longest;
}

std::optional<Session> SessionMaker::layOver(const Lay& lay, base::Date from, const Sessions& others) const {
  Session session;
  session.isOverDays = true;
  session.lays = {lay};
  Lay& laid = session.lays.front();
  laid.strokes.clear();
  const auto& tasks = tasksOf(lay);
  const int worthwhile = std::min(60, calendar_.workable(open_.usual()));
  const LocalTime earliest = std::max(lay.earliest, lay.dryFrom);
  const base::Date busyUntil = lastDayOf(others);
  std::vector<int> left;
  for (const auto& task : tasks) left.push_back(task.minutes);
  int idleDays = 0;
  for (base::Date day = std::max(from, earliest.day); sumOf(left) > 0; day += days{1}) {
    if (!calendar_.isWorkday(day)) continue;
    if (day > busyUntil && ++idleDays > lookAhead) return {};
    const bool isTaken = std::any_of(others.begin(), others.end(), [&](const Session& s) {
      return std::any_of(s.shifts.begin(), s.shifts.end(), [&](const auto& x) { return x.start.day == day; });
    });
    if (isTaken) continue;
    const Span span = longestOpen(lay, std::max(earliest, {day, 0}));
    const int room = calendar_.workable(span);
    if (room < worthwhile) continue;
    LocalTime t{day, span.from};
    const auto part = partOf(left, room);
    for (std::size_t task = 0; task < tasks.size(); ++task) {
      if (part[task] == 0) continue;
      const auto worked = calendar_.fill(t, part[task], span).front();
      session.shifts.push_back(shiftOf(lay, tasks[task], worked, c_.job.crew.people));
      if (task >= firstWet(tasks)) laid.strokes.push_back(session.shifts.back());
      else if (tasks[task].soilsWetCoats) session.dust.push_back({lay.deck->deck, worked.start, worked.end});
      t = worked.end;
      left[task] -= part[task];
    }
    idleDays = 0;
  }
  if (laid.strokes.empty()) laid.strokes.push_back(session.shifts.back());
  laid.begun = session.start();
  addGuards(session);
  return session;
}

Session SessionMaker::dryWork(const DeckCoats& deck, std::size_t coat, const CoatTask& task, LocalTime from,
                              const Sessions& others) const {
  Session session;
  const Lay lay{&deck, coat, from, from, Heed::All, {}, {}};
  LocalTime t = from;
  for (int left = task.minutes; left > 0;) {
    const LocalTime free =
        freeFrom(calendar_.next(t, calendar_.day()), others, deck.deck, task.soilsWetCoats);
    t = calendar_.next(free, calendar_.day());
    if (t != free) continue;
    const auto until = freeUntil(t, others, deck.deck, task.soilsWetCoats);
    const int end = until && until->day == t.day ? until->minutes : calendar_.day().until;
    const int worked = std::min(left, calendar_.workable({t.minutes, end}));
    const auto part = calendar_.fill(t, worked, calendar_.day()).front();
    session.shifts.push_back(shiftOf(lay, task, part, c_.job.crew.people));
    if (task.soilsWetCoats) session.dust.push_back({deck.deck, part.start, part.end});
    left -= worked;
    t = part.end;
  }
  return session;
}

}  // namespace schedule
