#include "schedule/crew/coats.h"

#include "schedule/weather/zone.h"

#include <algorithm>
#include <stdexcept>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

constexpr int daysToTry = 7;  // from the first possible one on, for a better window

/// Puts coats into a copy of the sessions, one after the other.
class TrainMaker {
 public:
  TrainMaker(const SessionMaker& maker, const DeckCoats& deck, LocalTime now)
      : maker_(maker), deck_(deck), now_(now) {}

  struct Try {
    Train train;
    std::optional<LocalTime> first;  // the first coat's start; nothing where it found no place
    bool isWhole = false;
  };

  Try from(LocalTime ready, base::Hours wait, Heed heed, const Sessions& sessions) const {
    const auto& times = maker_.job().product->times;
    const auto& zone = maker_.job().job.site.timezone;
    Try result;
    auto& train = result.train;
    train.sessions = sessions;
    train.heed = heed;
    std::optional<Lay> before;
    LocalTime earliest = ready;
    for (std::size_t n = 0; n < deck_.coats.size(); ++n) {
      if (deck_.coats[n].empty()) continue;
      Sessions untouched = before ? train.sessions : Sessions{};
      const LocalTime dry = before ? maker_.touchDry(train.end) : ready;
      auto laid = place({&deck_, n, earliest, dry, heed, {}, {}}, train.sessions);
      if (!laid) return result;
      Window window = before ? windowOf(waits(*before, *laid), times) : Window::Ideal;
      if (window == Window::Missed && n < deck_.sanding.size() && deck_.sanding[n].minutes > 0) {
        train.sessions = std::move(untouched);
        const auto sanded =
            maker_.dryWork(deck_, n, deck_.sanding[n], std::max(earliest, dry), train.sessions);
        const LocalTime end = sanded.shifts.back().end;
        add(train.sessions, sanded);
        laid = place({&deck_, n, end, end, heed, {}, {}}, train.sessions);
        if (!laid) return result;
      }
      train.worst = std::max(train.worst, window);
      if (!before) result.first = train.start = laid->start();
      train.end = laid->end();
      before = std::move(laid);
      earliest = after(zone, train.end, wait);
    }
    train.dry = maker_.touchDry(train.end);
    result.isWhole = true;
    return result;
  }

 private:
  Waits waits(const Lay& before, const Lay& after) const {
    return waitsBetween(before, after, maker_.calendar(), maker_.job().job.site.timezone);
  }

  static void add(Sessions& sessions, Session session) {
    const auto at = std::find_if(sessions.begin(), sessions.end(),
                                 [&](const auto& s) { return s.start() > session.start(); });
    sessions.insert(at, std::move(session));
  }

  /// Into a session that stands on that day, else alone, on the first day that holds it; a coat that no day
  /// holds over several.
  std::optional<Lay> place(const Lay& lay, Sessions& sessions) const {
    if (maker_.mayFitOneDay(lay.deck->minutes(lay.coat))) {
      const base::Date busyUntil = lastDayOf(sessions);
      base::Date day = lay.earliest.day;
      for (int worked = 0; worked < lookAhead; day += days{1}) {
        if (!maker_.calendar().isWorkday(day)) continue;
        if (day > busyUntil) ++worked;
        if (auto laid = join(lay, day, sessions)) return laid;
        const LocalTime from = std::max(std::min(lay.earliest, std::max(lay.dryFrom, now_)), {day, 0});
        if (auto alone = maker_.onOneDay({lay}, from, sessions)) {
          const Lay laid = alone->lays.back();
          add(sessions, std::move(*alone));
          return laid;
        }
      }
    }
    auto over = maker_.overDays(lay, sessions);
    if (!over) return {};
    const Lay laid = over->lays.back();
    add(sessions, std::move(*over));
    return laid;
  }

  std::optional<Lay> join(const Lay& lay, base::Date day, Sessions& sessions) const {
    for (std::size_t i = 0; i < sessions.size(); ++i) {
      const Session& session = sessions[i];
      if (session.start().day != day || session.start() < now_ || session.isOverDays || session.lays.empty())
        continue;
      const bool isMine = std::any_of(session.lays.begin(), session.lays.end(),
                                      [&](const auto& l) { return l.deck == lay.deck; });
      if (isMine) continue;
      Sessions others = sessions;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
      auto lays = session.lays;
      // A deck that is left over another is laid before it.
      const auto over = std::find_if(lays.begin(), lays.end(), [&](const Lay& other) {
        return maker_.isLeftOver(lay.deck->deck, other.deck->deck) &&
               !maker_.isLeftOver(other.deck->deck, lay.deck->deck);
      });
      const auto place = static_cast<std::size_t>(over - lays.begin());
      lays.insert(over, lay);
      auto joined = maker_.onOneDay(lays, session.start(), others);
      if (!joined) continue;
      const Lay laid = joined->lays[place];
      add(others, std::move(*joined));
      if (!keepWaits(others) || !keepWindows(sessions, others)) continue;
      sessions = std::move(others);
      return laid;
    }
    return {};
  }

