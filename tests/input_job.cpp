#include "input_fixture.h"

#include <rapidcheck.h>

using namespace base;
using fixture::edited;
using fixture::goodJob;

namespace {

model::Job read(const std::string& text) {
  Diagnostics messages;
  const model::Job job = input::readJob(text, "job.yaml", fixture::content(), messages);
  for (const Diagnostic& d : messages.all()) FAIL_CHECK(format(d));
  return job;
}

/// The good job with another shape and without what belongs to a rectangle.
model::Shape shape(const std::string& text) {
  std::string job = edited(goodJob, "    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]\n", "");
  return read(edited(job, "rectangle: [12.4 m, 6.2 m]", text)).areas.at(0).shape;
}

}  // namespace

TEST_CASE("a good job is read to the last digit") {
  const model::Job job = read(goodJob);
  CHECK(job.ref == "LA-2027-031");
  CHECK(isoDate(job.quoted) == "2027-03-02");
  CHECK(isoDate(job.start) == "2027-03-16");
  CHECK(job.customer.name == "Inga Thorley");
  CHECK(job.site.latitudeMicro == -44'700'000);
  CHECK(job.site.longitudeMicro == 169'130'000);
  const model::Deck& d = job.areas.at(0);
  CHECK(std::get<model::Rectangle>(d.shape).x == millimetres(12'400));
  CHECK(std::get<model::Rectangle>(d.shape).y == millimetres(6200));
  CHECK(std::get<model::Circle>(d.without.at(0).shape).diameter == millimetres(1200));
  CHECK(d.without[0].at.x == metres(6));
  CHECK(d.without[0].at.y == metres(3));
  CHECK(d.without[0].name == "tree");
  CHECK(d.boards->width == millimetres(138));
  CHECK(d.boards->gap == millimetres(5));
  CHECK(d.boards->thickness == millimetres(38));
  CHECK(d.joists == millimetres(450));
  CHECK(d.fixings->kind == "nails");
  CHECK(d.state == model::State::Sanded);
  CHECK(d.pos.line == 9);
  CHECK(job.sanding == std::vector<int>{40, 60, 80});
  CHECK(job.crew.people == 2);
  CHECK(job.crew.startMinutes == 450);
  CHECK(job.crew.endMinutes == 960);
  CHECK(job.crew.breakMinutes == 45);
  CHECK(job.inStock.at(0).size == millilitres(2500));
  CHECK(job.price.deposit == Share::whole(10));
  CHECK(job.price.options.at(0).price.minor == 62'000);
}

TEST_CASE("what a job leaves out has its usual value") {
  const model::Job job = read(edited(goodJob, ", breaks: 45 min", ""));
  CHECK(job.validDays == 30);
  CHECK(job.loss == Share::whole(5));
  CHECK(job.allowance == Share{0});
  CHECK(job.site.exposure == model::Exposure::Open);
  CHECK(job.crew.breakMinutes == 30);
  CHECK(job.crew.works[4]);
  CHECK_FALSE(job.crew.works[5]);
  CHECK(job.coatingFrom == 0);
  CHECK_FALSE(job.price.margin);
  CHECK(job.price.discount == Share{0});
  const model::Deck& d = job.areas.at(0);
  CHECK(d.coats == 2);
  CHECK(d.boards->run == model::Run::LongSide);
  CHECK(d.boards->wetted == model::Wetted::Top);
  CHECK(d.boards->reededFactor == Share::whole(125));
  CHECK(d.fixings->perCrossing == 2);
  CHECK_FALSE(d.at);
}

TEST_CASE("a job in US customary units keeps every sixty-fourth of an inch") {
  std::string job = edited(goodJob, "[12.4 m, 6.2 m]", "[40 ft 8 in, 20' 4\"]");
  job = edited(job, "{circle: 1.2 m, at: [6 m, 3 m]", "{circle: 4 ft, at: [20 ft, 10 ft]");
  job = edited(job, "{width: 138 mm, gap: 5 mm, thickness: 38 mm}",
               "{width: 5 1/2 in, gap: 3/16 in, thickness: 1-1/2 in}");
  job = edited(job, "joists: 450 mm", "joists: 16 in\n    rates: [350 ft2/gal, 500 ft2/gal]");
  const model::Deck d = read(job).areas.at(0);
  CHECK(std::get<model::Rectangle>(d.shape).x.millionths == 488 * 25'400'000LL);
  CHECK(std::get<model::Rectangle>(d.shape).y.millionths == 244 * 25'400'000LL);
  CHECK(std::get<model::Circle>(d.without.at(0).shape).diameter.millionths == 48 * 25'400'000LL);
  CHECK(d.boards->width.millionths == 139'700'000);
  CHECK(d.boards->gap.millionths == 4'762'500);
  CHECK(d.boards->thickness.millionths == 38'100'000);
  CHECK(d.joists->millionths == 406'400'000);
  CHECK(d.rates.at(0).area.millionths == 350 * 92'903'040'000);  // NIST SP 811 (2008), App. B.8
  CHECK(d.rates.at(0).volume.millionths == 3'785'411'784);
}

TEST_CASE("every shape of the trade is read") {
  CHECK(std::get<model::Polygon>(shape("points: [[0 m, 0 m], [4 m, 0 m], [4 m, 3 m], [0 m, 0 m]]"))
            .points.size() == 3);
  CHECK(std::get<model::Circle>(shape("circle: 3 m")).diameter == metres(3));
  CHECK(std::get<model::Ring>(shape("ring: [6 m, 2 m]")).inner == metres(2));
  CHECK(std::get<model::Triangle>(shape("triangle: [3 m, 4 m, 5 m]")).c == metres(5));
  const auto stairs =
      std::get<model::Stairs>(shape("stairs: {steps: 5, width: 1.2 m, going: 280 mm, rise: 170 mm}"));
  CHECK(stairs.steps == 5);
  CHECK(stairs.rise == millimetres(170));
  const auto strip = std::get<model::Strip>(shape("length: 18.6 m, girth: 300 mm"));
  CHECK(strip.length == millimetres(18'600));
  CHECK(strip.girth == millimetres(300));
  const auto screen =
      std::get<model::Screen>(shape("screen: {width: 2 m, height: 1.8 m, sides: 2, solid: 60 %}"));
  CHECK(screen.solid == Share::whole(60));
  const auto measured = std::get<model::Measured>(shape("area: 24 m2, perimeter: 20 m"));
  CHECK(measured.area == squareMetres(24));
  CHECK(measured.perimeter == metres(20));
}

TEST_CASE("every key a job may have is read") {
  std::string job = edited(goodJob, "start:", R"(valid_days: 14
title: The boards of the lodge
office_note: call first
colour: light walnut
loss: 4 %
allowance: 10 %
coating: 08:00-13:00
task_rates: {wash: 40 m2/h, fix: 120 pieces/h, cut-in: 50 m/h}
included: [Furniture carried back]
excluded: [Repairs of joists, Lights]
before_we_come: [Clear the deck]
batches: [B 7731, B 7732]
licensed_for: [treated]
start:)");
  job = edited(
      job, "timezone:",
      "address: [4 Mill Bay Road], exposure: coastal, north: 30, access: by the gate, water: tap at "
      "the shed, "
      "power: outlet at the door, hospital: Dunford, meeting_point: car park, first_aider: Ada, "
      "sds_place: in "
      "the van, extinguisher: at the door, year_built: 1968, "
      "near_water: yes, public: true, children: yes, eye_wash: in the cab, pails: by the tap, timezone:");
  job = edited(job, "breaks: 45 min",
               "breaks: 1 h, days: [mon, sat], off: [2027-03-20], names: [Ada, Ben], leader: Ada");
  job = edited(job, "state: sanded", R"(state: film
    at: [1 m, -2 m]
    coats: 3
    test_patch: {area: 1 m2, used: 125 mL}
    note: Two boards are replaced.
    office_note: dog
    covered: yes
    enclosed: yes
    treated: true
    edge_height: 900 mm
    rail: yes)");
  job = edited(job, "thickness: 38 mm",
               "thickness: 38 mm, run: short side, face: reeded, reeded_factor: 130 %, wetted: all faces");
  job = edited(job, "{deposit: 10 %,",
               "{margin: 30 %, discount: 5 %, discount_reason: a good neighbour, deposit: 10 %, tax: 7.5 %, "
               "stages: [{share: 40 %, when: the sanding is done}],");
  const model::Job j = read(job);
  CHECK(j.validDays == 14);
  CHECK(j.title == "The boards of the lodge");
  CHECK(j.officeNote == "call first");
  CHECK(j.colour == "light walnut");
  CHECK(j.loss == Share::whole(4));
  CHECK(j.allowance == Share::whole(10));
  CHECK(j.coatingFrom == 480);
  CHECK(j.coatingUntil == 780);
  CHECK(j.taskRates.at("wash") == Count::whole(40));
  CHECK(j.taskRates.at("fix") == Count::whole(120));
  CHECK(j.taskRates.at("cut-in") == Count::whole(50));
  CHECK(j.included == std::vector<std::string>{"Furniture carried back"});
  CHECK(j.excluded.size() == 2);
  CHECK(j.beforeWeCome.size() == 1);
  CHECK(j.batches.at(1) == "B 7732");
  CHECK(j.site.exposure == model::Exposure::Coastal);
  CHECK(j.site.north == 30);
  CHECK(j.site.access == "by the gate");
  CHECK(j.site.water == "tap at the shed");
  CHECK(j.site.power == "outlet at the door");
  CHECK(j.site.hospital == "Dunford");
  CHECK(j.site.meetingPoint == "car park");
  CHECK(j.site.firstAider == "Ada");
  CHECK(j.site.sdsPlace == "in the van");
  CHECK(j.site.extinguisher == "at the door");
  CHECK(j.site.yearBuilt == 1968);
  CHECK(j.site.isNearWater);
  CHECK(j.site.isPublic == true);
  CHECK((j.site.eyeWash == "in the cab" && j.site.pails == "by the tap"));
  CHECK(j.licensedFor == std::vector<std::string>{"treated"});
  CHECK(j.areas.at(0).hasRail);
  CHECK(j.site.hasChildren);
  CHECK(j.crew.breakMinutes == 60);
  CHECK(j.crew.works[0]);
  CHECK_FALSE(j.crew.works[1]);
  CHECK(j.crew.works[5]);
  CHECK(isoDate(j.crew.off.at(0)) == "2027-03-20");
  CHECK(j.crew.names.size() == 2);
  CHECK(j.crew.leader == "Ada");
  const model::Deck& d = j.areas.at(0);
  CHECK(d.state == model::State::Film);
  CHECK(d.at->y == metres(-2));
  CHECK(d.coats == 3);
  CHECK(d.testPatch->used == millilitres(125));
  CHECK(d.note == "Two boards are replaced.");
  CHECK(d.officeNote == "dog");
  CHECK(d.isCovered);
  CHECK(d.isEnclosed);
  CHECK(d.isTreated);
  CHECK(d.edgeHeight == millimetres(900));
  CHECK(d.boards->run == model::Run::ShortSide);
  CHECK(d.boards->face == model::BoardFace::Reeded);
  CHECK(d.boards->reededFactor == Share::whole(130));
  CHECK(d.boards->wetted == model::Wetted::AllFaces);
  CHECK(j.price.margin == Share::whole(30));
  CHECK(j.price.discount == Share::whole(5));
  CHECK(j.price.discountReason == "a good neighbour");
  CHECK(j.price.tax->millionths == 7'500'000);
  CHECK(j.price.stages.at(0).share == Share::whole(40));
  CHECK(j.price.stages.at(0).when == "the sanding is done");
}

TEST_CASE("work is put in the order in which it is done") {
  CHECK(read(edited(goodJob, "[wash, fix, sand, oil]", "[oil, sand, fix, wash]")).work ==
        std::vector{model::Work::Wash, model::Work::Fix, model::Work::Sand, model::Work::Oil});
}

TEST_CASE("the firm's folder lies where the job says") {
  CHECK(input::firmFolder(goodJob, "jobs/landing/job.yaml") == "jobs/firm");
  CHECK(input::firmFolder(edited(goodJob, "../firm", "/srv/firm"), "jobs/landing/job.yaml") == "/srv/firm");
  CHECK(input::firmFolder(edited(goodJob, "firm: ../firm", ""), "jobs/landing/job.yaml") == "");
  CHECK(input::firmFolder("{customer: A, 'firm': mine}", "job.yaml") == "mine");
  for (const char* same : {"'my firm'", "my firm", "\"my firm\"   # ours", "my firm   # ours", "my firm  "})
    CHECK(input::firmFolder(edited(goodJob, "../firm", same), "jobs/job.yaml") == "jobs/my firm");
  CHECK(input::firmFolder("- not a job of a firm", "job.yaml") == "");
  CHECK(input::firmFolder("firm: [a]", "job.yaml") == "");
}

TEST_CASE("no spoilt job makes the reader fall over") {
  const std::string bits[] = {"",  "\n",  " ",        "-",  ": ",  "{",   "}",  "[",
                              "]", "'",   "\"",       "#",  "&a ", "*a ", "0",  "9999999999999",
                              "m", "1e9", "\xC3\xA9", "? ", "| ",  "> ",  "!!", "---\n"};
  const model::Content content = fixture::content();
  rc::check([&] {
    std::string job = goodJob;
    const int edits = *rc::gen::inRange(1, 6);
    for (int i = 0; i < edits; ++i) {
      const auto at = *rc::gen::inRange<std::size_t>(0, job.size());
      const auto length = *rc::gen::element<std::size_t>(0, 0, 1, 3, 20);
      job.replace(at, length, bits[*rc::gen::inRange<std::size_t>(0, std::size(bits))]);
    }
    Diagnostics messages;
    (void)input::readJob(job, "job.yaml", content, messages);
    (void)input::firmFolder(job, "job.yaml");
    for (const Diagnostic& d : messages.all()) RC_ASSERT(!d.message.empty());
  });
}
