#include "schedule/crew/crew.h"

#include "schedule/crew/drying.h"

#include <algorithm>
#include <stdexcept>
#include <tuple>

namespace schedule {
namespace {

using base::LocalTime;

std::int64_t minutesOf(base::Hours h) {
  return base::divide(base::Wide{h.millionths} * 60, 1'000'000, base::Round::Up);
}

/// How far the crew has come on one deck.
struct Progress {
  const Chain* chain = nullptr;
  std::size_t next = 0;   // piece of chain->before, then of chain->after
  int left = 0;           // minutes of that piece
  bool isCoated = false;  // its coats have their place
  LocalTime ready;        // the deck can take the next piece from here on

  bool isBeforeCoats() const { return next < chain->before.size(); }
  bool waitsForCoats() const { return !isBeforeCoats() && !isCoated; }
  const Piece* piece() const {
    if (isBeforeCoats()) return &chain->before[next];
    const std::size_t i = next - chain->before.size();
    return isCoated && i < chain->after.size() ? &chain->after[i] : nullptr;
  }
  bool isDone() const { return isCoated && !piece(); }
};

class Crew {
 public:
  Crew(const Work& work, const SessionMaker& maker, const model::Estimate& e, LocalTime start,
       const Policy& policy)
      : work_(work), maker_(maker), e_(e), policy_(policy), now_(start) {
    for (const auto& chain : work.chains) {
      Progress p;
      p.chain = &chain;
      p.ready = start;
      p.isCoated = chain.coats.coats.empty();
      if (const auto* piece = p.piece()) p.left = piece->minutes;
      decks_.push_back(p);
    }
    course_.wait = policy.wait;
    if (!work.whole.empty()) wholeLeft_ = work.whole.front().minutes;
  }

  Course walk() {
    while (!isDone()) {
      now_ = calendar().next(now_, calendar().day());
      placeReadyCoats();
      const LocalTime free = freeFrom(now_, course_.sessions, {}, false);
      if (free != now_) {
        now_ = free;
      } else if (Progress* deck = best()) {
        workOn(*deck->piece(), deck->left);
        latest_ = deck->chain->deck;
        if (deck->left == 0) finishPiece(*deck);
      } else if (canTakeWhole()) {
        workOn(work_.whole[whole_], wholeLeft_);
        if (wholeLeft_ == 0 && ++whole_ < work_.whole.size()) wholeLeft_ = work_.whole[whole_].minutes;
      } else if (!placeHarmlessCoat()) {
        now_ = nextChange();
        latest_ = {};
      }
    }
    for (const auto& session : course_.sessions)
      course_.shifts.insert(course_.shifts.end(), session.shifts.begin(), session.shifts.end());
    std::stable_sort(course_.shifts.begin(), course_.shifts.end(),
                     [](const auto& a, const auto& b) { return a.start < b.start; });
    return std::move(course_);
  }

 private:
  const Calendar& calendar() const { return maker_.calendar(); }
  const model::Job& job() const { return maker_.job().job; }

  bool isDone() const {
    return whole_ == work_.whole.size() &&
           std::all_of(decks_.begin(), decks_.end(), [](const auto& d) { return d.isDone(); });
  }

  Rank rankOf(const Progress& p) const {
    Rank rank{0, {}, job().areas[p.chain->deck].name, p.chain->deck};
    if (p.chain->deck < e_.decks.size()) rank.area = e_.decks[p.chain->deck].area;
    const auto& before = p.chain->before;
    for (std::size_t i = p.next; i < before.size(); ++i) {
      rank.ahead += (i == p.next ? p.left : before[i].minutes) + minutesOf(before[i].dryAfter);
    }
    for (std::size_t n = 0; n < p.chain->coats.coats.size() && !p.isCoated; ++n)
      rank.ahead += p.chain->coats.minutes(n) + minutesOf(maker_.job().product->times.recoatMin);
    return rank;
  }

  /// Tasks for the whole job are steps: what is listed after one waits for it.
  bool isReached(std::size_t rank) const {
    return whole_ == work_.whole.size() || rank < work_.whole[whole_].rank;
  }

  bool canTakeWhole() const {
    if (whole_ == work_.whole.size()) return false;
    const std::size_t rank = work_.whole[whole_].rank;
    for (const auto& deck : decks_) {
      if (const auto* piece = deck.piece(); piece && piece->rank < rank) return false;
      if (work_.firstCoatRank && *work_.firstCoatRank < rank && !deck.isCoated) return false;
    }
    if (work_.firstCoatRank && *work_.firstCoatRank < rank) {
      for (const auto& session : course_.sessions) {
        if (maker_.wipedOff(session) > now_) return false;
      }
    }
    return freeFrom(now_, course_.sessions, {}, work_.whole[whole_].soilsWetCoats) == now_;
  }

  bool canTake(const Progress& deck) const {
    const auto* piece = deck.piece();
    return piece && deck.ready <= now_ && isReached(piece->rank) &&
           freeFrom(now_, course_.sessions, piece->deck, piece->soilsWetCoats) == now_;
  }

  /// What has been begun first; then what starts a wait, so that the deck dries meanwhile; then the deck the
  /// crew stands on; then the one with the longest way to go.
  Progress* best() {
    Progress* best = nullptr;
    std::tuple<bool, bool, bool> bestClass;
    Rank bestRank;
    for (auto& deck : decks_) {
      if (!canTake(deck)) continue;
      const auto& piece = *deck.piece();
      const std::tuple<bool, bool, bool> cls{deck.left < piece.minutes, !piece.dryAfter.isZero(),
                                             latest_ == deck.chain->deck};
      Rank rank = rankOf(deck);
      if (best && (cls < bestClass || (cls == bestClass && !rank.isBefore(bestRank)))) continue;
      best = &deck;
      bestClass = cls;
      bestRank = std::move(rank);
    }
    return best;
  }