  /// A coat that has moved a little may push the coats after it, the same day. False where that cannot be.
  bool keepWaits(Sessions& sessions) const {
    for (std::size_t i = 0; i < sessions.size(); ++i) {
      auto lays = sessions[i].lays;
      bool isPushed = false;
      for (auto& lay : lays) {
        const Lay* before = layBefore(sessions, lay);
        if (!before) continue;
        const LocalTime need =
            after(maker_.job().job.site.timezone, before->end(), maker_.job().product->times.recoatMin);
        const LocalTime dry = maker_.touchDry(before->end());
        isPushed = isPushed || lay.start() < need || lay.begun < dry;
        lay.earliest = std::max(lay.earliest, need);
        lay.dryFrom = std::max(lay.dryFrom, dry);
      }
      if (!isPushed) continue;
      if (sessions[i].isOverDays) return false;
      Sessions others = sessions;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
      auto pushed = maker_.onOneDay(lays, sessions[i].start(), others);
      if (!pushed) return false;
      sessions[i] = std::move(*pushed);
    }
    std::sort(sessions.begin(), sessions.end(),
              [](const auto& a, const auto& b) { return a.start() < b.start(); });
    return std::all_of(sessions.begin(), sessions.end(),
                       [&](const Session& session) { return isOnDryBoards(session, sessions); });
  }

  /// Whether the sanding between two coats comes when the first of them is touch dry.
  bool isOnDryBoards(const Session& sanding, const Sessions& sessions) const {
    if (!sanding.lays.empty()) return true;
    const model::Shift& shift = sanding.shifts.front();
    for (const Lay* lay : laysOf(sessions, shift.deck.value())) {
      if (static_cast<int>(lay->coat) + 1 < shift.pass && shift.start < maker_.touchDry(lay->end()))
        return false;
    }
    return true;
  }

  /// A push must not take a coat that was placed before out of its window, nor back into one that it has been
  /// sanded for missing.
  bool keepWindows(const Sessions& before, const Sessions& after) const {
    for (const auto& session : before) {
      for (const auto& lay : session.lays) {
        const Lay* first = layBefore(before, lay);
        if (!first) continue;
        const Lay *newFirst = sameLay(after, *first), *newLay = sameLay(after, lay);
        if (!newFirst || !newLay) return false;
        if (newFirst->end() == first->end() && newLay->start() == lay.start()) continue;
        const auto& times = maker_.job().product->times;
        const Window was = windowOf(waits(*first, lay), times),
                     is = windowOf(waits(*newFirst, *newLay), times);
        if (is > was || (was == Window::Missed && is != was)) return false;
      }
    }
    return true;
  }

  static const Lay* sameLay(const Sessions& sessions, const Lay& lay) {
    for (const auto& session : sessions) {
      for (const auto& other : session.lays) {
        if (other.deck == lay.deck && other.coat == lay.coat) return &other;
      }
    }
    return nullptr;
  }

  static const Lay* layBefore(const Sessions& sessions, const Lay& lay) {
    const Lay* before = nullptr;
    for (const auto& session : sessions) {
      for (const auto& other : session.lays) {
        if (other.deck == lay.deck && other.coat < lay.coat && (!before || other.coat > before->coat))
          before = &other;
      }
    }
    return before;
  }

  const SessionMaker& maker_;
  const DeckCoats& deck_;
  LocalTime now_;
};

}  // namespace

Train findTrain(const SessionMaker& maker, const DeckCoats& deck, const Sessions& sessions, LocalTime ready,
                LocalTime now) {
  const auto& times = maker.job().product->times;
  const TrainMaker tries(maker, deck, now);
  for (const Heed heed : {Heed::All, Heed::Forecast, Heed::Clock}) {
    std::optional<Train> best;
    LocalTime from = ready;
    for (int i = 0; i < daysToTry && !(best && best->worst == Window::Ideal); ++i) {
      std::optional<LocalTime> first;
      for (const auto wait : {times.recoatIdealFrom, times.recoatMin}) {
        if (best && best->worst == Window::Ideal) break;
        auto here = tries.from(from, wait, heed, sessions);
        if (here.first) first = here.first;
        if (here.isWhole && (!best || here.train.worst < best->worst)) best = std::move(here.train);
      }
      if (!first) break;
      from = {first->day + days{1}, 0};
    }
    if (best) return std::move(*best);
  }
  throw std::logic_error("internal error: no day for a coat");
}

std::vector<const Lay*> laysOf(const Sessions& sessions, std::size_t deck) {
  std::vector<const Lay*> lays;
  for (const auto& session : sessions) {
    for (const auto& lay : session.lays) {
      if (lay.deck->deck == deck) lays.push_back(&lay);
    }
  }
  std::sort(lays.begin(), lays.end(), [](const Lay* a, const Lay* b) { return a->coat < b->coat; });
  return lays;
}

}  // namespace schedule
