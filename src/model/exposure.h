// What the work does to the people who do it, day by day: noise, vibration, heat, vapour, dust, weight, oily
// rags. Physics: doubles that never meet money.
#pragma once

#include "model/content.h"

#include <vector>

namespace model {

/// One person's noise on one day, the tools shared evenly among the crew.
struct NoiseDay {
  base::Date date{};
  double nioshDose = 0, oshaDose = 0;  // %
  double lex8h = 0;                    // dB(A), EU form; 0 = no noisy tool
  double level = 0;                    // dB(A) in the region's form: L_EX,8h, or OSHA's average
  double protection = 0;  // dB an ear protector has to take off to come under the region's lower level
  int loudest = 0;        // dB(A) of the loudest tool in use
  int shareAmong =
      0;  // people among whom the noisy work would have to be shared; 0 = sharing does not bring it under
};

/// The ear protector that is asked for.
struct Protector {
  ProtectorRule rule = ProtectorRule::Snr;
  int least = 0;          // class, SNR or NRR
  int most = 0;           // of SNR: above it people hear no warning; 0 = no upper end
  bool isBoth = false;    // plugs and muffs together
  bool isNeeded = true;   // false: no tool is loud enough
  bool isBeyond = false;  // no class is enough: ask a specialist
};

struct VibrationTool {
  std::string tool;         // id
  double acceleration = 0;  // m/s2
  double minutes = 0;       // one person's trigger time planned on that day
  double minutesToAction = 0, minutesToLimit = 0;
};

struct VibrationDay {
  base::Date date{};
  double a8 = 0;      // m/s2
  double points = 0;  // 100 = 2.5 m/s2, 400 = 5 m/s2
  double minutesLeft =
      0;  // to the action value with the tool that shakes most, the day's others used as planned
  int shareAmong = 0;
  std::vector<VibrationTool> tools;
};

enum class HeatBand { None, Caution, ExtremeCaution, Danger, ExtremeDanger };

struct HeatDay {
  base::Date date{};
  base::LocalTime at;    // hottest hour of the planned work
  double celsius = 0;    // heat index in the shade, or apparent temperature
  bool isInSun = false;  // the crew is in the sun then, which apparent temperature counts
  HeatBand band = HeatBand::None;
  bool isUsual = false;  // from the month's usual weather, not a forecast
};

struct VapourArea {
  std::size_t deck = 0;
  double solventGramsPerHour = 0;
  double limit = 0;            // mg/m3 of all that evaporates, taken together
  double airForLimit = 0;      // m3/h to stay under the exposure limit
  double airForExplosion = 0;  // m3/h to stay under a quarter of the lower explosive limit
  double airPerGallon = 0;     // the same in ft3 for a US gallon of product
};

struct RagCount {
  int count = 0;   // rags, pads, sheets of paper and the like wet with the product
  int perDay = 0;  // of them on the day that lays most
  int pails = 0;   // of 20 L, half full of water
};

struct Lifting {
  double heaviestTin = 0;  // kg, full
  int heaviestTool = 0;    // kg, of those in use; 0 = none is known
};

struct CrewExposure {
  WorkLimits limits;  // of the region on the last day of the work
  std::vector<NoiseDay> noise;
  std::vector<VibrationDay> vibration;
  std::vector<HeatDay> heat;
  double hardWorkLimit = 0;  // wet bulb globe temperature in C, for people used to the heat
  std::vector<VapourArea> vapour;
  RagCount rags;
  Lifting lifting;
  Protector protector;           // for the loudest tool and the hardest day of the job
  double newToHeatHours = 0;     // that somebody new to the heat may work on his first day
  bool hasExampleTools = false;  // some values are not the maker's
  double warmestBoards = -100;   // C, while the crew works; -100 = not known
};

/// A hazard of content/hazards.yaml, weighed for this job.
struct HazardChoice {
  std::string id;
  bool applies = false;
  std::string why;  // the condition in words: 'the product is a drying oil'
};

}  // namespace model
