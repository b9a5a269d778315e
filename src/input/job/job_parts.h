// The parts of a job file, each read by one function.
#pragma once

#include "input/yaml/cursor.h"
#include "model/job.h"

namespace input {

/// A whole job, but for the choices it has. Messages come in the order of reading.
model::Job readTree(const Node& root, const std::string& file, const model::Content& content,
                    base::Diagnostics& messages);

/// Its own keys, or one of the firm's book: 'customer: thorley', 'customer: {known: thorley, uninvited:
/// true}'.
model::Customer readCustomer(const Field& f, const model::Content& content);
model::Site readSite(const Field& f, const model::Content& content);
/// The region tells the names of its holidays; null where it is not known.
model::Crew readCrew(const Field& f, const model::Region* region);
/// 'regionOf' is null when the region is not known.
model::Pricing readPricing(const Field& f, const model::Region* regionOf);
/// Asks for the site, which is read before.
void readWeather(const Field& f, model::Job& job);
std::vector<model::Deck> readDecks(const Field& f, const model::Content& content,
                                   const std::vector<model::Work>& work);
/// What lies around the decks.
std::vector<model::Around> readAround(const Field& f);
/// At most two; the paths start at the folder of the job's file.
std::vector<model::Photo> readPhotos(const Field& f, const std::string& file);
/// The job's areas, work, start and product are read already.
/// 'product': the job's, where it is known.
std::vector<model::DoneCoat> readDone(const Field& f, const model::Job& job, const model::Product* product);
std::vector<model::StockTin> readLeft(const Field& f, const model::Job& job, const model::Content& content);

/// Days of invoices, at most one for each stage of the price, which is read before.
std::vector<base::Date> readInvoices(const Field& f, const model::Job& job);

/// Tells what does not fit together in a job that is read, or is likely forgotten.
void checkWhole(const model::Job& job, const model::Content& content, base::Diagnostics& messages);

}  // namespace input
