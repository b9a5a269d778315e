// Hazards as content/hazards.yaml describes them, and the standard texts of labels.
#pragma once

#include "base/units.h"

#include <map>
#include <string>
#include <vector>

namespace model {

/// What a hazard can ask of a job. A closed set: a new one needs a case in safety/conditions.cpp.
enum class Condition {
  DryingOil,  // these six: a coat is laid, and its product is such
  WaterBorne,
  Coating,
  Flammable,  // flash point up to 60 C, or H224 to H226
  Solvent,    // gives off a vapour with a limit
  NoSafetyData,
  Hardwood,
  FilmCoating,
  OiledBefore,
  BuiltBefore,   // a year, or the year from which lead paint is no longer expected in the region; unknown
                 // counts
  MayBeTreated,  // by its kind
  Treated,       // known
  NearWater,
  EdgeAbove,
  ElectricTools,
  Washing,
  Sanding,
  Task,  // one task is done
  Tool,  // one tool is used
  Covered,
  Enclosed,
  InSun,  // the sun reaches a deck while the crew works
  HotDay,
  Alone,
  Public,
  Children,
  NoiseAbove,
  VibrationAbove,
  LiftingAbove,
  ToolAbove,    // kg, of a tool in use
  BoardsAbove,  // their warmth while the crew works
  Site,         // the job names it among the hazards of the site
  LongDay
};

/// Thresholds of the region that a day is weighed against.
enum class Threshold { Lower, Upper, Action, Limit };

struct Clause {
  Condition condition = Condition::Coating;
  int number = 0;  // a year, where 0 stands for the region's, or kg, or C
  base::Length height;
  std::string id;  // of a task or a tool, or a word of the site
  Threshold threshold = Threshold::Lower;
};

/// All of 'all', one of 'any' unless it is empty, and none of 'none'.
struct When {
  std::vector<Clause> all, any, none;
};

/// The hierarchy of controls, best first.
enum class ControlLevel { Eliminate, Substitute, Engineer, Organise, Protect };

struct Control {
  ControlLevel level = ControlLevel::Organise;
  std::string text;
};

struct Hazard {
  std::string id, title;
  When when;
  int severity = 1, exposure = 1;  // 1 to 5; our own choice
  std::string sign = "warn";       // of content/signs
  bool isPanel = false;            // it has the panel that leads the leaf
  std::vector<std::string> tasks;  // in whose row of the leaf its steps may stand; none: a place of its own
  std::vector<std::string> wears;  // protective equipment at these tasks, besides what they ask for
  std::string who, harm;
  std::vector<Control> controls;  // best first
  std::string left;               // the risk that stays
  std::string source;             // title and year, or 'common practice'

  int harmOrder() const { return severity * exposure; }
};

/// How a condition is told: '{value}' is the job's own, '{limit}' what it is weighed against.
struct ConditionWords {
  std::string holds, fails;
  std::string unknown;  // it may hold, and counts as if it did; empty = always known
  std::string id = {};  // 'drying_oil'
};

/// Standard texts of the labels of chemicals, by code.
struct LabelTexts {
  std::map<std::string, std::string> statements, precautions, pictograms;  // 'H226', 'P210', 'GHS02'
  std::string source;
};

}  // namespace model