  /// Until it is done, the day ends, a coat begins, or its dust would meet a wet coat.
  void workOn(const Piece& piece, int& left) {
    auto part = calendar().fill(now_, left, calendar().day()).front();
    int worked = calendar().workable({part.start.minutes, part.end.minutes});
    const auto until = freeUntil(now_, course_.sessions, piece.deck, piece.soilsWetCoats);
    if (until && *until < part.end) {
      worked = calendar().workable({part.start.minutes, until->minutes});
      part = calendar().fill(now_, worked, calendar().day()).front();
    }
    left -= worked;
    auto& shifts = course_.shifts;
    const model::Shift shift{piece.task, piece.deck, piece.pass, part.start, part.end, job().crew.people};
    shifts.push_back(shift);
    now_ = part.end;
  }

  void finishPiece(Progress& deck) {
    deck.ready = dryAfter(*deck.piece(), now_, maker_.job(), maker_.open());
    ++deck.next;
    if (const auto* piece = deck.piece()) deck.left = piece->minutes;
  }

  // ---- coats

  static bool hasDustAhead(const Progress& deck) {
    const auto& before = deck.chain->before;
    return deck.isBeforeCoats() && std::any_of(before.begin() + static_cast<std::ptrdiff_t>(deck.next),
                                               before.end(), [](const Piece& p) { return p.soilsWetCoats; });
  }
  bool isDustAheadElsewhere(const Progress& but) const {
    return std::any_of(decks_.begin(), decks_.end(),
                       [&](const Progress& deck) { return &deck != &but && hasDustAhead(deck); });
  }

  std::vector<Progress*> readyForCoats() {
    std::vector<Progress*> ready;
    for (auto& deck : decks_) {
      if (deck.waitsForCoats() && isReached(*work_.firstCoatRank)) ready.push_back(&deck);
    }
    std::sort(ready.begin(), ready.end(),
              [&](const auto* a, const auto* b) { return rankOf(*a).isBefore(rankOf(*b)); });
    return ready;
  }

  Train trainFor(const Progress& deck) const {
    LocalTime from = std::max(now_, deck.ready);
    if (policy_.coatsFrom) from = std::max(from, {*policy_.coatsFrom, 0});
    return findTrain(maker_, deck.chain->coats, course_.sessions, from, now_);
  }

  void take(Progress& deck, Train train) {
    deck.isCoated = true;
    deck.ready = train.dry;
    if (const auto* piece = deck.piece()) deck.left = piece->minutes;
    course_.sessions = std::move(train.sessions);
    train.sessions.clear();
    course_.trains.push_back(std::move(train));
  }

  bool hasToWait(const Progress& deck) const {
    switch (policy_.wait) {
      case CoatsWait::ForAll:
        return std::any_of(decks_.begin(), decks_.end(), [](const auto& d) { return d.isBeforeCoats(); });
      case CoatsWait::ForDust:
        return isDustAheadElsewhere(deck);
      case CoatsWait::ForNone:
        return false;
    }
    return false;
  }

  void placeReadyCoats() {
    for (auto* deck : readyForCoats()) {
      if (hasToWait(*deck)) {
        course_.hasWaited = true;
        continue;
      }
      take(*deck, trainFor(*deck));
    }
  }

  /// While the crew has nothing else to do a coat need not wait for dust, where all coats of the deck are
  /// touch dry before the dusty work on another can go on.
  bool placeHarmlessCoat() {
    for (auto* deck : readyForCoats()) {
      Train train = trainFor(*deck);
      if (train.dry > calendar().next(dustFrom(*deck), calendar().day())) continue;
      take(*deck, std::move(train));
      return true;
    }
    return false;
  }

  /// No dusty work on any other deck can be done before.
  LocalTime dustFrom(const Progress& but) const {
    std::optional<LocalTime> first;
    for (const auto& deck : decks_) {
      if (&deck != &but && hasDustAhead(deck) && (!first || deck.ready < *first)) first = deck.ready;
    }
    return std::max(now_, first.value_or(now_));
  }

  /// The next moment at which something may be done that cannot be done now.
  LocalTime nextChange() const {
    std::optional<LocalTime> next;
    const auto see = [&](LocalTime at) {
      if (at > now_ && (!next || at < *next)) next = at;
    };
    for (const auto& deck : decks_) {
      if (!deck.isDone()) see(deck.ready);
    }
    for (const auto& session : course_.sessions) {
      see(session.start());
      see(session.shifts.back().end);
      see(maker_.wipedOff(session));
      for (const auto& shift : session.shifts) see(shift.start);
      for (const auto& wet : session.wet) see(wet.until);
    }
    if (!next) throw std::logic_error("internal error: the crew waits for nothing");
    return *next;
  }

  const Work& work_;
  const SessionMaker& maker_;
  const model::Estimate& e_;
  const Policy policy_;
  LocalTime now_;
  std::vector<Progress> decks_;
  std::size_t whole_ = 0;  // the step that comes next
  int wholeLeft_ = 0;
  std::optional<std::size_t> latest_;  // the deck the crew stands on
  Course course_;
};

}  // namespace

bool Rank::isBefore(const Rank& other) const {
  if (ahead != other.ahead) return ahead > other.ahead;
  if (area != other.area) return area > other.area;
  return std::tie(name, deck) < std::tie(other.name, other.deck);
}

Course takeCourse(const Work& work, const SessionMaker& maker, const model::Estimate& e, LocalTime start,
                  const Policy& policy) {
  return Crew(work, maker, e, start, policy).walk();
}

}  // namespace schedule
