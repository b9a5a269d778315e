// Ear protectors by the rule of each place.
#include "safety/noise.h"
#include "safety/protector.h"

#include <catch2/catch.hpp>

using Catch::WithinAbs;

namespace {

model::NoiseDay day(double level, int loudest) {
  model::NoiseDay d;
  d.level = level;
  d.loudest = loudest;
  return d;
}

model::NoiseLimits rule(model::ProtectorRule protector, int loss = 0) {
  model::NoiseLimits l;
  l.protector = protector;
  l.realWorldLoss = loss;
  if (protector == model::ProtectorRule::Nrr) l.rule = model::NoiseRule::Osha;
  return l;
}

}  // namespace

TEST_CASE("the class of an ear protector follows the day, and from 110 dB(A) on there is none") {
  // AS/NZS 1269.3:2005, appendix A (trade copies).
  const std::pair<double, std::optional<int>> table[] = {
      {89.9, 1}, {90, 2}, {94.9, 2}, {95, 3}, {97, 3}, {99.9, 3}, {102, 4}, {105, 5}, {109.9, 5}, {110, {}}};
  for (const auto& [level, expected] : table) {
    INFO(level);
    CHECK(safety::classForDay(level) == expected);
  }
}

TEST_CASE("an SLC80 belongs to a class") {
  // AS/NZS 1270:2002 (trade copies).
  for (const auto& [slc80, expected] :
       {std::pair{9, 0}, {10, 1}, {13, 1}, {14, 2}, {17, 2}, {18, 3}, {22, 4}, {26, 5}}) {
    INFO(slc80);
    CHECK(safety::classOfSlc80(slc80) == expected);
  }
}

TEST_CASE("half of an NRR less 7 counts, and both kinds together take off 5 dB more") {
  // 29 CFR 1910.95, appendix B, and 50 % of it by OSHA's Technical Manual: NRR 22 takes off 7.5 dB; NRR 33 at
  // 103 dB(A) leaves 90 (worked example on a secondary page).
  CHECK_THAT(safety::attenuation(22), WithinAbs(7.5, 0.05));
  CHECK_THAT(103 - safety::attenuation(33), WithinAbs(90, 0.05));
  // OSHA Technical Manual, from memory: NRR 29 with the other kind at 105 dB(A) leaves 89.
  CHECK_THAT(105 - safety::attenuationOfBoth(29), WithinAbs(89.0, 0.05));
}

TEST_CASE("an SNR takes off what its label says, less the loss in use") {
  // HSE L108 takes 4 dB (secondary pages).
  CHECK_THAT(safety::atEarSnr(95, 25, 4), WithinAbs(74, 1e-9));
  CHECK_THAT(safety::atEarSnr(95, 25, 0), WithinAbs(70, 1e-9));
}

TEST_CASE("an SNR that is asked for leaves neither too much at the ear nor too little") {
  // EN 458, bands around an action level of 85 dB(A): under 70 is too much protection (seen on secondary
  // pages); over 85 too little, 70 to 85 acceptable (from memory). The range asked for is narrower: HSE's 70
  // to 80 (secondary pages), so the 83 that EN 458 accepts is not asked for.
  struct {
    int atEar;
    bool isAsked;
  } cases[] = {{86, false}, {83, false}, {80, true}, {73, true}, {70, true}, {69, false}};
  for (const int loss : {0, 4}) {
    const auto p = safety::protectorFor(day(90, 100), rule(model::ProtectorRule::Snr, loss));
    for (const auto& c : cases) {
      const int snr = 100 + loss - c.atEar;
      INFO("SNR " << snr << " with " << loss << " dB lost in use");
      CHECK_THAT(safety::atEarSnr(100, snr, loss), WithinAbs(c.atEar, 1e-9));
      CHECK((p.least <= snr && snr <= p.most) == c.isAsked);
    }
  }
}

TEST_CASE("a protector is chosen for the loudest tool, never for a quiet average alone") {
  using model::ProtectorRule;
  // A blower of 95 dB(A) for half an hour: the day asks for class 1, the blower needs 95 - 85 = 10 dB, which
  // class 1 has.
  auto p = safety::protectorFor(day(83, 95), rule(ProtectorRule::Class));
  CHECK(p.least == 1);
  // A hammer of 96: 11 dB, so class 2.
  CHECK(safety::protectorFor(day(83, 96), rule(ProtectorRule::Class)).least == 2);
  // The day of 97 dB(A) asks for class 3 whatever the tools.
  CHECK(safety::protectorFor(day(97, 98), rule(ProtectorRule::Class)).least == 3);
  CHECK(safety::protectorFor(day(110, 100), rule(ProtectorRule::Class)).isBeyond);
  CHECK(safety::protectorFor(day(95, 112), rule(ProtectorRule::Class)).isBeyond);  // 27 dB, more than class 5
  // GB: 70 to 80 at the ear of 96 dB(A) with 4 dB lost in use.
  p = safety::protectorFor(day(90, 96), rule(ProtectorRule::Snr, 4));
  CHECK(p.least == 20);  // 96 - 80 + 4
  CHECK(p.most == 30);   // 96 - 70 + 4
  p = safety::protectorFor(day(90, 96), rule(ProtectorRule::Snr));
  CHECK((p.least == 16 && p.most == 26));
  // US: 96 to 85 are 11 dB, an NRR of 2 x 11 + 7 = 29.
  p = safety::protectorFor(day(88, 96), rule(ProtectorRule::Nrr));
  CHECK((p.least == 29 && !p.isBoth));
  // 100 to 85 are 15 dB, an NRR of 37: plugs and muffs; both of 33 take off 13 + 5 = 18.
  p = safety::protectorFor(day(95, 100), rule(ProtectorRule::Nrr));
  CHECK((p.isBoth && !p.isBeyond));
  CHECK(safety::protectorFor(day(95, 104), rule(ProtectorRule::Nrr)).isBeyond);  // 19 dB
}

TEST_CASE("quiet tools need no protector") {
  for (const auto kind : {model::ProtectorRule::Class, model::ProtectorRule::Snr})
    CHECK_FALSE(safety::protectorFor(day(70, 79), rule(kind)).isNeeded);
  CHECK_FALSE(safety::protectorFor(day(70, 84), rule(model::ProtectorRule::Nrr)).isNeeded);
}
